/** All requirements on one day, as things stand in a view: A1 of docs/readiness.md. */
import type { RequirementId } from '@twelvemonth/clinical';
import type { Answer } from './answer.ts';
import { adjustedCalcium } from './calcium.ts';
import { kidneyFunction } from './kidneys.ts';
import { vitaminD } from './vitamin-d.ts';
import { course } from './course.ts';
import {
  consent,
  hipRepair,
  hypersensitivity,
  identity,
  illness,
  interval,
  mineralMetabolism,
  otherBoneMedicines,
  pregnancy,
  prescription,
  secondaryCauses,
  symptoms,
  teethAndJaw,
} from './others.ts';
import type { View } from './view.ts';

const asked: Readonly<Record<RequirementId, (view: View, day: number) => Answer>> = {
  identity,
  hypersensitivity,
  pregnancy,
  illness,
  symptoms,
  'kidney-function': kidneyFunction,
  calcium: adjustedCalcium,
  'vitamin-d': vitaminD,
  'mineral-metabolism': mineralMetabolism,
  'hip-repair': hipRepair,
  interval,
  'other-bone-medicines': otherBoneMedicines,
  course,
  prescription,
  consent,
  'teeth-and-jaw': teethAndJaw,
  'secondary-causes': secondaryCauses,
};
export const requirementNames = Object.keys(asked) as RequirementId[];

/** What the ordered regimen leaves out does not apply, on any date (R0). */
export const requirements = Object.fromEntries(
  requirementNames.map((name) => [
    name,
    (view: View, day: number): Answer =>
      view.regimen.leavesOut.includes(name) ? { verdict: 'does not apply' } : asked[name](view, day),
  ]),
) as typeof asked;

export const holds = (answer: Answer): boolean => answer.verdict === 'ready' || answer.verdict === 'does not apply';

/** Any not ready; else any cannot say; else ready; all of them not applying. */
export function together(answers: readonly Answer[]): Answer['verdict'] {
  const verdicts = answers.map((answer) => answer.verdict);
  if (verdicts.includes('not ready')) return 'not ready';
  if (verdicts.includes('cannot say')) return 'cannot say';
  return verdicts.includes('ready') ? 'ready' : 'does not apply';
}
