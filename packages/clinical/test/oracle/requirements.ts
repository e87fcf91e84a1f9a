/** All requirements on one day, as things stand in a view: A1 of docs/readiness.md. */
import type { RequirementId } from '@twelvemonth/clinical';
import type { Answer } from './answer.ts';
import { adjustedCalcium, kidneyFunction, vitaminD } from './bloods.ts';
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
  symptoms,
} from './others.ts';
import type { View } from './view.ts';

/** R13 and R14 are not the checker's yet: random rule sheets leave them out (random-settings.ts). */
const notYet = ['teeth-and-jaw', 'secondary-causes'] as const;
const passedOver = (): Answer => ({ verdict: 'ready' });

export const requirements: Readonly<Record<RequirementId, (view: View, day: number) => Answer>> = {
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
  'teeth-and-jaw': passedOver,
  'secondary-causes': passedOver,
};
export const requirementNames = (Object.keys(requirements) as RequirementId[]).filter(
  (name) => !(notYet as readonly RequirementId[]).includes(name),
);

export const holds = (answer: Answer): boolean => answer.verdict === 'ready' || answer.verdict === 'does not apply';

/** Any not ready; else any cannot say; else ready; all of them not applying. */
export function together(answers: readonly Answer[]): Answer['verdict'] {
  const verdicts = answers.map((answer) => answer.verdict);
  if (verdicts.includes('not ready')) return 'not ready';
  if (verdicts.includes('cannot say')) return 'cannot say';
  return verdicts.includes('ready') ? 'ready' : 'does not apply';
}
