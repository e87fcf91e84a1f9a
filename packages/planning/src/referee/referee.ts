/**
 * Whether a plan is allowed, whoever drew it. Shares no code with the search, so that a mistake there cannot excuse itself
 * here. Speaks in sentences; says nothing when there is nothing to say.
 */
import type { Day } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';
import { nurses } from './rules/nurses.ts';
import { dose, orderOfSteps } from './rules/order-of-steps.ts';
import { chairs, preparation, secondCheck, watchPlaces } from './rules/places-and-hands.ts';
import { timesAreComplete } from './rules/times-are-complete.ts';
import { arrival, nobodyWaitsWhoMustNot, window } from './rules/window-and-arrival.ts';
import type { Rule, Sentence } from './sentence.ts';

/** In the order in which they are told. */
const rules: readonly Rule[] = [
  timesAreComplete,
  window,
  arrival,
  orderOfSteps,
  dose,
  nobodyWaitsWhoMustNot,
  nurses,
  preparation,
  secondCheck,
  chairs,
  watchPlaces,
];

/** Every way in which the plan breaks a rule of the day; empty when it is allowed. */
export const broken = (day: Day, plan: Plan): readonly Sentence[] => rules.flatMap((rule) => rule(day, plan));
