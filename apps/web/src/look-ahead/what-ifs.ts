/** The what-ifs of the screen: each a number with its range, what it is as things stand, and how it changes the case. */
import type { Changes, UnitAhead } from '@twelvemonth/planning';

export type WhatIfs = {
  /** Sessions a week more or fewer than planned. */
  readonly moreSessions: number;
  readonly places: number;
  readonly nurses: number;
  readonly chairs: number;
  readonly infusionMinutes: number;
  readonly returnPercent: number;
  readonly referrals: number;
  readonly bloodsDrawn: 'at referral' | 'to fit the place';
  readonly bloodWeeks: number;
  readonly burstPeople: number;
  readonly burstWeek: number;
};

export type Slid = Exclude<keyof WhatIfs, 'bloodsDrawn'>;

const percent = 100;
const tenths = (value: number): number => Math.round(value * 10) / 10;
/** A burst falls due so many weeks from today where nobody says otherwise. */
const usualBurstWeek = 12;

export const asItIs = ({ demand, service, bloods }: UnitAhead): WhatIfs => ({
  moreSessions: 0,
  places: Math.round(service.placesPerSession),
  nurses: service.nurses,
  chairs: service.chairs,
  infusionMinutes: service.infusionMinutes,
  returnPercent: Math.round((demand.returns[0] ?? 0) * percent),
  referrals: tenths(demand.referrals.perWeek),
  bloodsDrawn: bloods.drawn,
  bloodWeeks: bloods.validWeeks,
  burstPeople: 0,
  burstWeek: usualBurstWeek,
});

/** Only what was moved: figures are rounded for the sliders, and what nobody touched stays exact. */
export function changesOf(ahead: UnitAhead, what: WhatIfs): Changes {
  const usual = asItIs(ahead);
  const moved = <Key extends keyof WhatIfs>(key: Key): WhatIfs[Key] | undefined =>
    what[key] === usual[key] ? undefined : what[key];
  const returns = moved('returnPercent');
  return {
    sessionsPerWeek:
      what.moreSessions === 0 ? undefined : Math.max(0, ahead.service.sessionsPerWeek + what.moreSessions),
    placesPerSession: moved('places'),
    nurses: moved('nurses'),
    chairs: moved('chairs'),
    infusionMinutes: moved('infusionMinutes'),
    returnsForSecond: returns === undefined ? undefined : returns / percent,
    referralsPerWeek: moved('referrals'),
    bloodsDrawn: moved('bloodsDrawn'),
    bloodsValidWeeks: moved('bloodWeeks'),
    burst: what.burstPeople === 0 ? undefined : { week: what.burstWeek, people: what.burstPeople },
  };
}

export type Slider = {
  readonly key: Slid;
  readonly label: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly help?: string;
};

const atLeast = (value: number, least: number): number => Math.max(Math.ceil(value), least);

export function slidersFor({ demand, service }: UnitAhead, { bloodsDrawn }: WhatIfs): readonly Slider[] {
  const most = {
    referrals: atLeast(demand.referrals.perWeek * 4, 10),
    places: atLeast(service.placesPerSession * 2, 20),
  };
  return [
    {
      key: 'moreSessions',
      label: 'Sessions a week, more or fewer',
      unit: 'than planned',
      least: -atLeast(service.sessionsPerWeek, 1),
      most: 5,
      step: 1,
    },
    { key: 'places', label: 'Places a session', unit: 'places', least: 1, most: most.places, step: 1 },
    {
      key: 'nurses',
      label: 'Nurses at the chairs',
      unit: 'nurses',
      least: 1,
      most: atLeast(service.nurses * 2, 6),
      step: 1,
      help: 'Beside whoever prepares and checks.',
    },
    { key: 'chairs', label: 'Chairs', unit: 'chairs', least: 1, most: atLeast(service.chairs * 2, 8), step: 1 },
    { key: 'infusionMinutes', label: 'An infusion runs', unit: 'minutes', least: 15, most: 90, step: 5 },
    { key: 'referrals', label: 'New referrals', unit: 'a week', least: 0, most: most.referrals, step: 0.1 },
    { key: 'returnPercent', label: 'Come back for dose 2', unit: 'of 100 alive', least: 0, most: 100, step: 1 },
    {
      key: 'bloodWeeks',
      label: 'Bloods count for',
      unit: 'weeks',
      least: 2,
      most: 26,
      step: 1,
      ...(bloodsDrawn === 'at referral' ? {} : { help: 'No difference while they are drawn to fit the place.' }),
    },
    { key: 'burstPeople', label: 'Many starts at once', unit: 'people more', least: 0, most: 200, step: 5 },
    { key: 'burstWeek', label: 'All due in', unit: 'weeks from today', least: 0, most: 100, step: 1 },
  ];
}
