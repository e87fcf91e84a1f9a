/**
 * A stretch of days on which a requirement says one thing. A class, so that its working is a method of all of them together: a
 * person's answer has some thirty, and a closure for each would be a good part of what an answer costs.
 */
import { type Day, addDays } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Judgement } from '../requirements/requirement.ts';
import type { Verdict } from './verdict.ts';
import type { Span, Working } from './working.ts';

export class StandingSpan implements Span {
  readonly from: Day;
  readonly verdict: Verdict;
  readonly cause: string;
  readonly nearLimit: boolean;
  readonly exception: Uuid | undefined;
  until: Day | undefined;
  readonly #judged: Judgement;

  /** Until something else is said, it is said for ever. */
  constructor(from: Day, judged: Judgement) {
    this.from = from;
    this.until = undefined;
    this.verdict = judged.verdict;
    this.cause = judged.cause;
    this.nearLimit = judged.nearLimit;
    this.exception = judged.exception;
    this.#judged = judged;
  }

  isOf(judged: Judgement): boolean {
    return judged === this.#judged;
  }

  endsBefore(day: Day): void {
    this.until = addDays(day, -1);
  }

  working(): Working {
    return this.#judged.working();
  }
}
