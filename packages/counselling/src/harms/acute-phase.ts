/** The reaction in the first three days: how many, by the number of the dose, and what lowers it. Facts: fact sheet 5c. */
import type { Share, Source } from '../source.ts';

const trial = 'Black 2007 NEJM 356:1809';
const read: Source = { citation: trial, seen: 'read', note: 'as 32, 7 and 3; the decimals are from memory' };
const memory: Source = { citation: trial, seen: 'memory' };

export type DoseReaction = { readonly dose: 1 | 2 | 3; readonly treated: Share; readonly untreated: Share };

/** Any of the five commonest complaints within three days of the drip. */
export const reactionByDose: readonly DoseReaction[] = [
  { dose: 1, treated: { percent: 31.6, source: read }, untreated: { percent: 6.2, source: memory } },
  { dose: 2, treated: { percent: 6.6, source: read }, untreated: { percent: 2.1, source: memory } },
  { dose: 3, treated: { percent: 2.8, source: read }, untreated: { percent: 1.1, source: memory } },
];

const wide: Source = { citation: 'Reid 2010 JCEM 95:4380, PMID 20554708', seen: 'read' };
const label: Source = { citation: 'zoledronic acid 5 mg product text (EU/UK) 4.8', seen: 'memory' };

/** Counted more widely: the same people, more than thirty kinds of complaint; and what the product text says. */
export const reactionCountedWidely: {
  readonly firstDose: { readonly treated: Share; readonly untreated: Share };
  readonly productText: readonly Share[];
} = {
  firstDose: { treated: { percent: 42.4, source: wide }, untreated: { percent: 11.7, source: wide } },
  productText: [44.7, 16.7, 10.2].map((percent) => ({ percent, source: label })),
};

export type Lowering = {
  readonly what: string;
  /** What was counted. */
  readonly counted: string;
  readonly withIt: Share;
  readonly withoutIt: Share;
};

const wark: Source = { citation: 'Wark 2012 Osteoporos Int 23:503, doi 10.1007/s00198-011-1563-8', seen: 'read' };

/** Paracetamol every six hours for three days, begun four hours after the drip. */
export const whatLowersIt: readonly Lowering[] = [
  {
    what: 'paracetamol',
    counted: 'felt worse in the three days after a first drip',
    withIt: { percent: 46.3, source: wark },
    withoutIt: { percent: 75.9, source: wark },
  },
  {
    what: 'paracetamol',
    counted: 'had a rise in temperature after a first drip',
    withIt: { percent: 37.3, source: wark },
    withoutIt: { percent: 63.5, source: wark },
  },
];

export const alsoTried: readonly { readonly says: string; readonly source: Source }[] = [
  {
    says: 'Ibuprofen did as well (36.8 and 48.5 per cent), but it is hard on the kidneys: a prescriber is asked first.',
    source: wark,
  },
  {
    says: 'Fluvastatin before the drip did not help.',
    source: { citation: 'Silverman 2011 Osteoporos Int 22:2337, doi 10.1007/s00198-010-1448-2', seen: 'memory' },
  },
];

export const moreLikelyIn: { readonly says: string; readonly source: Source } = {
  says: 'It was more common after a first dose, in younger people, and in those who had never had bone tablets.',
  source: { citation: 'Reid 2010 JCEM 95:4380, PMID 20554708', seen: 'read' },
};
