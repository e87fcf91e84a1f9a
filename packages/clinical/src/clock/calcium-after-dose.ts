/**
 * Calcium looked at after a dose: where a regimen is given at any clearance and that of the day of the dose was low, or not known,
 * a sample is due within the protocol's days (docs/readiness.md, "Clocks"). It changes no verdict: someone sees that it is had.
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import { kidneyFacts } from '../requirements/kidney-facts.ts';
import { kidneyFunction } from '../requirements/kidney-function.ts';
import { isSampled } from './is-sampled.ts';
import type { SampleDue } from './samples-due.ts';

/** Undefined: none is due. One of a dose given elsewhere is looked after there. */
export function calciumAfterDose(record: SubjectRecord, protocol: Protocol, today: Day): SampleDue | undefined {
  if (latest(record, 'died') !== undefined) return undefined;
  const dose = factsOf(record, 'dose').findLast(
    ({ on, body }) => on <= today && body.setting !== 'elsewhere' && regimenOf(protocol, body.medicine) !== undefined,
  );
  if (
    dose === undefined ||
    isSampled(record, ['calcium', 'adjusted calcium'], { from: addDays(dose.on, 1), until: today }) ||
    isKnownToBeEnough(record, protocol, dose)
  )
    return undefined;
  const by = addDays(dose.on, underItsRegimen(protocol, dose).number.calciumAfterDoseDays);
  const name = `${dose.body.medicine} of ${shortDate(dose.on)}`;
  const when = today <= by ? `sample by ${shortDate(by)}` : `its sample was due by ${shortDate(by)}`;
  return { by, says: `calcium after ${name}: ${when}` };
}

/** Of a medicine that a prescriber may let be given below the floor. */
const regimenOf = ({ sheet }: Protocol, medicine: BoneMedicine) =>
  sheet.regimens.find(
    (regimen) => regimen.medicine === medicine && regimen.belowClearanceFloor === 'a prescriber decides',
  );

const underItsRegimen = (protocol: Protocol, { body }: Fact<'dose'>): Protocol =>
  underRegimen(protocol, regimenOf(protocol, body.medicine)?.id);

/** On the day of the dose the kidney function was ready, and not by a prescriber's word. */
function isKnownToBeEnough(record: SubjectRecord, protocol: Protocol, dose: Fact<'dose'>): boolean {
  const { on } = dose;
  const under = underItsRegimen(protocol, dose);
  const evidence = evidenceOf(record, on);
  if (kidneyFunction.judge(evidence, under).on(on).verdict !== 'ready') return false;
  const facts = kidneyFacts(evidence, under);
  return !facts.isLowAt(facts.ageAt(on));
}
