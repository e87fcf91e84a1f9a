/** Which doses count: whole doses of zoledronic acid 5 mg, and part doses a prescriber said count (docs/readiness.md, R6). */
import type { Day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type Doses = {
  /** In the order of their days. */
  readonly counting: readonly Fact<'dose'>[];
  /** Part doses about which no prescriber has decided. */
  readonly undecided: readonly Fact<'dose'>[];
};

export function dosesBy(record: SubjectRecord, on: Day): Doses {
  const counting: Fact<'dose'>[] = [];
  const undecided: Fact<'dose'>[] = [];
  for (const dose of factsOf(record, 'dose')) {
    if (dose.on > on || dose.body.medicine !== 'zoledronic acid 5 mg') continue;
    const decision = dose.body.partMilliliters === undefined ? 'counts' : partDoseDecision(record, dose, on);
    if (decision === 'counts') counting.push(dose);
    if (decision === undefined) undecided.push(dose);
  }
  return { counting, undecided };
}

function partDoseDecision(record: SubjectRecord, dose: Fact<'dose'>, on: Day): 'counts' | 'does not count' | undefined {
  const newest = factsOf(record, 'prescriber-decision').findLast(
    ({ body, on: decidedOn }) =>
      decidedOn <= on &&
      (body.about === dose.id || body.about === dose.first) &&
      (body.question === 'part dose counts' || body.question === 'part dose does not count'),
  );
  if (newest === undefined) return undefined;
  return newest.body.question === 'part dose counts' ? 'counts' : 'does not count';
}
