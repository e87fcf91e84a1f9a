/** Whether a prescriber must look at the course before another dose, and why (docs/readiness.md, R7). */
import { type Day, day, shortDate } from '../calendar/day.ts';
import { counted } from '../kinds-texts/words.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type ReviewNeeded = {
  readonly because:
    | 'planned doses given'
    | 'consecutive doses given'
    | 'fracture on treatment'
    | 'symptom on treatment'
    | 'planned break over'
    | 'treatment ended by review';
  /** Since when it is needed. */
  readonly since: Day;
  readonly says: string;
};

export type PlannedDoses = { readonly count: number; readonly from: 'review' | 'prescription' | 'regimen' };

/** First reason that applies; undefined: none. `thisCourse` are the counting doses of this course. */
export function reviewNeeded(
  record: SubjectRecord,
  thisCourse: readonly Fact<'dose'>[],
  planned: PlannedDoses | undefined,
  on: Day,
): ReviewNeeded | undefined {
  const reviews = factsOf(record, 'course-review').filter((review) => review.on <= on);
  const newest = reviews[reviews.length - 1];
  if (newest?.body.outcome === 'planned break') {
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
  return somethingOnTreatment(record, thisCourse[0]?.on, newest?.on, on);
}

function somethingOnTreatment(
  record: SubjectRecord,
  firstDose: Day | undefined,
  reviewedOn: Day | undefined,
  on: Day,
): ReviewNeeded | undefined {
  if (firstDose === undefined) return undefined;
  const unreviewed = (event: Fact): boolean =>
    event.on > firstDose && event.on <= on && (reviewedOn === undefined || reviewedOn < event.on);
  const fractures = factsOf(record, 'fracture').filter(
    (one) => one.on > firstDose && one.on <= on && one.body.site !== 'other',
  );
  const fracture = fractures.find(
    (one, index) => unreviewed(one) && (one.body.site === 'hip' || one.body.site === 'spine' || index >= 1),
  );
  if (fracture !== undefined) {
    return {
      because: 'fracture on treatment',
      since: fracture.on,
      says: `${fracture.body.site} fracture on treatment, ${shortDate(fracture.on)}`,
    };
  }
  const cleared = new Set(factsOf(record, 'symptom-cleared').map(({ body }) => body.entry));
  const symptom = factsOf(record, 'symptom').find(
    (one) =>
      unreviewed(one) &&
      (one.body.what === 'back pain' || one.body.what === 'height loss') &&
      !cleared.has(one.id) &&
      !cleared.has(one.first),
  );
  return symptom === undefined
    ? undefined
    : {
        because: 'symptom on treatment',
        since: symptom.on,
        says: `new ${symptom.body.what} on treatment, ${shortDate(symptom.on)}`,
      };
}
