/** People for whom packs are made in the tests: nobody real. */
import { day } from '@twelvemonth/clinical';
import type { PackFacts } from '@twelvemonth/letters';

export const first: PackFacts = {
  language: 'en-GB',
  demo: true,
  unit: { name: 'Thornbeck Day Unit', telephone: '01632 960100' },
  person: { name: 'Wilhelmina Arkwright-Poe', born: '2 June 1941', number: '999 204 7713' },
  today: day('2026-11-25'),
  protocolVersion: 'thornbeck-1',
  firstTimer: true,
  visit: { on: day('2026-12-03'), arriveAt: '10:40' },
  minutes: { drip: 30, watch: 30 },
  bloods: { from: day('2026-11-26'), until: day('2026-11-30') },
  vitaminDCourse: { is: 'taken', endsOn: day('2026-11-29') },
  noneAhead: undefined,
  askAbout: ['furosemide 40 mg', 'hydroxychloroquine'],
  paracetamol: {
    told: true,
    tabletsADose: [1, 2],
    timesADay: 4,
    mostTabletsADay: 8,
    hoursBetween: 4,
    weightKg: '56.2',
    weighedOn: day('2026-11-20'),
  },
  given: { on: day('2026-12-03'), number: 1, batch: 'PA-2391' },
  next: {
    is: 'dose',
    due: day('2027-12-03'),
    calledFrom: day('2027-09-24'),
    worryOn: day('2027-10-08'),
    bloods: { from: day('2027-10-08'), until: day('2027-11-29') },
  },
};

/** As different from the first as facts allow. */
export const later: PackFacts = {
  ...first,
  demo: false,
  firstTimer: false,
  visit: undefined,
  bloods: undefined,
  vitaminDCourse: undefined,
  askAbout: [],
  paracetamol: { told: false, because: 'weight too old' },
  given: undefined,
  next: { is: 'review', worryOn: day('2027-12-03') },
};
export const everyone: readonly PackFacts[] = [
  first,
  later,
  { ...first, language: 'en-US' },
  { ...later, language: 'en-US' },
  { ...later, vitaminDCourse: { is: 'to be started' } },
  { ...first, vitaminDCourse: { is: 'taken', endsOn: day('2026-12-31') } },
  { ...first, today: day('2027-11-25') },
  ...(['not asked', 'liver', 'weight not known', 'below the table'] as const).map((because) => ({
    ...later,
    paracetamol: { told: false as const, because },
  })),
];
