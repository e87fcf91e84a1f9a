/** What the named alternatives did in women with weak bones. Not in the fact sheet: sources as they were seen. */
import type { Source } from '../source.ts';
import type { Trial } from './trial.ts';

const tablets: Source = { citation: 'Black 1996 Lancet 348:1535, doi 10.1016/S0140-6736(96)07088-2', seen: 'read' };

/** FIT, the arm of women who had a spine fracture already: the one with three years and with rates. */
export const tabletsInWomen: Trial = {
  title: 'a large trial of alendronic acid tablets in women',
  tookPart: 'women aged 55 to 81 with weak bones and a broken spine bone',
  ages: { from: 55, to: 81 },
  people: { treated: 1022, untreated: 1005 },
  years: 3,
  comparedWith: 'tablets without medicine',
  source: { ...tablets, note: 'a daily tablet; the weekly one is counted as the same' },
  effects: [
    {
      outcome: 'any clinical fracture',
      relative: { measure: 'hazard ratio', value: 0.72, interval: { from: 0.58, to: 0.9 }, source: tablets },
      treated: { percent: 13.6, events: 139, people: 1022, source: tablets },
      untreated: { percent: 18.2, events: 183, people: 1005, source: tablets },
      found: 'fewer',
    },
    {
      outcome: 'hip fracture',
      relative: { measure: 'hazard ratio', value: 0.49, interval: { from: 0.23, to: 0.99 }, source: tablets },
      treated: { percent: 1.1, source: { ...tablets, seen: 'memory' } },
      untreated: { percent: 2.2, source: { ...tablets, seen: 'memory' } },
      found: 'fewer',
    },
    {
      outcome: 'spine fracture seen on X-ray',
      relative: { measure: 'risk ratio', value: 0.53, interval: { from: 0.41, to: 0.68 }, source: tablets },
      treated: { percent: 8.0, source: tablets },
      untreated: { percent: 15.0, source: tablets },
      found: 'fewer',
    },
  ],
};

const injection: Source = { citation: 'Cummings 2009 NEJM 361:756, doi 10.1056/NEJMoa0809493', seen: 'memory' };

export const injectionInWomen: Trial = {
  title: 'a large trial of denosumab every six months in women',
  tookPart: 'women aged 60 to 90 with weak bones',
  ages: { from: 60, to: 90 },
  people: { treated: 3902, untreated: 3906 },
  years: 3,
  comparedWith: 'an injection without medicine',
  source: injection,
  effects: [
    {
      outcome: 'hip fracture',
      relative: { measure: 'hazard ratio', value: 0.6, interval: { from: 0.37, to: 0.97 }, source: injection },
      treated: { percent: 0.7, source: injection },
      untreated: { percent: 1.2, source: injection },
      found: 'fewer',
    },
    {
      outcome: 'any clinical fracture',
      relative: {
        measure: 'hazard ratio',
        value: 0.68,
        interval: { from: 0.58, to: 0.8 },
        source: { citation: 'McCloskey 2012 JBMR 27:1480, doi 10.1002/jbmr.1606', seen: 'memory' },
      },
      treated: undefined,
      untreated: undefined,
      found: 'fewer',
    },
    {
      outcome: 'spine fracture seen on X-ray',
      relative: {
        measure: 'risk ratio',
        value: 0.32,
        interval: { from: 0.26, to: 0.41 },
        source: { citation: 'table 2 of a FREEDOM analysis, PMC3415619', seen: 'read' },
      },
      treated: { percent: 2.3, source: injection },
      untreated: { percent: 7.2, source: injection },
      found: 'fewer',
    },
    {
      outcome: 'fracture outside the spine',
      relative: {
        measure: 'hazard ratio',
        value: 0.8,
        interval: { from: 0.67, to: 0.95 },
        source: { citation: 'table 2 of a FREEDOM analysis, PMC3415619', seen: 'read' },
      },
      treated: undefined,
      untreated: undefined,
      found: 'fewer',
    },
  ],
};
