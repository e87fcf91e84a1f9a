/**
 * Bone markers looked at after what follows denosumab: turnover may rebound though another medicine was given, and a raised marker
 * asks a prescriber about a second dose (ECTS 2021, Tsourdi, JCEM 106:264; docs/readiness.md, "Clocks"). No verdict changes.
 */
import { type Day, addMonths, shortDate } from '../calendar/day.ts';
import { isDenosumab } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { isSampled } from './is-sampled.ts';
import type { SampleDue } from './samples-due.ts';

/** Undefined: none is due. Of a dose given elsewhere it is looked after there. */
export function markersAfterDenosumab(record: SubjectRecord, protocol: Protocol, today: Day): SampleDue | undefined {
  const { number } = protocol;
  const dose = onlyDoseAfterDenosumab(record, today);
  if (dose === undefined || dose.body.setting === 'elsewhere' || latest(record, 'died') !== undefined) return undefined;
  if (today > addMonths(dose.on, number.replacementTakenMonths)) return undefined;
  const months = [number.denosumabMarkersFirstMonths, number.denosumabMarkersSecondMonths].find(
    (after) => !isSampled(record, ['CTX', 'P1NP'], { from: addMonths(dose.on, after - 1), until: today }),
  );
  if (months === undefined) return undefined;
  const by = addMonths(dose.on, months);
  const when = today <= by ? `sample by ${shortDate(by)}` : `their sample was due by ${shortDate(by)}`;
  const name = `${dose.body.medicine} of ${shortDate(dose.on)}`;
  return {
    by,
    says: `bone markers after ${name}, which followed denosumab: ${when}; raised, a prescriber decides about a second dose`,
  };
}

/** The whole dose of another bone medicine that followed the last denosumab, where none has followed it. */
function onlyDoseAfterDenosumab(record: SubjectRecord, today: Day): Fact<'dose'> | undefined {
  const whole = factsOf(record, 'dose').filter(({ on, body }) => on <= today && body.partMilliliters === undefined);
  const last = whole.findLastIndex(({ body }) => isDenosumab(body.medicine));
  const [next, ...more] = last === -1 ? [] : whole.slice(last + 1);
  return more.length === 0 ? next : undefined;
}
