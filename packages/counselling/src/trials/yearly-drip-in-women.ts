/** HORIZON-PFT: yearly zoledronic acid 5 mg over three years, women with weak bones. Facts: clinical fact sheet 5a. */
import type { Source } from '../source.ts';
import type { Trial } from './trial.ts';

const citation = 'Black 2007 NEJM 356:1809, doi 10.1056/NEJMoa067312';
const read: Source = { citation, seen: 'read' };
const memory: Source = { citation, seen: 'memory' };
/** Hazard ratio and interval were read in abstracts and a review; the rates of these rows were not. */
const ratioRead: Source = { citation, seen: 'read', note: 'ratio and range' };

export const yearlyDripInWomen: Trial = {
  title: 'a large trial of the yearly drip in women',
  tookPart: 'women aged 65 to 89 with weak bones, on average 73 years old',
  ages: { from: 65, to: 89 },
  people: { treated: 3889, untreated: 3876 },
  years: 3,
  comparedWith: 'a drip without medicine',
  source: read,
  effects: [
    {
      outcome: 'spine fracture seen on X-ray',
      relative: { measure: 'risk ratio', value: 0.3, interval: { from: 0.24, to: 0.38 }, source: read },
      treated: { percent: 3.3, events: 92, people: 2822, source: read },
      untreated: { percent: 10.9, events: 310, people: 2853, source: read },
      found: 'fewer',
    },
    {
      outcome: 'hip fracture',
      relative: { measure: 'hazard ratio', value: 0.59, interval: { from: 0.42, to: 0.83 }, source: read },
      treated: { percent: 1.4, source: read },
      untreated: { percent: 2.5, source: read },
      found: 'fewer',
    },
    {
      outcome: 'fracture outside the spine',
      relative: { measure: 'hazard ratio', value: 0.75, interval: { from: 0.64, to: 0.87 }, source: ratioRead },
      treated: { percent: 8.0, source: memory },
      untreated: { percent: 10.7, source: memory },
      found: 'fewer',
    },
    {
      outcome: 'any clinical fracture',
      relative: { measure: 'hazard ratio', value: 0.67, interval: { from: 0.58, to: 0.77 }, source: ratioRead },
      treated: { percent: 8.4, source: memory },
      untreated: { percent: 12.8, source: memory },
      found: 'fewer',
    },
    {
      outcome: 'spine fracture that was felt',
      relative: { measure: 'hazard ratio', value: 0.23, interval: { from: 0.14, to: 0.37 }, source: ratioRead },
      treated: { percent: 0.5, source: memory },
      untreated: { percent: 2.6, source: memory },
      found: 'fewer',
    },
    {
      outcome: 'death',
      relative: undefined,
      treated: { percent: 3.4, source: read },
      untreated: { percent: 2.9, source: read },
      found: 'no clear difference',
    },
  ],
};
