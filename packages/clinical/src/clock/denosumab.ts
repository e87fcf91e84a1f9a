/**
 * Denosumab's effect ends at six months, and vertebrae may break in numbers when nothing follows: on the worklist from month
 * 4, first in line from month 5 when no replacement is booked and from the due date at the latest, an alarm 28 days after
 * it, the highest alarm 112 days after it. 60 mg and 120 mg alike.
 * Sources: the protocol's numbers; rules of docs/safety (hazard 21); MHRA drug safety update of August 2020 on the rebound.
 */
import { type Day, addDays, addMonths, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { ClockTimes } from './clock.ts';

export function denosumabTimes({ number }: Protocol, last: Fact<'dose'>): ClockTimes {
  const months = (count: number): Day => addMonths(last.on, count);
  const due = months(number.denosumabIntervalMonths);
  const { denosumabLateDays: late, denosumabReboundDays: rebound } = number;
  const alarmFrom = addDays(due, late);
  const highestFrom = addDays(due, rebound);
  return {
    due,
    listFrom: months(number.denosumabListMonths),
    firstInLineFrom: months(number.denosumabFirstInLineMonths),
    reachBy: months(number.denosumabReachMonths),
    alarmFrom,
    highestFrom,
    replacesFrom: last.on,
    isOrdered: true,
    prescriberFrom: months(number.denosumabListMonths),
    says: `denosumab last on ${shortDate(last.on)}, due ${shortDate(due)}`,
    alarmSays: `alarm since ${shortDate(alarmFrom)} (${late} days late)`,
    highestSays: `highest since ${shortDate(highestFrom)} (${rebound} days late: possible rebound, spine imaging is the prescriber's question)`,
    ask: ['new back pain?', 'lost height?'],
    prescriberToday: 'prescriber today: bridge with another dose, load vitamin D faster, or another medicine',
  };
}
