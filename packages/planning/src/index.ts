/** Planning a day: the day as a value, a search for a plan, a referee for any plan, and proofs of how good one can be. */
export * from './answer/answer.ts';
export type { Reason } from './answer/impossible.ts';
export type { Remedy } from './answer/remedies.ts';
export * from './day/chains.ts';
export * from './day/day.ts';
export * from './day/shared-format.ts';
export * from './day/time-words.ts';
export * from './plan/objective.ts';
export * from './plan/plan.ts';
export * from './proof/day-bound.ts';
export * from './referee/referee.ts';
export type { RuleName, Sentence } from './referee/sentence.ts';
export type { Limit } from './search/limit.ts';
export * from './replan/replan.ts';
export * from './search/search.ts';
export * from './why/why.ts';
