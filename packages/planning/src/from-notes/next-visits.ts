/** Of everybody in care: the week in which the next dose of the course is due, or that they wait for it today. */
import {
  type Day,
  type Protocol,
  type Standing,
  type SubjectRecord,
  type UnitCalendar,
  addDays,
  addMonths,
  clockOf,
  courseOf,
  day,
  factsOf,
  isDenosumab,
  latest,
  protocolFor,
  standingOf,
} from '@twelvemonth/clinical';
import type { InSteps } from '../in-steps.ts';
import type { DueGroup } from '../look-ahead/inputs.ts';

export type NextVisits = {
  /** By dose, the first number for dose 1. */
  readonly waiting: readonly number[];
  readonly due: readonly DueGroup[];
  readonly pausesEnding: readonly { readonly week: number; readonly people: number }[];
  /** Visits a week of those on another regimen that is given in a chair or injected here. */
  readonly otherVisitsPerWeek: number;
};

const daysPerWeek = 7;
const weeksPerMonth = 365.25 / 12 / daysPerWeek;

const beforeFirst: ReadonlySet<Standing> = new Set(['referral received', 'in work-up']);
const inCare: ReadonlySet<Standing> = new Set([
  'referral received',
  'in work-up',
  'waiting for a place',
  'booked',
  'here today',
  'put off',
  'between doses',
  'overdue',
]);

type Asked = {
  readonly sheet: Protocol;
  readonly today: Day;
  readonly calendar: UnitCalendar;
  readonly workUpWeeks: number;
};

type Next =
  | { readonly is: 'waiting' | 'due'; readonly dose: number; readonly week: number }
  | { readonly is: 'pause ending'; readonly week: number }
  | { readonly is: 'other regimen'; readonly perWeek: number };

/** The day from which a first dose is due: after denosumab its own day, else when working-up will be over. */
function firstDue(record: SubjectRecord, { sheet, today, workUpWeeks }: Asked, isWorkedUp: boolean): Day {
  const clock = clockOf(record, sheet, today, undefined);
  if (clock !== undefined && isDenosumab(clock.medicine)) return clock.due;
  const referred = latest(record, 'referral')?.on;
  return isWorkedUp || referred === undefined ? today : addDays(referred, Math.round(workUpWeeks * daysPerWeek));
}

/** A review that waits after the planned doses, or a planned break: in both somebody decides whether another course begins. */
function pauseEnds(record: SubjectRecord, { sheet, today }: Asked): Day | undefined {
  const review = factsOf(record, 'course-review').findLast(({ on }) => on <= today);
  if (review?.body.outcome === 'planned break') return day(review.body.reviewOn);
  const last = courseOf(record, sheet, today).lastDose;
  return last === undefined ? undefined : addMonths(last.on, sheet.number.breakMonths);
}

function nextOf(record: SubjectRecord, asked: Asked): Next | undefined {
  const { sheet, today, calendar } = asked;
  const { standing } = standingOf(record, sheet, today);
  const weekOf = (on: Day): number => Math.max(0, Math.floor((on - today) / daysPerWeek));
  const { regimen } = protocolFor(sheet, record, today);
  const isOther = regimen.id !== sheet.regimen.id;
  if (standing === 'on planned break' || standing === 'in review') {
    const ends = isOther ? undefined : pauseEnds(record, asked);
    return ends === undefined ? undefined : { is: 'pause ending', week: weekOf(ends) };
  }
  if (!inCare.has(standing)) return undefined;
  if (isOther)
    return regimen.given === 'daily at home' || regimen.recall === 'none'
      ? undefined
      : { is: 'other regimen', perWeek: 1 / (regimen.intervalMonths * weeksPerMonth) };
  const course = courseOf(record, sheet, today, calendar);
  const dose = course.nextDoseNumber;
  const on = course.due ?? firstDue(record, asked, !beforeFirst.has(standing));
  return on > today || beforeFirst.has(standing)
    ? { is: 'due', dose, week: weekOf(on) }
    : { is: 'waiting', dose, week: 0 };
}

const byWeekAndDose = (a: DueGroup, b: DueGroup): number => a.week - b.week || a.dose - b.dose;

export function* nextVisitsInSteps(records: readonly SubjectRecord[], asked: Asked): InSteps<NextVisits> {
  const { plannedDoses } = asked.sheet.regimen;
  const waiting = Array.from({ length: plannedDoses }, () => 0);
  const due = new Map<string, DueGroup>();
  const pauses = new Map<number, number>();
  let otherVisitsPerWeek = 0;
  for (const record of records) {
    yield;
    const next = nextOf(record, asked);
    if (next === undefined) continue;
    if (next.is === 'other regimen') otherVisitsPerWeek += next.perWeek;
    else if (next.is === 'pause ending') pauses.set(next.week, (pauses.get(next.week) ?? 0) + 1);
    else {
      // Beyond the planned doses they come like the last of them.
      const dose = Math.min(next.dose, plannedDoses);
      const key = `${next.week} ${dose}`;
      if (next.is === 'waiting') waiting[dose - 1]! += 1;
      else due.set(key, { week: next.week, dose, people: (due.get(key)?.people ?? 0) + 1 });
    }
  }
  return {
    waiting,
    due: [...due.values()].toSorted(byWeekAndDose),
    pausesEnding: [...pauses].map(([week, people]) => ({ week, people })).toSorted((a, b) => a.week - b.week),
    otherVisitsPerWeek,
  };
}
