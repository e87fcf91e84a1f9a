/**
 * HORIZON-RFT: yearly zoledronic acid 5 mg, begun within 90 days after the repair of a hip. Facts: clinical fact sheet 5b;
 * ratios with their ranges from the conference abstract of the same trial (Bone Joint J Orthop Proc Suppl, read).
 */
import type { Source } from '../source.ts';
import type { Trial } from './trial.ts';

const citation = 'Lyles 2007 NEJM 357:1799, doi 10.1056/NEJMoa074941';
const read: Source = { citation, seen: 'read' };
const memory: Source = { citation, seen: 'memory' };
const ratio: Source = { citation, seen: 'read', note: "ratio and range in the trial's conference abstract" };

/** A first dose this many days after the repair at the latest: whom the trial took. */
export const daysAfterRepair = 90;

export const afterAHipFracture: Trial = {
  title: 'a large trial of the yearly drip after a broken hip',
  tookPart: 'women and men aged 50 and over whose broken hip had been repaired in the last 90 days',
  ages: { from: 50, to: 98 },
  people: { treated: 1065, untreated: 1062 },
  // Median follow-up 1.9 years; the rates are those at two years.
  years: 2,
  comparedWith: 'a drip without medicine',
  source: read,
  effects: [
    {
      outcome: 'any clinical fracture',
      relative: { measure: 'hazard ratio', value: 0.65, interval: { from: 0.5, to: 0.84 }, source: ratio },
      treated: { percent: 8.6, source: read },
      untreated: { percent: 13.9, source: read },
      found: 'fewer',
    },
    {
      outcome: 'spine fracture that was felt',
      relative: { measure: 'hazard ratio', value: 0.54, interval: { from: 0.32, to: 0.92 }, source: ratio },
      treated: { percent: 1.7, source: read },
      untreated: { percent: 3.8, source: read },
      found: 'fewer',
    },
    {
      outcome: 'fracture outside the spine',
      relative: { measure: 'hazard ratio', value: 0.73, interval: { from: 0.55, to: 0.98 }, source: ratio },
      treated: { percent: 7.6, source: read },
      untreated: { percent: 10.7, source: read },
      found: 'fewer',
    },
    {
      outcome: 'hip fracture',
      relative: { measure: 'hazard ratio', value: 0.7, interval: { from: 0.41, to: 1.19 }, source: ratio },
      treated: { percent: 2.0, source: memory },
      untreated: { percent: 3.5, source: memory },
      found: 'no clear difference',
    },
    {
      outcome: 'death',
      relative: { measure: 'hazard ratio', value: 0.72, interval: { from: 0.56, to: 0.93 }, source: ratio },
      treated: { percent: 9.6, events: 101, people: 1054, source: read },
      untreated: { percent: 13.3, events: 141, people: 1057, source: read },
      found: 'fewer',
    },
  ],
};
