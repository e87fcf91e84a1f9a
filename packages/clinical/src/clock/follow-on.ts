/**
 * What builds bone is lost when nothing holds it: after the last dose of romosozumab, after the end of teriparatide, another
 * medicine follows without a gap. The regimen says within what time, and its sources.
 */
import { type Day, addDays, addMonths, day as dayOf, shortDate } from '../calendar/day.ts';
import { type Course, courseOf } from '../course/course.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Regimen } from '../protocol/regimen.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import type { ClockTimes } from './clock.ts';

/** Undefined: nothing has to follow this medicine. */
export function followOnTimes(
  record: SubjectRecord,
  protocol: Protocol,
  last: Fact<'dose'>,
  today: Day,
): ClockTimes | undefined {
  const regimen = protocol.sheet.regimens.find(({ medicine }) => medicine === last.body.medicine);
  if (regimen?.followOn === undefined) return undefined;
  const { dueMonths, reachMonths, listMonths, firstInLineMonths } = regimen.followOn;
  const course = courseOf(record, protocol, today);
  const end = endOf(course, regimen, last);
  const due = addMonths(end, dueMonths);
  const reachBy = addMonths(end, reachMonths);
  const alarmFrom = addDays(reachBy, 1);
  const name = last.body.medicine;
  return {
    due,
    listFrom: addMonths(due, -listMonths),
    firstInLineFrom: addMonths(due, -firstInLineMonths),
    reachBy,
    alarmFrom,
    highestFrom: undefined,
    replacesFrom: addDays(end, 1),
    isOrdered: course.regimen?.medicine !== regimen.medicine,
    prescriberFrom: addMonths(due, -firstInLineMonths),
    says: `${name} ${end > today ? 'ends' : 'ended'} on ${shortDate(end)}, what follows is due ${shortDate(due)}`,
    alarmSays: `alarm since ${shortDate(alarmFrom)} (not reached by ${shortDate(reachBy)})`,
    highestSays: '',
    ask: [],
    prescriberToday: `prescriber today: order the medicine that follows ${name}`,
  };
}

/** The last planned dose, as if each still to come came when due; the last day of what is taken daily. */
function endOf(course: Course, regimen: Regimen, last: Fact<'dose'>): Day {
  if (regimen.lastsMonths !== undefined)
    return last.body.until === undefined ? addMonths(last.on, regimen.lastsMonths) : dayOf(last.body.until);
  // Once another medicine is ordered, no further dose of this one is to come.
  if (course.regimen?.medicine !== regimen.medicine) return last.on;
  const toCome = Math.max(0, (course.planned?.count ?? regimen.plannedDoses) - course.doses.length);
  return addMonths(last.on, toCome * regimen.intervalMonths);
}
