/** The sentences of the sheet, in one place: short, both ways, one number for everything, never a relative risk alone. */
import type { Benefit, BenefitCounts } from './benefit.ts';
import { type OutOf, numberText } from './counts.ts';
import type { Treatment } from './fit.ts';
import type { RiskOf } from './person.ts';
import type { Outcome } from './trials/trial.ts';

export const WORDING = 'deciding-1';

const many: Readonly<Record<RiskOf | Outcome, readonly [one: string, more: string]>> = {
  'hip fracture': ['breaks a hip', 'break a hip'],
  'major fracture': ['breaks a hip, spine, wrist or arm', 'break a hip, spine, wrist or arm'],
  'any fracture': ['breaks a bone', 'break a bone'],
  'any clinical fracture': ['breaks a bone', 'break a bone'],
  'spine fracture seen on X-ray': ['has a spine break seen on X-ray', 'have a spine break seen on X-ray'],
  'spine fracture that was felt': ['has a spine break that is felt', 'have a spine break that is felt'],
  'fracture outside the spine': ['breaks a bone other than the spine', 'break a bone other than the spine'],
  death: ['dies', 'die'],
};

/** "13 break a hip and 987 do not" */
export function haveText(outcome: RiskOf | Outcome, { have, haveNot }: { have: number; haveNot: number }): string {
  const [one, more] = many[outcome];
  return `${numberText(have)} ${have === 1 ? one : more} and ${numberText(haveNot)} ${haveNot === 1 ? 'does' : 'do'} not`;
}

const withWords: Readonly<Record<Treatment, string>> = {
  'yearly drip': 'With the yearly drip',
  'weekly tablets': 'With weekly tablets',
  'injection every six months': 'With an injection every six months',
};
export const treatmentText = (treatment: Treatment): string => withWords[treatment];

export const lead = (of: OutOf, years: number): string =>
  `Of ${numberText(of)} people like you, over ${years} ${years === 1 ? 'year' : 'years'}:`;

export function benefitSentences(benefit: Benefit, counts: BenefitCounts): readonly string[] {
  return [
    `${withWords[benefit.treatment]}, ${haveText(benefit.of, counts.withTreatment)}.`,
    sparedSentence(counts.spared),
    rangeSentence(counts),
  ];
}

function sparedSentence(spared: number): string {
  if (spared === 0) return 'That is less than one in this number.';
  return spared > 0 ? `That is ${numberText(spared)} fewer.` : `That is ${numberText(-spared)} more.`;
}

function rangeSentence({ sparedRange: { from, to } }: BenefitCounts): string {
  if (from < 0)
    return `The trial leaves room for doubt: from ${numberText(-from)} more to ${numberText(Math.max(0, to))} fewer. It cannot tell for sure if this helps here.`;
  return from === to
    ? 'The range is less than one in this number.'
    : `The trial leaves room for doubt: it may be ${numberText(from)} to ${numberText(to)} fewer.`;
}

/** What a person needs to know of each choice, beside its numbers. Practice page 8 rows 3 to 12; product texts. */
export type Choice = {
  readonly choice: Treatment | 'no treatment' | 'not now';
  readonly title: string;
  readonly medicine: string | undefined;
  readonly says: readonly string[];
};

export const choices: readonly Choice[] = [
  {
    choice: 'yearly drip',
    title: 'A drip once a year',
    medicine: 'zoledronic acid 5 mg',
    says: [
      'A small drip in the arm, 15 to 30 minutes, once a year. Most people have three. Then we look again with you.',
      'You need a blood test, enough vitamin D, and a look at your teeth first.',
      'You may feel rough for up to three days, most of all after the first.',
    ],
  },
  {
    choice: 'weekly tablets',
    title: 'A tablet once a week',
    medicine: 'alendronic acid 70 mg',
    says: [
      'You take it on an empty stomach with a full glass of water. Then you stay upright for half an hour.',
      'It can upset the food pipe. It only works if it is taken for years.',
      'The rare harms to jaw and thigh bone are those of the drip.',
    ],
  },
  {
    choice: 'injection every six months',
    title: 'An injection every six months',
    medicine: 'denosumab 60 mg',
    says: [
      'A small injection under the skin, twice a year.',
      'It must not be late, and it must not stop without a plan. When it wears off, several spine bones may break.',
      'A low calcium level can follow, most of all if the kidneys are weak.',
    ],
  },
  {
    choice: 'no treatment',
    title: 'No treatment',
    medicine: undefined,
    says: [
      'Your risk stays as it is, and you have none of the harms of a medicine.',
      'Calcium, vitamin D, moving, and making falls less likely still help.',
    ],
  },
  {
    choice: 'not now',
    title: 'Not now',
    medicine: undefined,
    says: [
      'You can wait, think, and talk it over. That is a good outcome too.',
      'We agree on a day when we may ask again. You can come sooner. You can change your mind at any time.',
    ],
  },
];
