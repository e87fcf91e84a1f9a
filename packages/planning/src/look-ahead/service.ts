/** What a unit holds in a week and what that needs: places, nurses, chairs, minutes. For what-ifs, and for what would be enough. */
import { counted } from '@twelvemonth/clinical';

export type Service = {
  /** A week, on average. */
  readonly sessionsPerWeek: number;
  /** Places told in a session, whatever the minutes would allow. */
  readonly placesPerSession: number;
  readonly minutesOpen: number;
  readonly nurses: number;
  readonly chairs: number;
  /** Of one visit, first and later ones as they come. */
  readonly nurseMinutesPerVisit: number;
  readonly chairMinutesPerVisit: number;
  /** Running infusions one nurse keeps an eye on: each further minute of infusion takes so little of a nurse. */
  readonly watchedPerNurse: number;
  readonly infusionMinutes: number;
  /** Visits a week of other regimens that take places too. */
  readonly otherVisitsPerWeek: number;
};

export type HeldBy = 'places' | 'nurses' | 'chairs';

/** A session holds the least of what its places, its nurses' minutes and its chairs' minutes allow. */
export function sessionHolds({
  placesPerSession,
  minutesOpen,
  nurses,
  chairs,
  nurseMinutesPerVisit,
  chairMinutesPerVisit,
}: Service): { readonly visits: number; readonly heldBy: HeldBy; readonly by: Readonly<Record<HeldBy, number>> } {
  const by = {
    places: placesPerSession,
    nurses: Math.floor((nurses * minutesOpen) / nurseMinutesPerVisit),
    chairs: Math.floor((chairs * minutesOpen) / chairMinutesPerVisit),
  };
  const visits = Math.min(by.places, by.nurses, by.chairs);
  const heldBy = (['nurses', 'chairs', 'places'] as const).find((name) => by[name] === visits) ?? 'places';
  return { visits, heldBy, by };
}

/** Places a week that are left for the course looked ahead at. */
export const placesOfWeek = (service: Service): number =>
  Math.max(0, service.sessionsPerWeek * sessionHolds(service).visits - service.otherVisitsPerWeek);

/** An infusion of another length: the chair is held for longer, the nurse keeps an eye on one more at a time. */
export function withInfusion(service: Service, infusionMinutes: number): Service {
  const more = infusionMinutes - service.infusionMinutes;
  return {
    ...service,
    infusionMinutes,
    chairMinutesPerVisit: service.chairMinutesPerVisit + more,
    nurseMinutesPerVisit: service.nurseMinutesPerVisit + more / service.watchedPerNurse,
  };
}

export type Needs = {
  /** Sessions a week, each as it is now. */
  readonly sessions: number;
  /** Or the sessions there are, each with so many places, nurses at the chairs and chairs. */
  readonly placesPerSession: number;
  readonly nurses: number;
  readonly chairs: number;
};

/** What so many places a week take. Undefined where a session holds nothing at all. */
export function needsFor(service: Service, placesPerWeek: number): Needs | undefined {
  const { visits } = sessionHolds(service);
  const { sessionsPerWeek, minutesOpen, nurseMinutesPerVisit, chairMinutesPerVisit, otherVisitsPerWeek } = service;
  if (visits <= 0 || sessionsPerWeek <= 0) return undefined;
  const inAll = placesPerWeek + otherVisitsPerWeek;
  const placesPerSession = Math.ceil(inAll / sessionsPerWeek);
  return {
    sessions: Math.ceil(inAll / visits),
    placesPerSession,
    nurses: Math.ceil((placesPerSession * nurseMinutesPerVisit) / minutesOpen),
    chairs: Math.ceil((placesPerSession * chairMinutesPerVisit) / minutesOpen),
  };
}

/** In a sentence; whoever prepares and checks is counted apart. */
export const needsSays = ({ sessions, placesPerSession, nurses, chairs }: Needs): string =>
  `That is ${counted(sessions, 'session')} a week as they are now; or the sessions there are, each with ${counted(placesPerSession, 'place')}, ${counted(nurses, 'nurse')} at the chairs beside whoever prepares and checks, and ${counted(chairs, 'chair')}: by their minutes alone, a day as it is planned may need more.`;
