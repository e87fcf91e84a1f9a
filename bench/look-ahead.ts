/** Three years ahead for a unit with 900 people on its register, and the search for the places that keep its wait. */
import { type DemandInputs, lookAhead, placesNeeded } from '../packages/planning/src/index.ts';
import type { Bench } from './figure.ts';
import { timed } from './processor-time.ts';

const rounds = 5;
const options = { weeks: 156, runs: 500, seed: 1 };
const offer = { placesPerWeek: 24, bloods: { drawn: 'to fit the place', validWeeks: 12 } } as const;

/** An invented unit. */
const unit: DemandInputs = {
  waiting: [80, 30, 10],
  due: Array.from({ length: 52 }, (_, week) => ({ week, dose: 2 + (week % 2), people: 15 })),
  referrals: { perWeek: 8, lagWeeks: 4 },
  season: [1.2, 1, 0.8, 1],
  leavers: { perWeek: 1, lagWeeks: 26 },
  pausesEnding: [{ week: 30, people: 20 }],
  startsAgain: 0.5,
  doses: 3,
  intervalWeeks: 52,
  pauseWeeks: 104,
  returns: [0.7, 0.8],
  diesAfterFirst: 0.1,
  diesLater: 0.05,
};

const best = (work: () => unknown): number =>
  Math.min(...Array.from({ length: rounds }, () => timed(work).milliseconds));

export const bench: Bench = async () => [
  { what: '500 times three years ahead', value: best(() => lookAhead(unit, offer, options)), unit: 'ms' },
  {
    what: 'places needed for a wait within 4 weeks with probability 0.9, from 500 runs each',
    value: best(() => placesNeeded(unit, offer, { weeks: 4, probability: 0.9 }, options)),
    unit: 'ms',
  },
];
