/** Trials for people whom the large ones left out: men, people in care homes, steroid users, and those who have had three doses. */
import type { Source } from '../source.ts';
import type { Trial } from './trial.ts';

const inMenSource: Source = { citation: 'Boonen 2012 NEJM 367:1714, doi 10.1056/NEJMoa1204061', seen: 'read' };

export const yearlyDripInMen: Trial = {
  title: 'a trial of the yearly drip in men',
  tookPart: 'men aged 50 to 85 with weak bones',
  ages: { from: 50, to: 85 },
  // 1199 men by chance to one or the other; how many to each is from memory.
  people: { treated: 588, untreated: 611 },
  years: 2,
  comparedWith: 'a drip without medicine',
  source: inMenSource,
  effects: [
    {
      outcome: 'spine fracture seen on X-ray',
      relative: { measure: 'risk ratio', value: 0.33, interval: { from: 0.16, to: 0.7 }, source: inMenSource },
      treated: { percent: 1.6, source: inMenSource },
      untreated: { percent: 4.9, source: inMenSource },
      found: 'fewer',
    },
    {
      outcome: 'death',
      relative: undefined,
      treated: { percent: 2.6, source: inMenSource },
      untreated: { percent: 2.9, source: inMenSource },
      found: 'no clear difference',
    },
  ],
};

const frailSource: Source = {
  citation: 'Greenspan 2015 JAMA Intern Med 175:913, doi 10.1001/jamainternmed.2015.0747',
  seen: 'read',
  note: 'one dose; too small to tell about fractures; the group with the drip was frailer to begin with',
};

export const oneDripInCareHomes: Trial = {
  title: 'a small trial of one drip in care homes',
  tookPart: 'women of 65 and over in care homes, on average 85 years old',
  ages: undefined,
  // 181 women in all; how many to each is from memory.
  people: { treated: 89, untreated: 92 },
  years: 2,
  comparedWith: 'a drip without medicine',
  source: frailSource,
  effects: [
    {
      outcome: 'any clinical fracture',
      relative: undefined,
      treated: { percent: 20, source: frailSource },
      untreated: { percent: 16, source: frailSource },
      found: 'no clear difference',
    },
  ],
};

export const yearlyDripOnSteroids: Trial = {
  title: 'a trial of the yearly drip in people on steroids',
  tookPart: 'women and men on steroids',
  ages: undefined,
  people: { treated: 416, untreated: 417 },
  years: 1,
  comparedWith: 'a daily bone tablet',
  source: {
    citation: 'Reid 2009 Lancet 373:1253, doi 10.1016/S0140-6736(09)60250-6',
    seen: 'read',
    note: 'bone density only; as many fractures with either',
  },
  effects: [],
};

const extension: Source = { citation: 'Black 2012 JBMR 27:243, doi 10.1002/jbmr.1494', seen: 'read' };

export const threeMoreDoses: Trial = {
  title: 'a trial of three more doses after the first three',
  tookPart: 'women who had had three yearly drips',
  ages: undefined,
  people: { treated: 616, untreated: 617 },
  years: 3,
  comparedWith: 'stopping after three doses',
  source: extension,
  effects: [
    {
      outcome: 'spine fracture seen on X-ray',
      relative: { measure: 'odds ratio', value: 0.51, interval: 'not published where we looked', source: extension },
      treated: { percent: 3.0, source: { ...extension, seen: 'memory', note: '14 women' } },
      untreated: { percent: 6.2, source: { ...extension, seen: 'memory', note: '30 women' } },
      found: 'fewer',
    },
  ],
};
