/**
 * Calcium looked at after a dose: where a regimen is given at any clearance and that of the day of the dose was low, or not known,
 * a sample is due within the protocol's days, or every week for so many weeks (docs/readiness.md, "Clocks"). It changes no verdict: someone sees that it is had.
 */
import { DAYS_A_WEEK, type Day, addDays, shortDate } from '../calendar/day.ts';
import { plural } from '../kinds-texts/words.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import { KidneyFacts } from '../requirements/kidney-facts.ts';
import { kidneyFunction } from '../requirements/kidney-function.ts';
import { isSampled } from './is-sampled.ts';
import type { SampleDue } from './samples-due.ts';

/** Undefined: none is due. One of a dose given elsewhere is looked after there. */
export function calciumAfterDose(record: SubjectRecord, protocol: Protocol, today: Day): SampleDue | undefined {
  if (latest(record, 'died') !== undefined) return undefined;
  const dose = factsOf(record, 'dose').findLast(
    ({ on, body }) => on <= today && body.setting !== 'elsewhere' && regimenOf(protocol, body.medicine) !== undefined,
  );
  if (dose === undefined || isKnownToBeEnough(record, protocol, dose)) return undefined;
  const { calciumAfterDoseDays, calciumAfterDoseWeeks } = underItsRegimen(protocol, dose).number;
  const stretch =
    calciumAfterDoseWeeks === 0
      ? { from: addDays(dose.on, 1), by: addDays(dose.on, calciumAfterDoseDays), each: '', missed: '' }
      : weekAfter(dose.on, calciumAfterDoseWeeks, today, (from, by) => isCalciumHad(record, from, by));
  if (stretch === undefined || isCalciumHad(record, stretch.from, today)) return undefined;
  const { from, by, each, missed } = stretch;
  const name = `${dose.body.medicine} of ${shortDate(dose.on)}${each}`;
  const when =
    today > by
      ? `its sample was due by ${shortDate(by)}`
      : today < from
        ? `sample from ${shortDate(from)} to ${shortDate(by)}`
        : `sample by ${shortDate(by)}`;
  return { by, says: `calcium after ${name}: ${when}${missed}` };
}

const isCalciumHad = (record: SubjectRecord, from: Day, until: Day): boolean =>
  isSampled(record, ['calcium', 'adjusted calcium'], { from, until });

type Week = { readonly from: Day; readonly by: Day };

/**
 * The week whose calcium is looked for: that of today, the next where today's is had, the last once all are over. Undefined: the last
 * one is had. Blood cannot be drawn in the past, so a week that passed without is said beside the one looked for: somebody asks why.
 */
function weekAfter(
  dose: Day,
  weeks: number,
  today: Day,
  isHad: (from: Day, by: Day) => boolean,
): (Week & { readonly each: string; readonly missed: string }) | undefined {
  const now = Math.min(weeks, Math.max(1, Math.ceil((today - dose) / DAYS_A_WEEK)));
  const week = (of: number): Week => ({
    from: addDays(dose, DAYS_A_WEEK * (of - 1) + 1),
    by: addDays(dose, DAYS_A_WEEK * of),
  });
  const without = Array.from({ length: now - 1 }, (_, index) => index + 1).filter((of) => {
    const { from, by } = week(of);
    return !isHad(from, by);
  });
  const missed = without.length === 0 ? '' : `; none in week ${plural(without.map(String), 'and')}`;
  const wanted = isHad(week(now).from, today) ? now + 1 : now;
  return wanted > weeks ? undefined : { ...week(wanted), each: `, week ${wanted} of ${weeks}`, missed };
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
  const facts = new KidneyFacts(evidence, under);
  return !facts.isLowAt(facts.ageAt(on));
}
