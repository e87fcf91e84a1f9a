/** What if: a unit and what it is asked for, with some of it otherwise. */
import type { DemandInputs, Offer } from './inputs.ts';
import { type Service, placesOfWeek, withInfusion } from './service.ts';

/** A unit as its notes have it, ready to be looked ahead at. */
export type UnitAhead = {
  readonly demand: DemandInputs;
  readonly service: Service;
  readonly bloods: Offer['bloods'];
};

/** What is otherwise; what is left out stays as it is. */
export type Changes = {
  readonly sessionsPerWeek?: number | undefined;
  readonly placesPerSession?: number | undefined;
  readonly nurses?: number | undefined;
  readonly chairs?: number | undefined;
  readonly infusionMinutes?: number | undefined;
  readonly bloodsDrawn?: Offer['bloods']['drawn'] | undefined;
  readonly bloodsValidWeeks?: number | undefined;
  readonly referralsPerWeek?: number | undefined;
  /** Share of those alive that comes for dose 2. */
  readonly returnsForSecond?: number | undefined;
  /** So many people more whose first dose is due in one week. */
  readonly burst?: { readonly week: number; readonly people: number } | undefined;
};

export type AheadCase = { readonly inputs: DemandInputs; readonly offer: Offer; readonly service: Service };

function changedService(service: Service, changes: Changes): Service {
  const { sessionsPerWeek, placesPerSession, nurses, chairs, infusionMinutes } = changes;
  const asked = {
    ...service,
    sessionsPerWeek: sessionsPerWeek ?? service.sessionsPerWeek,
    placesPerSession: placesPerSession ?? service.placesPerSession,
    nurses: nurses ?? service.nurses,
    chairs: chairs ?? service.chairs,
  };
  return infusionMinutes === undefined ? asked : withInfusion(asked, infusionMinutes);
}

function changedDemand(demand: DemandInputs, { referralsPerWeek, returnsForSecond, burst }: Changes): DemandInputs {
  return {
    ...demand,
    referrals: { ...demand.referrals, perWeek: referralsPerWeek ?? demand.referrals.perWeek },
    returns: demand.returns.map((share, dose) => (dose === 0 ? (returnsForSecond ?? share) : share)),
    due:
      burst === undefined || burst.people === 0
        ? demand.due
        : [...demand.due, { week: burst.week, dose: 1, people: burst.people }],
  };
}

export function changedCase({ demand, service, bloods }: UnitAhead, changes: Changes): AheadCase {
  const changed = changedService(service, changes);
  return {
    inputs: changedDemand(demand, changes),
    service: changed,
    offer: {
      placesPerWeek: placesOfWeek(changed),
      bloods: {
        drawn: changes.bloodsDrawn ?? bloods.drawn,
        validWeeks: changes.bloodsValidWeeks ?? bloods.validWeeks,
      },
    },
  };
}
