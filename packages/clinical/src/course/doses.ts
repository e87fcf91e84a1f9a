/**
 * Which doses count: whole doses of the medicine, and part doses a prescriber said count. The interval runs from any dose
 * given, whole or part, counted or not (docs/readiness.md, R6).
 */
import type { Day } from '../calendar/day.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type Doses = {
  /** In the order of their days. */
  readonly counting: readonly Fact<'dose'>[];
  /** Part doses about which no prescriber has decided. */
  readonly undecided: readonly Fact<'dose'>[];
  /** The last one given, whole or part, whatever a prescriber said of its count. */
  readonly last: Fact<'dose'> | undefined;
};
/** Of each medicine ever given. */
export type DosesGiven = ReadonlyMap<BoneMedicine, Doses>;

export const noDoses: Doses = { counting: [], undecided: [], last: undefined };

export function dosesGiven(record: SubjectRecord, on: Day): DosesGiven {
  const given = new Map<
    BoneMedicine,
    { counting: Fact<'dose'>[]; undecided: Fact<'dose'>[]; last: Fact<'dose'> | undefined }
  >();
  for (const dose of factsOf(record, 'dose')) {
    if (dose.on > on) continue;
    const { medicine, partMilliliters } = dose.body;
    let of = given.get(medicine);
    if (of === undefined) given.set(medicine, (of = { counting: [], undecided: [], last: undefined }));
    of.last = dose;
    const decision = partMilliliters === undefined ? 'counts' : partDoseDecision(record, dose, on);
    if (decision === 'counts') of.counting.push(dose);
    if (decision === undefined) of.undecided.push(dose);
  }
  return given;
}

function partDoseDecision(record: SubjectRecord, dose: Fact<'dose'>, on: Day): 'counts' | 'does not count' | undefined {
  const newest = factsOf(record, 'prescriber-decision').findLast(
    ({ body, on: decidedOn }) =>
      decidedOn <= on &&
      body.about === dose.id &&
      (body.question === 'part dose counts' || body.question === 'part dose does not count'),
  );
  if (newest === undefined) return undefined;
  return newest.body.question === 'part dose counts' ? 'counts' : 'does not count';
}
