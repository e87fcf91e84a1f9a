/**
 * Everything a review of the course needs, gathered from the notes with what each line rests on: a value, for the screen, the
 * printer and the command line alike. It decides nothing: a prescriber does. Rules: docs/readiness.md R7; what is asked: the
 * practice of such services (doses, fractures, scans, markers, falls, steroid, thigh pain before any decision).
 */
import { type Day, shortDate } from '../../calendar/day.ts';
import { parsePartialDate } from '../../calendar/partial-date.ts';
import type { KindName } from '../../kinds/index.ts';
import type { Uuid } from '../../ledger/entry.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import { type SubjectRecord, factsOf } from '../../record/patient-record.ts';
import { courseFactsOf } from '../course-facts.ts';
import type { CourseEvent } from '../course-events.ts';
import { type Course, courseOf } from '../course.ts';
import { protocolFor } from '../prescribed.ts';
import { type ReviewNeeded, eventsNow } from '../review.ts';
import { carryingOn } from './carrying-on.ts';
import type { Criterion } from './criterion.ts';
import { type Failure, failureOf } from './failure.ts';
import { gapsOf } from './gaps.ts';
import { type ReviewBasis, reviewBasisOf } from './review-basis.ts';
import { sectionsOf } from './sections.ts';

export type GatheredLine = {
  readonly says: string;
  readonly on: Day | undefined;
  readonly entries: readonly Uuid[];
};
export type GatheredSection = {
  readonly title: string;
  readonly lines: readonly GatheredLine[];
  /** Said where there is no line. */
  readonly none: string;
  readonly source: string | undefined;
};
/** Something nobody has written down, and the kind of entry that would. */
export type Gap = { readonly says: string; readonly kind: KindName };

export type ReviewSheet = {
  readonly today: Day;
  readonly course: Course;
  readonly needed: ReviewNeeded | undefined;
  /** What happened and no review has looked at. */
  readonly events: readonly CourseEvent[];
  readonly sections: readonly GatheredSection[];
  readonly carryingOn: readonly Criterion[];
  readonly failure: Failure;
  readonly gaps: readonly Gap[];
  readonly basis: ReviewBasis;
};

export function reviewSheetOf(record: SubjectRecord, sheet: Protocol, today: Day): ReviewSheet {
  const course = courseOf(record, sheet, today);
  // The regimen's own numbers stand in place of the protocol's.
  const protocol = protocolFor(sheet, record, today);
  const facts = courseFactsOf(record, today);
  const identity = factsOf(record, 'identity').findLast(({ on }) => on <= today);
  const born = identity === undefined ? undefined : parsePartialDate(identity.body.born);
  return {
    today,
    course,
    needed: course.review,
    events: eventsNow(facts, course.doses, protocol),
    sections: sectionsOf(record, facts, course, protocol, today),
    carryingOn: carryingOn(facts, course, born, protocol, today),
    failure: failureOf(facts, course, protocol, today),
    gaps: gapsOf(record, facts, course, protocol, today),
    basis: reviewBasisOf(record, facts, course, protocol, today),
  };
}

/** "Review of the course: 3 doses of 3 given ... since 1 Sep 2025"; for a heading. */
export const whyReviewed = ({ needed }: Pick<ReviewSheet, 'needed'>): string =>
  needed === undefined ? 'No review is asked for now.' : `${needed.says}, since ${shortDate(needed.since)}`;
