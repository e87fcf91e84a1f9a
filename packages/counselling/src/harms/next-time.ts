/**
 * What somebody felt after the last dose, carried into the talk about the next one: how much less likely it is then, and the
 * plan. Only for the usual reaction; a severe one, or one at the chair, is a prescriber's before anything is planned.
 */
import type { Source } from '../source.ts';
import { reactionByDose, whatLowersIt } from './acute-phase.ts';

export type FeltAfter = {
  readonly says: string;
  readonly severity: 'mild' | 'moderate' | 'severe';
  /** Seen while it ran or in the watch after it. */
  readonly atTheChair: boolean;
};

export type NextTime =
  | { readonly is: 'a prescriber first'; readonly because: readonly string[] }
  | {
      readonly is: 'less likely next time';
      readonly felt: readonly string[];
      readonly numbers: string;
      readonly plan: readonly string[];
      readonly sources: readonly Source[];
    };

/** Undefined: nothing was told. `dosesGiven`: counting the one after which it was felt. */
export function nextTimeAfter(felt: readonly FeltAfter[], dosesGiven: number): NextTime | undefined {
  if (felt.length === 0) return undefined;
  const grave = felt.filter(({ severity, atTheChair }) => severity === 'severe' || atTheChair);
  if (grave.length > 0) return { is: 'a prescriber first', because: grave.map(({ says }) => says) };
  const [first] = reactionByDose;
  const next = reactionByDose.find(({ dose }) => dose === Math.min(3, dosesGiven + 1));
  const [paracetamol] = whatLowersIt;
  if (first === undefined || next === undefined || paracetamol === undefined) return undefined;
  const of = (percent: number): number => Math.round(percent);
  return {
    is: 'less likely next time',
    felt: felt.map(({ says }) => says),
    numbers: `Of 100 people ${of(first.treated.percent)} felt ill in the three days after a first drip, and ${of(next.treated.percent)} after drip number ${next.dose}${dosesGiven + 1 > next.dose ? ' (later ones were not counted)' : ''}. ${100 - of(next.treated.percent)} did not. Having felt ill once does not mean an allergy.`,
    plan: [
      `Paracetamol as the unit's table says, from four hours after the drip for three days: of 100 people ${of(paracetamol.withIt.percent)} felt worse with it, ${of(paracetamol.withoutIt.percent)} without.`,
      'Drink plenty the day before and on the day, unless told to limit fluids.',
      'Keep three quiet days, and somebody who looks in.',
      'We write down who rings afterwards, and on which day.',
    ],
    sources: [next.treated.source, first.treated.source, paracetamol.withIt.source],
  };
}
