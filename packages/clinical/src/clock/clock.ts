/**
 * A bone medicine whose effect is lost when nothing follows is a promise with a date. The clock runs from its last dose until
 * another bone medicine is given or begun, and tells how urgent the next one is; it changes no verdict (docs/readiness.md, "Clocks").
 */
import { type Day, day, shortDate } from '../calendar/day.ts';
import { type BoneMedicine, isDenosumab } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { isBegunInstead } from './begun-instead.ts';
import { denosumabTimes } from './denosumab.ts';
import { followOnTimes } from './follow-on.ts';
import { placesOf } from '../visit/place.ts';

export const clockTiers = ['running', 'on the worklist', 'first in line', 'alarm', 'highest alarm'] as const;
export type ClockTier = (typeof clockTiers)[number];

/** The days on which a clock strikes. */
export type ClockTimes = {
  readonly due: Day;
  readonly listFrom: Day;
  /** First in line from here while no replacement is booked. */
  readonly firstInLineFrom: Day;
  /** The next medicine must be reached by this day. */
  readonly reachBy: Day;
  readonly alarmFrom: Day;
  readonly highestFrom: Day | undefined;
  /** A place before this day is for the medicine itself, not for what follows it. */
  readonly replacesFrom: Day;
  /** What follows is prescribed, or is the medicine itself. */
  readonly isOrdered: boolean;
  /** From here a prescriber is asked the same day where it cannot be reached in time. */
  readonly prescriberFrom: Day;
  /** "denosumab last on 15 Jan 2026, due 15 Jul 2026" */
  readonly says: string;
  /** "alarm since 12 Aug 2026 (28 days late)"; said from the alarm on. */
  readonly alarmSays: string;
  readonly highestSays: string;
  /** What to ask the person from the alarm on. */
  readonly ask: readonly string[];
  /** Said beside the window when the next medicine cannot be reached in time. */
  readonly prescriberToday: string;
};

export type Clock = {
  readonly tier: ClockTier;
  readonly medicine: BoneMedicine;
  readonly last: Fact<'dose'>;
  /** The day the next dose or its replacement is due. */
  readonly due: Day;
  readonly reachBy: Day;
  /** The day by which somebody must act: today from first in line on. */
  readonly actBy: Day;
  /** The day, still to come and in time, on which a prescriber decided that another medicine is due. */
  readonly plannedOn: Day | undefined;
  /** Date of a booked place that replaces it in time. */
  readonly replacementOn: Day | undefined;
  readonly says: string;
  readonly ask: readonly string[];
  readonly prescriberToday: string | undefined;
};

/**
 * The clock as it stands on a day; undefined if nothing waits for a successor. `windowFirst` is the first day on which the
 * prescribed medicine could be given, if there is one.
 */
export function clockOf(
  record: SubjectRecord,
  protocol: Protocol,
  today: Day,
  windowFirst: Day | undefined,
): Clock | undefined {
  const last = lastWholeDose(record, today);
  if (last === undefined || isOver(record, protocol, last, today)) return undefined;
  const { medicine } = last.body;
  const times = isDenosumab(medicine) ? denosumabTimes(protocol, last) : followOnTimes(record, protocol, last, today);
  if (times === undefined) return undefined;
  const booked = placesOf(record).find((place) => place.on >= today && place.on >= times.replacesFrom);
  const replacementOn = booked !== undefined && booked.on <= times.reachBy ? booked.on : undefined;
  const tier = tierOn(today, times, replacementOn);
  const isAlarm = tier === 'alarm' || tier === 'highest alarm';
  const intended = intendedSince(record, last, today);
  const isPlanned = intended !== undefined && intended.dueOn <= times.reachBy && today <= intended.dueOn;
  const plannedOn = isPlanned ? intended.dueOn : undefined;
  const unreachable =
    replacementOn === undefined &&
    plannedOn === undefined &&
    (!times.isOrdered || windowFirst === undefined || windowFirst > times.reachBy);
  return {
    tier,
    medicine,
    last,
    due: times.due,
    reachBy: times.reachBy,
    actBy: tier === 'running' ? times.listFrom : tier === 'on the worklist' ? actOnListBy(times, replacementOn) : today,
    plannedOn,
    replacementOn,
    says: sentence(tier, times, replacementOn) + intendedSays(intended),
    ask: isAlarm ? times.ask : [],
    prescriberToday: isAlarm || (unreachable && today >= times.prescriberFrom) ? times.prescriberToday : undefined,
  };
}

/** The newest whole dose of any bone medicine of this service's regimens: the oncology strength is oncology's. */
const lastWholeDose = (record: SubjectRecord, today: Day): Fact<'dose'> | undefined =>
  factsOf(record, 'dose').findLast(
    ({ on, body }) => on <= today && body.partMilliliters === undefined && body.medicine !== 'zoledronic acid 4 mg',
  );

/** Other ends of the promise: the person has died, or another bone medicine was begun elsewhere. */
const isOver = (record: SubjectRecord, { number }: Protocol, last: Fact<'dose'>, today: Day): boolean =>
  latest(record, 'died') !== undefined || isBegunInstead(record, last, today, number.replacementTakenMonths);

/** What a prescriber decided instead since the dose, and by when. It is an intention: the clock runs on until it is given or begun. */
type Intended = { readonly to: string; readonly dueOn: Day };

function intendedSince(record: SubjectRecord, last: Fact<'dose'>, today: Day): Intended | undefined {
  const review = factsOf(record, 'course-review').findLast(({ on }) => on >= last.on && on <= today);
  return review?.body.outcome === 'other treatment' ? { to: review.body.to, dueOn: day(review.body.dueOn) } : undefined;
}

const actOnListBy = (times: ClockTimes, replacementOn: Day | undefined): Day =>
  replacementOn === undefined ? times.firstInLineFrom : times.due;

function tierOn(today: Day, times: ClockTimes, replacementOn: Day | undefined): ClockTier {
  if (times.highestFrom !== undefined && today >= times.highestFrom) return 'highest alarm';
  if (today >= times.alarmFrom) return 'alarm';
  if (today >= times.due || (today >= times.firstInLineFrom && replacementOn === undefined)) return 'first in line';
  return today >= times.listFrom ? 'on the worklist' : 'running';
}

const intendedSays = (intended: Intended | undefined): string =>
  intended === undefined
    ? ''
    : `; ${intended.to} decided, due ${shortDate(intended.dueOn)}, not recorded as given or begun`;

function sentence(
  tier: ClockTier,
  { says, alarmSays, highestSays }: ClockTimes,
  replacementOn: Day | undefined,
): string {
  const place =
    replacementOn === undefined ? 'no replacement booked' : `replacement booked for ${shortDate(replacementOn)}`;
  switch (tier) {
    case 'running':
      return says;
    case 'on the worklist':
    case 'first in line':
      return `${says}; ${place}`;
    case 'alarm':
      return `${says}; ${alarmSays}; ${place}`;
    case 'highest alarm':
      return `${says}; ${alarmSays}, ${highestSays}; ${place}`;
  }
}
