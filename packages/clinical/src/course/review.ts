/** Whether a prescriber must look at the course before another dose, and why (docs/readiness.md, R7). */
import { type Day, day, shortDate } from '../calendar/day.ts';
import { counted } from '../kinds-texts/words.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import { type CourseEvent, eventsDuringBreak, eventsOnTreatment } from './course-events.ts';
import type { CourseFacts } from './course-facts.ts';

export type ReviewNeeded = {
  readonly because:
    | 'planned doses given'
    | 'consecutive doses given'
    | 'fracture on treatment'
    | 'symptom on treatment'
    | 'during the break'
    | 'planned break over'
    | 'treatment ended by review';
  /** Since when it is needed. */
  readonly since: Day;
  readonly says: string;
};

export type PlannedDoses = { readonly count: number; readonly from: 'review' | 'prescription' | 'regimen' };

/**
 * First reason that applies; undefined: none. `thisCourse` are the counting doses of this course, `reviews` those about the
 * medicine now prescribed.
 */
export function reviewNeeded(
  facts: CourseFacts,
  thisCourse: readonly Fact<'dose'>[],
  reviews: readonly Fact<'course-review'>[],
  planned: PlannedDoses | undefined,
  protocol: Protocol | undefined,
  on: Day,
): ReviewNeeded | undefined {
  const newest = reviews[reviews.length - 1];
  if (newest?.body.outcome === 'planned break') {
    const event = eventDuringBreak(facts, newest, thisCourse, protocol);
    if (event !== undefined) return { because: 'during the break', since: event.on, says: event.says };
    const reviewOn = day(newest.body.reviewOn);
    return reviewOn <= on
      ? { because: 'planned break over', since: reviewOn, says: `the planned break ended on ${shortDate(reviewOn)}` }
      : undefined;
  }
  if (newest?.body.outcome === 'stop') {
    return {
      because: 'treatment ended by review',
      since: newest.on,
      says: `a review on ${shortDate(newest.on)} ended the treatment`,
    };
  }
  const last = thisCourse[thisCourse.length - 1];
  if (planned !== undefined && last !== undefined && thisCourse.length >= planned.count) {
    return {
      because: 'planned doses given',
      since: last.on,
      says: `${counted(thisCourse.length, 'dose')} of ${planned.count} given: review before another`,
    };
  }
  const event = unreviewedOnTreatment(facts, thisCourse, protocol)[0];
  return event === undefined
    ? undefined
    : {
        because: event.because === 'fracture' ? 'fracture on treatment' : 'symptom on treatment',
        since: event.on,
        says: event.says,
      };
}

/** The first thing since the newest review began a planned break; undefined: nothing, or no break. */
export const eventDuringBreak = (
  facts: CourseFacts,
  newest: Fact<'course-review'> | undefined,
  thisCourse: readonly Fact<'dose'>[],
  protocol: Protocol | undefined,
): CourseEvent | undefined =>
  newest?.body.outcome === 'planned break'
    ? eventsDuringBreak(facts, newest, thisCourse[0]?.on, protocol)[0]
    : undefined;

/** What happened on treatment and no review has looked at: dated on or after it, and written when the notes told it. */
export function unreviewedOnTreatment(
  facts: CourseFacts,
  thisCourse: readonly Fact<'dose'>[],
  protocol: Protocol | undefined,
): readonly CourseEvent[] {
  const first = thisCourse[0];
  if (first === undefined) return [];
  return eventsOnTreatment(facts, first.on, protocol).filter(
    (event) => !facts.reviews.some(({ on, firstSeq }) => on >= event.on && firstSeq > event.toldBy),
  );
}

/** What asks for a review now: since the break began, or on treatment and unreviewed. */
export const eventsNow = (
  facts: CourseFacts,
  thisCourse: readonly Fact<'dose'>[],
  protocol: Protocol | undefined,
): readonly CourseEvent[] => {
  const newest = facts.reviews[facts.reviews.length - 1];
  return newest?.body.outcome === 'planned break'
    ? eventsDuringBreak(facts, newest, thisCourse[0]?.on, protocol)
    : unreviewedOnTreatment(facts, thisCourse, protocol);
};
