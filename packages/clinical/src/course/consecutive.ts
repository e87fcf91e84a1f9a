/** So many doses in a row without a planned break: a specialist looks before another (docs/readiness.md R7). */
import { shortDate } from '../calendar/day.ts';
import type { Fact } from '../record/patient-record.ts';
import type { ReviewNeeded } from './review.ts';

/** Counting doses since the newest planned break of any time, across courses. */
export function consecutiveDoses(
  counting: readonly Fact<'dose'>[],
  reviews: readonly Fact<'course-review'>[],
): readonly Fact<'dose'>[] {
  const lastBreak = reviews.findLast(({ body }) => body.outcome === 'planned break');
  return lastBreak === undefined ? counting : counting.filter(({ on }) => on >= lastBreak.on);
}

/** Needed from the dose that reached the number until a specialist's review dated on or after it carries on or opens a new course. */
export function specialistReview(
  counting: readonly Fact<'dose'>[],
  reviews: readonly Fact<'course-review'>[],
  everyReview: readonly Fact<'course-review'>[],
  most: number,
): ReviewNeeded | undefined {
  const inARow = consecutiveDoses(counting, everyReview);
  const reached = inARow[most - 1];
  if (reached === undefined) return undefined;
  const looked = reviews.some(
    ({ on, body }) =>
      on >= reached.on &&
      (body.outcome === 'carry on' || body.outcome === 'new course') &&
      body.capacity === 'specialist',
  );
  return looked
    ? undefined
    : {
        because: 'consecutive doses given',
        since: reached.on,
        says: `${inARow.length} doses in a row, the limit of ${most} reached on ${shortDate(reached.on)}: a specialist's review`,
      };
}
