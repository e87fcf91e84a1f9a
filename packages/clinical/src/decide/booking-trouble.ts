/**
 * What stands against a place on a date: every requirement again, for that date. Inside the window nothing is held against
 * it (that the bloods be good is what a window says); outside it each requirement that is not ready is named and must be
 * taken on by name.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import type { DecisionContext } from '../readiness/context.ts';
import type { Readiness } from '../readiness/readiness.ts';
import { readiness, verdictOn } from '../readiness/ask.ts';
import type { Verdict } from '../readiness/verdict.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

export type BookingCause = {
  /** The name by which it is accepted. */
  readonly cause: RequirementId | 'no protocol in force';
  readonly verdict: Verdict;
  readonly says: string;
};

export type BookingTrouble = {
  readonly on: Day;
  readonly insideWindow: boolean;
  readonly verdict: Verdict;
  readonly headline: string;
  /** Empty inside the window. */
  readonly causes: readonly BookingCause[];
  readonly readiness: Readiness | undefined;
};

/** `on` is today or later. */
export function bookingTrouble(
  record: SubjectRecord,
  context: DecisionContext | undefined,
  today: Day,
  on: Day,
): BookingTrouble {
  if (context === undefined || !context.protocols.some(({ from }) => from <= on)) {
    const says = `no protocol is in force on ${shortDate(on)}`;
    return {
      on,
      insideWindow: false,
      verdict: 'cannot say',
      headline: `cannot say: ${says}`,
      causes: [{ cause: 'no protocol in force', verdict: 'cannot say', says }],
      readiness: undefined,
    };
  }
  const asked = readiness(record, context, today, { place: on });
  const that = verdictOn(asked, on);
  const { window } = asked;
  const insideWindow =
    that.verdict === 'ready' ||
    (window !== undefined && on >= window.first && (window.last === undefined || on <= window.last));
  const causes = insideWindow
    ? []
    : that.requirements
        .filter(({ verdict }) => verdict === 'not ready' || verdict === 'cannot say')
        .map(({ requirement, verdict, cause }) => ({ cause: requirement, verdict, says: cause }));
  return { on, insideWindow, verdict: that.verdict, headline: that.headline, causes, readiness: asked };
}
