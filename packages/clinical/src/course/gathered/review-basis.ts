/**
 * What a decision about the course would lead to, said before it is signed: the same sentences on the screen, the command line
 * and in the letter. `ReviewBasis` holds all it needs, so that a screen can tell it while someone types.
 */
import { type Day, addDays, addMonths, shortDate } from '../../calendar/day.ts';
import { counted } from '../../kinds-texts/words.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import type { SubjectRecord } from '../../record/patient-record.ts';
import { placeFrom } from '../../visit/place.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { isAtOrAbove, steroidsOn } from '../steroids.ts';

export type ReviewBasis = {
  readonly today: Day;
  readonly given: number;
  readonly lifetime: number;
  readonly consecutive: number;
  readonly maxConsecutive: number;
  /** Only a specialist may let it go on. */
  readonly needsSpecialist: boolean;
  readonly lastDose: Day | undefined;
  /** The day from which the interval since the last dose is over. */
  readonly anniversary: Day | undefined;
  /** Undefined: the regimen recalls nobody. */
  readonly recallLeadDays: number | undefined;
  /** Usual end of a planned break, where that is still to come; and its latest. */
  readonly breakUntil: Day | undefined;
  readonly breakLatest: Day;
  /** The day of a place that is booked: nobody comes for a dose that is not given. */
  readonly booked: Day | undefined;
  /** Steroids that allow no planned break now. */
  readonly steroids: readonly string[];
};

export function reviewBasisOf(
  record: SubjectRecord,
  facts: CourseFacts,
  course: Course,
  protocol: Protocol,
  today: Day,
): ReviewBasis {
  const { number } = protocol;
  const from = course.lastDose?.on ?? today;
  const usual = addMonths(from, number.breakMonths);
  return {
    today,
    given: course.doses.length,
    lifetime: course.lifetime,
    consecutive: course.consecutive,
    maxConsecutive: number.maxConsecutiveDoses,
    needsSpecialist: course.consecutive >= number.maxConsecutiveDoses,
    lastDose: course.lastDose?.on,
    anniversary: course.anniversary,
    recallLeadDays: course.regimen?.recall === 'none' ? undefined : number.recallLeadDays,
    breakUntil: usual > today ? usual : undefined,
    breakLatest: addMonths(from, number.breakLongestMonths),
    booked: placeFrom(record, today)?.on,
    steroids: steroidsOn(facts, today)
      .filter((one) => isAtOrAbove(one, protocol))
      .map(({ body }) => body.name),
  };
}

export type ReviewChoice =
  | { readonly outcome: 'carry on'; readonly toDoses: number }
  | { readonly outcome: 'planned break'; readonly reviewOn: Day }
  | { readonly outcome: 'other treatment'; readonly to: string; readonly dueOn: Day }
  | { readonly outcome: 'stop' }
  | { readonly outcome: 'new course'; readonly plannedDoses: number };

/** What follows, a sentence each. */
export function consequencesOf(basis: ReviewBasis, choice: ReviewChoice): readonly string[] {
  switch (choice.outcome) {
    case 'carry on': {
      const left = choice.toDoses - basis.given;
      return left <= 0
        ? [`${counted(basis.given, 'dose')} of this course are given already: the review stays open.`]
        : [
            `Dose ${basis.given + 1} of ${choice.toDoses} ${nextDue(basis)}`,
            `The course is reviewed again after dose ${choice.toDoses}, at once after a fracture, new back pain or lost height.`,
            ...specialistAgain(basis, left),
          ];
    }
    case 'new course':
      return [
        `A new course: the next dose is dose 1 of ${choice.plannedDoses}; it ${nextDue(basis)}`,
        `${counted(basis.lifetime, 'dose')} in all so far stay counted.`,
        ...specialistAgain(basis, choice.plannedDoses),
      ];
    case 'planned break':
      return [
        `No dose, and nobody is recalled, until the review on ${shortDate(choice.reviewOn)}.`,
        'The review opens at once after a fracture, new back pain, lost height, a new steroid, bone lost on a scan or a marker that rose.',
        'Until the review the person stands on the list of those on a planned break.',
        ...placeGivenUp(basis),
      ];
    case 'other treatment':
      return [
        `${choice.to || 'The other treatment'} starts on ${shortDate(choice.dueOn)}: the person stays on the list until then, so that nothing is forgotten.`,
        'No further dose here, and no recall.',
        ...placeGivenUp(basis),
      ];
    case 'stop':
      return [
        'No further dose and no recall. The person stays in review until they are closed with a reason.',
        ...placeGivenUp(basis),
      ];
  }
}

function nextDue({ anniversary, recallLeadDays, today }: ReviewBasis): string {
  if (anniversary === undefined) return 'waits for the work-up: nothing has been given yet.';
  if (recallLeadDays === undefined)
    return `is due on ${shortDate(anniversary)}; nobody is recalled under this regimen: it needs a date of its own.`;
  const recall = addDays(anniversary, -recallLeadDays);
  return anniversary <= today
    ? `has been due since ${shortDate(anniversary)}; the recall begins now.`
    : `is due on ${shortDate(anniversary)}; the recall ${recall <= today ? 'begins now' : `begins on ${shortDate(recall)}`}.`;
}

const specialistAgain = ({ consecutive, maxConsecutive }: ReviewBasis, left: number): readonly string[] =>
  consecutive < maxConsecutive && consecutive + left > maxConsecutive
    ? [`After ${counted(maxConsecutive, 'dose')} in a row a specialist looks again.`]
    : [];

const placeGivenUp = ({ booked }: ReviewBasis): readonly string[] =>
  booked === undefined ? [] : [`A place is booked on ${shortDate(booked)}: it has to be given up.`];
