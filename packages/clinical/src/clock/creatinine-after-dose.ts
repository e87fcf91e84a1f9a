/**
 * Creatinine looked at after a dose given near the clearance limit: a bisphosphonate into a vein may harm the kidneys (MHRA Drug Safety Update April 2010: consider it in people at risk, read; one to two weeks after, from memory).
 * It changes no verdict: someone sees that it is had (docs/readiness.md, "Clocks").
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import { eitherBelow } from '../formulas/creatinine-clearance.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { asksCreatinineAfter } from '../protocol/regimen.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import { KidneyFacts } from '../requirements/kidney-facts.ts';
import { isSampled } from './is-sampled.ts';
import type { SampleDue } from './samples-due.ts';

/** Undefined: none is due, or the unit asks for none (nought days). One of a dose given elsewhere is looked after there. */
export function creatinineAfterDose(record: SubjectRecord, protocol: Protocol, today: Day): SampleDue | undefined {
  const dose = factsOf(record, 'dose').findLast(({ on }) => on <= today);
  if (dose === undefined || dose.body.setting === 'elsewhere' || latest(record, 'died') !== undefined) return undefined;
  const regimen = protocol.sheet.regimens.find(
    (one) => one.medicine === dose.body.medicine && asksCreatinineAfter(one),
  );
  if (regimen === undefined) return undefined;
  const under = underRegimen(protocol, regimen.id);
  const { creatinineAfterDoseFromDays, creatinineAfterDoseByDays } = under.number;
  if (creatinineAfterDoseByDays === 0) return undefined;
  const from = addDays(dose.on, creatinineAfterDoseFromDays);
  const by = addDays(dose.on, creatinineAfterDoseByDays);
  if (isSampled(record, ['creatinine'], { from, until: today }) || !isNearTheLimit(record, under, dose))
    return undefined;
  const when =
    today <= by ? `sample from ${shortDate(from)} to ${shortDate(by)}` : `its sample was due by ${shortDate(by)}`;
  return {
    by,
    says: `creatinine after ${dose.body.medicine} of ${shortDate(dose.on)}, near the kidneys' limit: ${when}`,
  };
}

/**
 * By the creatinine and weight known on the day of the dose: below the band's end by either form. Where it was not known nothing is
 * given here; a dose of an old register is not chased for it.
 */
function isNearTheLimit(record: SubjectRecord, under: Protocol, { on }: Fact<'dose'>): boolean {
  const facts = new KidneyFacts(evidenceOf(record, on), under);
  const clearance = facts.birth === undefined ? undefined : facts.clearanceAt(facts.ageAt(on));
  return clearance !== undefined && eitherBelow(clearance, under.exact.nearLimitCeiling);
}
