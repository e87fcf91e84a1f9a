/** One thing a review asks about, answered from the notes: met, not met, or it cannot be said, with the entries it rests on. */
import type { Uuid } from '../../ledger/entry.ts';

export type Answer = 'met' | 'not met' | 'cannot say';
export type Criterion = {
  /** What is asked: "two or more new fragility fractures". */
  readonly asks: string;
  readonly is: Answer;
  /** Why, with numbers and dates. */
  readonly says: string;
  readonly entries: readonly Uuid[];
  readonly source: string;
};

/** Unknown never counts as met, and never as not met. */
export const both = (...answers: readonly Answer[]): Answer =>
  answers.includes('not met') ? 'not met' : answers.includes('cannot say') ? 'cannot say' : 'met';
export const either = (...answers: readonly Answer[]): Answer =>
  answers.includes('met') ? 'met' : answers.includes('cannot say') ? 'cannot say' : 'not met';
export const answer = (is: boolean): Answer => (is ? 'met' : 'not met');
