/**
 * Denosumab is a promise with a date: its effect ends at six months, and vertebrae may break in numbers when nothing follows.
 * The clock runs from the last injection, 60 mg or 120 mg, until another bone medicine is given: on the worklist from month
 * 4, first in line from month 5 when no replacement is booked and from the due date at the latest, an alarm 28 days after
 * it, the highest alarm 112 days after it. Nothing of such a person waits.
 * Sources: the protocol's numbers; rules of docs/safety (hazard 21); MHRA drug safety update of August 2020 on the rebound.
 */
import { type Day, addDays, addMonths, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';

export const denosumabTiers = ['running', 'on the worklist', 'first in line', 'alarm', 'highest alarm'] as const;
export type DenosumabTier = (typeof denosumabTiers)[number];

export type DenosumabClock = {
  readonly tier: DenosumabTier;
  readonly lastInjection: Fact<'dose'>;
  /** The day the next dose or its replacement is due. */
  readonly due: Day;
  /** The replacement must be reached by this day, or a prescriber is asked today. */
  readonly reachBy: Day;
  readonly lateFrom: Day;
  readonly reboundFrom: Day;
  /** Date of a booked place that replaces it in time. */
  readonly replacementOn: Day | undefined;
  /** "alarm since 12 Aug 2026 (28 days late)" */
  readonly says: string;
  /** What to ask the person now. */
  readonly ask: readonly string[];
  /** Said beside the window when the replacement cannot be reached in time. */
  readonly prescriberToday: string | undefined;
};

const PRESCRIBER_TODAY = 'prescriber today: bridge with another dose, load vitamin D faster, or another medicine';
const REBOUND_QUESTIONS = ['new back pain?', 'lost height?'];

const isDenosumab = (dose: Fact<'dose'>): boolean => dose.body.medicine.startsWith('denosumab');

/** Other ends of the promise: the person has died, or a prescriber chose another treatment after the injection. */
function isOver(record: SubjectRecord, last: Fact<'dose'>): boolean {
  if (latest(record, 'died') !== undefined) return true;
  const review = latest(record, 'course-review');
  return review !== undefined && review.body.outcome === 'other treatment' && review.on >= last.on;
}

/**
 * The clock as it stands on a day; undefined if no denosumab waits for a successor.
 * `windowFirst` is the first day on which the replacement could be given, if there is one.
 */
export function denosumabClock(
  record: SubjectRecord,
  protocol: Protocol,
  today: Day,
  windowFirst: Day | undefined,
): DenosumabClock | undefined {
  const doses = factsOf(record, 'dose').filter((dose) => dose.on <= today && dose.body.partMilliliters === undefined);
  const lastInjection = doses.findLast(isDenosumab);
  if (lastInjection === undefined || doses.some((dose) => dose.on > lastInjection.on && !isDenosumab(dose)))
    return undefined;
  if (isOver(record, lastInjection)) return undefined;
  const { number } = protocol;
  const months = (count: number): Day => addMonths(lastInjection.on, count);
  const due = months(number.denosumabIntervalMonths);
  const reachBy = months(number.denosumabReachMonths);
  const lateFrom = addDays(due, number.denosumabLateDays);
  const reboundFrom = addDays(due, number.denosumabReboundDays);
  const booked = placesOf(record).find((place) => place.on >= today);
  const replacementOn = booked !== undefined && booked.on <= reachBy ? booked.on : undefined;
  const tier: DenosumabTier =
    today >= reboundFrom
      ? 'highest alarm'
      : today >= lateFrom
        ? 'alarm'
        : today >= due || (today >= months(number.denosumabFirstInLineMonths) && replacementOn === undefined)
          ? 'first in line'
          : today >= months(number.denosumabListMonths)
            ? 'on the worklist'
            : 'running';
  const unreachable = replacementOn === undefined && (windowFirst === undefined || windowFirst > reachBy);
  return {
    tier,
    lastInjection,
    due,
    reachBy,
    lateFrom,
    reboundFrom,
    replacementOn,
    says: sentence({ tier, lastInjection, due, lateFrom, reboundFrom, replacementOn, protocol }),
    ask: tier === 'alarm' || tier === 'highest alarm' ? REBOUND_QUESTIONS : [],
    prescriberToday:
      tier !== 'running' && (tier === 'alarm' || tier === 'highest alarm' || unreachable)
        ? PRESCRIBER_TODAY
        : undefined,
  };
}

type Said = Pick<DenosumabClock, 'tier' | 'lastInjection' | 'due' | 'lateFrom' | 'reboundFrom' | 'replacementOn'> & {
  readonly protocol: Protocol;
};

function sentence({ tier, lastInjection, due, lateFrom, reboundFrom, replacementOn, protocol }: Said): string {
  const { denosumabLateDays: late, denosumabReboundDays: rebound } = protocol.number;
  const last = `denosumab last on ${shortDate(lastInjection.on)}, due ${shortDate(due)}`;
  const place =
    replacementOn === undefined ? 'no replacement booked' : `replacement booked for ${shortDate(replacementOn)}`;
  switch (tier) {
    case 'running':
      return last;
    case 'on the worklist':
    case 'first in line':
      return `${last}; ${place}`;
    case 'alarm':
      return `${last}; alarm since ${shortDate(lateFrom)} (${late} days late); ${place}`;
    case 'highest alarm':
      return `${last}; alarm since ${shortDate(lateFrom)} (${late} days late), highest since ${shortDate(reboundFrom)} (${rebound} days late: possible rebound, spine imaging is the prescriber's question); ${place}`;
  }
}
