/** What became of those given a dose: who came for the next, who died before, who began again after a planned break. */
import {
  type Day,
  type Fact,
  type RegimenMedicine,
  type SubjectRecord,
  addDays,
  addMonths,
  day,
  dosesGiven,
  factsOf,
  latest,
} from '@twelvemonth/clinical';

/** How long after the next dose was due it still counts as coming back. A choice, no source. */
const graceDays = 182;

export type Outcomes = { yes: number; of: number };
export type CourseHistory = {
  /** After dose 1, dose 2, ...: of those alive, who came for the next in time. */
  readonly returned: readonly Outcomes[];
  readonly diedAfterFirst: Outcomes;
  readonly diedLater: Outcomes;
  readonly startedAgain: Outcomes;
};

const none = (): Outcomes => ({ yes: 0, of: 0 });

function count(outcomes: Outcomes, isYes: boolean): void {
  outcomes.of += 1;
  if (isYes) outcomes.yes += 1;
}

export type CourseCounted = {
  readonly medicine: RegimenMedicine;
  readonly intervalMonths: number;
  readonly doses: number;
};

/** Doses of each course of this record: a review that opens a new course begins the count again. */
function coursesOf(record: SubjectRecord, medicine: RegimenMedicine, today: Day): Fact<'dose'>[][] {
  const opened = factsOf(record, 'course-review').filter(({ body }) => body.outcome === 'new course');
  const courses: Fact<'dose'>[][] = [];
  for (const dose of dosesGiven(record, today).get(medicine)?.counting ?? []) {
    const course = courses.at(-1);
    const before = course?.at(-1);
    const isNew = before === undefined || opened.some(({ on }) => on > before.on && on <= dose.on);
    if (isNew) courses.push([dose]);
    else course!.push(dose);
  }
  return courses;
}

function countDose(
  history: CourseHistory,
  { number, on, next }: { readonly number: number; readonly on: Day; readonly next: Day | undefined },
  { diedOn, leftOn, intervalMonths, today }: Life,
): void {
  const due = addMonths(on, intervalMonths);
  const until = addDays(due, graceDays);
  const died = diedOn !== undefined && diedOn < due;
  // Who went to another unit is followed there, and no longer here.
  if (leftOn !== undefined && leftOn > on && leftOn <= until && next === undefined) return;
  if (due <= today) count(number === 1 ? history.diedAfterFirst : history.diedLater, died);
  if (until > today || died) return;
  const returned = history.returned[number - 1];
  if (returned !== undefined) count(returned, next !== undefined && next <= until);
}

type Life = {
  readonly diedOn: Day | undefined;
  readonly leftOn: Day | undefined;
  readonly intervalMonths: number;
  readonly today: Day;
};

function countBreaks(history: CourseHistory, record: SubjectRecord, today: Day, diedOn: Day | undefined): void {
  for (const review of factsOf(record, 'course-review')) {
    if (review.body.outcome !== 'planned break') continue;
    const until = addDays(day(review.body.reviewOn), graceDays);
    if (until > today || (diedOn !== undefined && diedOn <= until)) continue;
    const again = factsOf(record, 'dose').some(({ on }) => on > review.on && on <= until);
    count(history.startedAgain, again);
  }
}

export function courseHistoryOf(
  records: readonly SubjectRecord[],
  { medicine, intervalMonths, doses }: CourseCounted,
  today: Day,
): CourseHistory {
  const history: CourseHistory = {
    returned: Array.from({ length: doses - 1 }, none),
    diedAfterFirst: none(),
    diedLater: none(),
    startedAgain: none(),
  };
  for (const record of records) {
    const diedOn = latest(record, 'died')?.on;
    const life = { diedOn, leftOn: latest(record, 'transfer-out')?.on, intervalMonths, today };
    for (const course of coursesOf(record, medicine, today))
      course.forEach(({ on }, index) =>
        countDose(history, { number: index + 1, on, next: course[index + 1]?.on }, life),
      );
    countBreaks(history, record, today, diedOn);
  }
  return history;
}
