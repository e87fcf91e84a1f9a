/** Trials of the drip at other intervals: shown to the professional beside the sheet, not used for anybody's numbers. */
import type { Trial } from './trial.ts';

const every18Months = { citation: 'Reid 2018 NEJM 379:2407, doi 10.1056/NEJMoa1808082', seen: 'read' } as const;
const onceOrTwice = { citation: 'Bolland 2025 NEJM', seen: 'read' } as const;

export const otherSchedules: readonly Trial[] = [
  {
    title: 'a trial of the drip every 18 months in women with thin, not yet weak bones',
    tookPart: 'women of 65 and over whose bone density was low but above the limit for weak bones',
    ages: undefined,
    people: { treated: 1000, untreated: 1000 },
    years: 6,
    comparedWith: 'a drip without medicine',
    source: every18Months,
    effects: [
      {
        outcome: 'any clinical fracture',
        relative: { measure: 'hazard ratio', value: 0.63, interval: { from: 0.5, to: 0.79 }, source: every18Months },
        treated: { percent: 12.2, events: 122, people: 1000, source: every18Months },
        untreated: { percent: 19.0, events: 190, people: 1000, source: every18Months },
        found: 'fewer',
      },
    ],
  },
  {
    title: 'a trial of two drips in ten years in women soon after the menopause',
    tookPart: '1054 women in the first years after the menopause',
    ages: undefined,
    // A third each to two drips, one drip and none; the exact numbers are from memory.
    people: { treated: 352, untreated: 351 },
    years: 10,
    comparedWith: 'a drip without medicine',
    source: onceOrTwice,
    effects: [
      {
        outcome: 'spine fracture seen on X-ray',
        relative: { measure: 'risk ratio', value: 0.56, interval: { from: 0.34, to: 0.92 }, source: onceOrTwice },
        treated: { percent: 6.3, source: onceOrTwice },
        untreated: { percent: 11.1, source: onceOrTwice },
        found: 'fewer',
      },
    ],
  },
];
