/**
 * The course of treatment as far as it has come: three counts of doses, what is planned, when the next is due, whether a
 * review comes first, when the recall and its bloods fall. Rules: docs/readiness.md R6 and R7; recall: the protocol.
 */
import { type Day, addDays, addMonths } from '../calendar/day.ts';
import { type UnitCalendar, everyDay, lastDrawFor } from '../calendar/unit-calendar.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import type { Regimen } from '../protocol/regimen.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { consecutiveDoses, specialistReview } from './consecutive.ts';
import { courseFactsOf } from './course-facts.ts';
import { dosesGiven, noDoses } from './doses.ts';
import { bisphosphonateDays, tabletDays } from './exposure.ts';
import { intervalMonthsOf } from './interval-months.ts';
import { lastDenosumab } from './last-denosumab.ts';
import { dosesOfCourse, ownDoses, ownReviews } from './own-course.ts';
import { type PlannedDoses, type ReviewNeeded, reviewNeeded } from './review.ts';

export type Course = {
  readonly regimen: Regimen | undefined;
  /** Counting doses of this course, by date. */
  readonly doses: readonly Fact<'dose'>[];
  /** Counting doses since the last planned break, across courses. */
  readonly consecutive: number;
  /** Counting doses of the medicine ever; a restart never resets it. */
  readonly lifetime: number;
  /** Counting doses of every bone medicine ever given. */
  readonly given: readonly { readonly medicine: BoneMedicine; readonly doses: number }[];
  /** Days on bisphosphonate tablets, as far as their start and end are recorded; overlaps count once. */
  readonly tabletDays: number;
  /** Days in a lifetime under any bisphosphonate; undefined without a protocol to say how long each works. */
  readonly bisphosphonateDays: number | undefined;
  /** Doses before a review; undefined without a protocol, a review or a prescription that says so. */
  readonly planned: PlannedDoses | undefined;
  readonly intervalMonths: number | undefined;
  readonly lastDose: Fact<'dose'> | undefined;
  /** Counted from the last dose given, whole or part, never chained; undefined before the first, where a review comes first, and where no next dose is called for. */
  readonly due: Day | undefined;
  /** The anniversary whatever a review may say: when the gap since the last dose reaches the interval. */
  readonly anniversary: Day | undefined;
  /** Number the next dose would have in this course: 1 for the first. */
  readonly nextDoseNumber: number;
  /** No counting dose ever, here or elsewhere. */
  readonly firstTimer: boolean;
  readonly review: ReviewNeeded | undefined;
  /** Part doses about which a prescriber has yet to decide. */
  readonly undecidedPartDoses: readonly Fact<'dose'>[];
  readonly recall: Recall | undefined;
};

export type Recall = {
  readonly from: Day;
  /** A sample drawn between these days is in date on the due date, with its result in. */
  readonly bloods: { readonly from: Day; readonly until: Day } | undefined;
};

/** The course on a day. Facts dated later are not looked at. */
export function courseOf(
  record: SubjectRecord,
  sheet: Protocol | undefined,
  on: Day,
  calendar: UnitCalendar = everyDay,
): Course {
  const prescriptions = factsOf(record, 'prescription').filter((one) => one.on <= on);
  const prescription = prescriptions[prescriptions.length - 1];
  const protocol = sheet === undefined ? undefined : underRegimen(sheet, prescription?.body.regimen);
  const regimen = protocol?.regimen;
  const given = dosesGiven(record, on);
  const { counting, undecided, last } = given.get(regimen?.medicine ?? 'zoledronic acid 5 mg') ?? noDoses;
  const facts = courseFactsOf(record, on);
  const reviews = protocol === undefined ? facts.reviews : ownReviews(facts.reviews, prescriptions, protocol);
  const own = protocol === undefined ? counting : ownDoses(counting, prescriptions, protocol);
  const doses = dosesOfCourse(own, reviews);
  const planned = plannedBy(reviews, prescription, regimen);
  const lastDose = counting[counting.length - 1];
  const intervalMonths =
    protocol === undefined
      ? undefined
      : intervalMonthsOf(protocol, prescription, counting, lastDenosumab(record, on)?.on).months;
  const anniversary =
    last === undefined || intervalMonths === undefined ? undefined : addMonths(last.on, intervalMonths);
  const review =
    reviewNeeded(facts, doses, reviews, planned, protocol, on) ??
    (protocol === undefined
      ? undefined
      : specialistReview(own, reviews, facts.reviews, protocol.number.maxConsecutiveDoses));
  const due = review === undefined && regimen?.recall !== 'none' && !isOnHold(reviews) ? anniversary : undefined;
  return {
    regimen,
    doses,
    consecutive: consecutiveDoses(own, facts.reviews).length,
    lifetime: counting.length,
    given: [...given].map(([medicine, of]) => ({ medicine, doses: of.counting.length })),
    tabletDays: tabletDays(record, on),
    bisphosphonateDays: protocol === undefined ? undefined : bisphosphonateDays(record, protocol, on),
    planned,
    intervalMonths,
    lastDose,
    due,
    anniversary,
    nextDoseNumber: doses.length + 1,
    firstTimer: counting.length === 0,
    review,
    undecidedPartDoses: undecided,
    recall: due === undefined || protocol === undefined ? undefined : recallFor(due, protocol, calendar),
  };
}

/** On a planned break or moved to another treatment nothing is due, and nobody is recalled. */
function isOnHold(reviews: readonly Fact<'course-review'>[]): boolean {
  const outcome = reviews[reviews.length - 1]?.body.outcome;
  return outcome === 'planned break' || outcome === 'other treatment';
}

function plannedBy(
  reviews: readonly Fact<'course-review'>[],
  prescription: Fact<'prescription'> | undefined,
  regimen: Regimen | undefined,
): PlannedDoses | undefined {
  for (const { body } of reviews.toReversed()) {
    if (body.outcome === 'carry on') return { count: body.toDoses, from: 'review' };
    if (body.outcome === 'new course') return { count: body.plannedDoses, from: 'review' };
  }
  if (prescription?.body.plannedDoses !== undefined)
    return { count: prescription.body.plannedDoses, from: 'prescription' };
  return regimen === undefined ? undefined : { count: regimen.plannedDoses, from: 'regimen' };
}

function recallFor(due: Day, protocol: Protocol, calendar: UnitCalendar): Recall {
  const from = addDays(due, -protocol.number.recallLeadDays);
  const earliest = addDays(due, -protocol.number.bloodsValidDays);
  const latest = lastDrawFor(
    calendar,
    due,
    { days: protocol.number.resultDays, counted: protocol.sheet.resultDaysCounted },
    earliest,
  );
  return { from, bloods: latest === undefined ? undefined : { from: earliest, until: latest } };
}

/** "first dose", "dose 2 of 3", "dose 4, beyond the 3 planned" */
export const nextDoseInWords = (course: Course): string =>
  course.firstTimer ? 'first dose' : numbered(course.nextDoseNumber, course);

/** A dose that was given, by its number in the course: "dose 3 of 3". */
export function givenDoseInWords(course: Course, dose: Fact<'dose'>): string {
  const index = course.doses.findIndex(({ id }) => id === dose.id);
  return index === -1 ? 'a dose that does not count' : numbered(index + 1, course);
}

function numbered(number: number, { planned }: Course): string {
  if (planned === undefined) return `dose ${number}`;
  return number <= planned.count
    ? `dose ${number} of ${planned.count}`
    : `dose ${number}, beyond the ${planned.count} planned`;
}
