/**
 * What became of everybody who began here: when they had their first dose, whether they came for the second and the third, and
 * if not, when they were last on the way and why not. Told from the notes of today: who said no and came later has come.
 */
import { type Day, addDays, addMonths, plainDate, shortDate } from '../calendar/day.ts';
import { courseOf } from '../course/course.ts';
import { dosesGiven } from '../course/doses.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, latest } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';
import type { Held } from '../standing/transitions.ts';
import type { Observed } from './incidence.ts';

export const stepEnds = ['came', 'fell out', 'ended by decision', 'died'] as const;
export type StepEnd = (typeof stepEnds)[number];
export type StepTaken = Observed<StepEnd> & {
  readonly from: Day;
  /** The day of the end, or the day they were last seen on the way. */
  readonly on: Day;
  readonly why: string;
};

/** Counting doses of the yearly drip, the first of them given by this service; undefined: they did not begin here. */
export function begunHere(record: SubjectRecord, today: Day): readonly Fact<'dose'>[] | undefined {
  const counting = dosesGiven(record, today).get('zoledronic acid 5 mg')?.counting ?? [];
  const setting = counting[0]?.body.setting;
  return setting === 'this service' || setting === 'home' ? counting : undefined;
}

export const yearBegun = (doses: readonly Fact<'dose'>[]): string => plainDate(doses[0]?.on ?? (0 as Day)).slice(0, 4);

/** From dose number `dose` to the next. Undefined: they never had it. */
export function stepAfter(record: SubjectRecord, dose: number, today: Day): StepTaken | undefined {
  const doses = begunHere(record, today);
  const given = doses?.[dose - 1];
  if (doses === undefined || given === undefined) return undefined;
  const end = (of: StepTaken['end'], on: Day, why: string): StepTaken => {
    const after = Math.max(on, given.on) as Day;
    return { end: of, from: given.on, on: after, days: after - given.on, why };
  };
  const next = doses[dose];
  if (next !== undefined) return end('came', next.on, `dose ${dose + 1} on ${shortDate(next.on)}`);
  const died = latest(record, 'died');
  if (died !== undefined) return end('died', died.on, 'died');
  const { held, since, by } = heldBy(record, today);
  const left = leaving[held];
  return left === undefined || since < given.on
    ? end('still under way', today, 'still under way')
    : end(left, since, whyLeft(held, by));
}

/** Where somebody stands who is no longer on the way. Handed over to another service: seen until then. */
const leaving: Partial<Record<Held, StepTaken['end']>> = {
  'said no': 'fell out',
  'cannot be reached': 'fell out',
  closed: 'ended by decision',
  'moved to other treatment': 'ended by decision',
  'on planned break': 'ended by decision',
  'transferred out': 'still under way',
};

function whyLeft(held: Held, by: Fact | undefined): string {
  switch (by?.kind) {
    case 'refusal': {
      const { to, words } = (by as Fact<'refusal'>).body;
      return `no to ${to}: "${words}"`;
    }
    case 'closed':
      return `closed: ${(by as Fact<'closed'>).body.reason}`;
    case 'cannot-be-reached':
      return `cannot be reached: ${(by as Fact<'cannot-be-reached'>).body.tried}`;
    case 'transfer-out':
      return `handed over to ${(by as Fact<'transfer-out'>).body.to}`;
    case 'course-review':
      return `review: ${(by as Fact<'course-review'>).body.outcome}`;
    default:
      return held;
  }
}

export const stayingEnds = ['off treatment', 'died'] as const;
export type StayingEnd = (typeof stayingEnds)[number];
export type Stayed = Omit<StepTaken, 'end'> & { readonly end: Observed<StayingEnd>['end'] };

/**
 * How long somebody stayed on treatment from the first dose: off it from the first day on which a dose was overdue by the
 * protocol's days, or from the day they said no or could not be reached. A decision to pause, to change or to end, and a
 * handing over, end the looking, not the treatment.
 */
export function stayed(record: SubjectRecord, protocol: Protocol, today: Day): Stayed | undefined {
  const doses = begunHere(record, today);
  const first = doses?.[0];
  const course = courseOf(record, protocol, today);
  // Where nobody knows when the next was due, nobody can say that it was late.
  if (doses === undefined || first === undefined || course.intervalMonths === undefined) return undefined;
  const months = course.intervalMonths;
  const grace = underRegimen(protocol, course.regimen?.id).number.overdueAfterDays;
  const end = (of: Stayed['end'], on: Day, why: string): Stayed => ({
    end: of,
    from: first.on,
    on,
    days: on - first.on,
    why,
  });
  for (const [index, dose] of doses.entries()) {
    const late = addDays(addMonths(dose.on, months), grace + 1);
    const overdue = end('off treatment', late, `dose ${index + 2} overdue from ${shortDate(late)}`);
    const taken = stepAfter(record, index + 1, today);
    if (taken === undefined) break;
    if (taken.end === 'came') {
      if (taken.on > late) return overdue;
      continue;
    }
    // After the planned doses a review comes first: nothing is due, and nothing is late.
    const nothingDue =
      taken.end === 'ended by decision' || (taken.end === 'still under way' && course.due === undefined);
    if (taken.on >= late) return nothingDue ? end('still under way', late, taken.why) : overdue;
    switch (taken.end) {
      case 'died':
        return end('died', taken.on, taken.why);
      case 'fell out':
        return end('off treatment', taken.on, taken.why);
      case 'ended by decision':
      case 'still under way':
        return end('still under way', taken.on, taken.why);
    }
  }
  return end('still under way', today, 'still under way');
}
