/** The course: planned doses not used up, no break or end by review, nothing new on treatment unreviewed (docs/readiness.md R7). */
import { type Day, day as dayOf, shortDate } from '../calendar/day.ts';
import { specialistReview } from '../course/consecutive.ts';
import type { CourseEvent } from '../course/course-events.ts';
import { eventDuringBreak, unreviewedOnTreatment } from '../course/review.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Threshold } from '../readiness/working.ts';
import { noDoses } from '../course/doses.ts';
import { dosesOfCourse, ownDoses, ownReviews } from '../course/own-course.ts';
import type { Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import { type Judge, type Path, type Requirement, always, judgement, readyPath, withException } from './requirement.ts';

const reads = ['course', 'prescriptions', 'prescription', 'doses', 'carryOnAssumed', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

/** Doses before a review, and who says so. */
function planned(
  evidence: Read,
  reviews: readonly Fact<'course-review'>[],
  protocol: Protocol,
): { readonly doses: number; readonly source: string } {
  for (const { body, on } of reviews.toReversed()) {
    if (body.outcome === 'carry on') return { doses: body.toDoses, source: `course review of ${shortDate(on)}` };
    if (body.outcome === 'new course') return { doses: body.plannedDoses, source: `course review of ${shortDate(on)}` };
  }
  const own = evidence.prescription?.body.plannedDoses;
  if (own !== undefined) return { doses: own, source: 'prescription' };
  return { doses: protocol.regimen.plannedDoses, source: protocol.regimen.source };
}

function judge(evidence: Read, protocol: Protocol): Judge {
  const reviews = ownReviews(evidence.course.reviews, evidence.prescriptions, protocol);
  const review = reviews[reviews.length - 1];
  const { counting } = evidence.doses.get(protocol.regimen.medicine) ?? noDoses;
  const own = ownDoses(counting, evidence.prescriptions, protocol);
  const given = dosesOfCourse(own, reviews);
  const { doses, source } = planned(evidence, reviews, protocol);
  const inputs = [
    ...given.map(({ on, id, body }) => ({ label: 'dose of this course', text: body.medicine, on, entry: id })),
    ...(review === undefined
      ? []
      : [{ label: 'course review', text: review.body.outcome, on: review.on, entry: review.id }]),
  ];
  const thresholds: Threshold[] = [{ label: 'planned doses', text: String(doses), source }];
  const reviewedBy = (whom: 'a prescriber' | 'a specialist'): Path => ({
    is: 'blocked',
    by: {
      what: `${whom}'s review of the course`,
      who: 'prescriber',
      step: 'review',
      settled: () => ({ carryOnAssumed: true }),
    },
  });
  const blocked = reviewedBy('a prescriber');
  const stops = (cause: string, says: string, event?: CourseEvent, path = blocked): Judge =>
    always(
      judgement('not ready', cause, () => ({
        says,
        inputs:
          event === undefined
            ? inputs
            : [...inputs, { label: 'what happened', text: event.says, on: event.on, entry: event.entry }],
        thresholds,
      })),
      path,
    );

  function withoutException(): Judge {
    if (evidence.carryOnAssumed)
      return always(
        judgement('ready', 'course', () => ({ says: 'If a review says carry on.', inputs, thresholds })),
        readyPath,
      );
    if (review?.body.outcome === 'planned break') {
      const event = eventDuringBreak(evidence.course, review, given, protocol);
      if (event !== undefined)
        return stops(
          `course review: ${event.says}`,
          `Something new during the planned break: ${event.says}. A review comes now.`,
          event,
        );
      const reviewOn = dayOf(review.body.reviewOn);
      const onBreak = judgement('not ready', `planned break until ${shortDate(reviewOn)}`, () => ({
        says: `On a planned break; review on ${shortDate(reviewOn)}.`,
        inputs,
        thresholds,
      }));
      const over = judgement('not ready', 'review after the break', () => ({
        says: `The planned break ended on ${shortDate(reviewOn)}: a review comes first.`,
        inputs,
        thresholds,
      }));
      return { changes: [reviewOn], on: (day: Day) => (day < reviewOn ? onBreak : over), path: () => blocked };
    }
    if (review?.body.outcome === 'other treatment')
      return stops('moved to another treatment', `A review on ${shortDate(review.on)} moved to ${review.body.to}.`);
    if (review?.body.outcome === 'stop')
      return stops('treatment ended by review', `A review on ${shortDate(review.on)} ended the treatment.`);
    if (given.length >= doses)
      return stops('course review', `${given.length} of ${doses} planned doses given: a review comes before another.`);
    const specialist = specialistReview(own, reviews, evidence.course.reviews, protocol.number.maxConsecutiveDoses);
    if (specialist !== undefined) {
      thresholds.push({ key: 'maxConsecutiveDoses' });
      return stops("a specialist's review of the course", `${specialist.says}.`, undefined, reviewedBy('a specialist'));
    }
    const event = unreviewedOnTreatment(evidence.course, given, protocol)[0];
    if (event !== undefined)
      return stops(
        `course review: ${event.says}`,
        `Something new on treatment: ${event.says}. A review comes before the next dose.`,
        event,
      );
    return always(
      judgement('ready', 'course', () => ({
        says: `Dose ${given.length + 1} of ${doses} planned.`,
        inputs,
        thresholds,
      })),
      readyPath,
    );
  }
  return withException(withoutException(), exceptionFor(evidence, protocol, 'course review'), 'course review');
}

export const course: Requirement<(typeof reads)[number]> = {
  id: 'course',
  title: 'Course',
  clearedBy: "a prescriber's course review",
  exceptionPossible: true,
  reads,
  judge,
};
