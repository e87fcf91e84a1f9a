/** Harms that few people have, all told out of 10,000, with the plain words for how common. Facts: fact sheet 4b-4d and 5d. */
import { wilson } from '../risk.ts';
import type { Interval, Source } from '../source.ts';

/** Out of `outOf` people. `point` is missing where a source gives a range only. */
export type Frequency = { readonly point: number | undefined; readonly range: Interval | undefined };

export type RareHarm = {
  readonly what: string;
  readonly when: string;
  readonly treated: Frequency;
  readonly untreated: Frequency | undefined;
  /** What to do about it, or what else is known. */
  readonly says: string;
  readonly sources: readonly Source[];
};

export const rareOutOf = 10_000;

const counted = (events: number, people: number): Frequency => {
  const { from, to } = wilson(events, people);
  return {
    point: Math.round((events / people) * rareOutOf),
    range: { from: Math.round(from * rareOutOf), to: Math.round(to * rareOutOf) },
  };
};
const between = (from: number, to: number): Frequency => ({ point: undefined, range: { from, to } });
const about = (point: number): Frequency => ({ point, range: undefined });

const thighs: Source = {
  citation: 'Black 2020 NEJM 383:743',
  seen: 'read',
  note: '2 in White and 8 in Asian women, against 149 and 91 broken hips spared, of 10,000 each',
};

export const rareHarms: readonly RareHarm[] = [
  {
    what: 'a serious problem with the heart rhythm',
    when: 'in three years',
    treated: counted(50, 3862),
    untreated: counted(20, 3852),
    says: 'It was not seen in the trial after a broken hip. Tell us if your heart races or skips.',
    sources: [
      { citation: 'Black 2007 NEJM 356:1809', seen: 'memory', note: '50 of 3862 and 20 of 3852' },
      { citation: 'Lyles 2007 NEJM 357:1799', seen: 'read', note: 'similar in both groups' },
      { citation: 'MHRA 2008', seen: 'read', note: 'the risk seems low, the balance favourable' },
    ],
  },
  {
    what: 'a kidney blood test that is worse for a time',
    when: 'about ten days after a dose',
    treated: about(130),
    untreated: about(40),
    says: 'It went back to normal. It is why we test your blood first and ask you to drink.',
    sources: [{ citation: 'Black 2007 NEJM 356:1809', seen: 'memory', note: '1.2 to 1.3 per cent; "transient" read' }],
  },
  {
    what: 'a red, painful eye',
    when: 'in the week after a first dose',
    treated: { point: 110, range: { from: 50, to: 210 } },
    untreated: about(0),
    says: 'Drops cure it. A red, painful eye needs a doctor the same day.',
    sources: [
      { citation: 'Patel 2013 Ophthalmology 120:773, PMID 23290982', seen: 'read', note: '1.1 per cent (0.5 to 2.1)' },
    ],
  },
  {
    what: 'bone in the jaw that does not heal',
    when: 'in some years',
    treated: between(1, 10),
    untreated: undefined,
    says: 'It mostly follows a tooth that was pulled. It is why we ask about your teeth.',
    sources: [{ citation: 'SDCEP 2017', seen: 'memory', note: '1 to 10 of 10,000; AAOMS 2022: 2 at most' }],
  },
  {
    what: 'an unusual break of the thigh bone',
    when: 'in three years',
    treated: between(2, 8),
    untreated: undefined,
    says: 'New pain in the thigh or groin is a warning. Tell us at once.',
    sources: [thighs],
  },
];

/** The same study counted both, so that one can be held against the other. */
export const hipsSparedBeside: { readonly range: Interval; readonly source: Source } = {
  range: { from: 91, to: 149 },
  source: thighs,
};

export const howCommonWords = ['very common', 'common', 'uncommon', 'rare', 'very rare'] as const;
export type HowCommon = (typeof howCommonWords)[number];

/** The words product texts use (European Commission guideline on product texts 2009, from memory): by powers of ten. */
export function howCommon({ point, range }: Frequency): HowCommon {
  const most = range?.to ?? point ?? 0;
  const step = [1000, 100, 10, 1].findIndex((atLeast) => most >= atLeast);
  return howCommonWords[step === -1 ? 4 : step] ?? 'very rare';
}

/** Without a number that we know: said, not counted. */
export const withoutNumber: readonly string[] = [
  'A low calcium level can follow. It may show as tingling or cramps. It is why calcium and vitamin D are put right first.',
  'Strong pain in bones, joints or muscles can come days to months later.',
  'A strong allergic reaction, and trouble in the ear canal, are very rare.',
];
