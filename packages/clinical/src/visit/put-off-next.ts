/** What a dose that was not given leaves to do, so that nobody put off is lost: whose it is, by when, and until when it stands. */
import { type Day, day } from '../calendar/day.ts';
import type { Role } from '../ledger/role.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';

/** The newest decision at the chair that nothing has come after: no dose, and nobody who said it was seen to. */
export function decisionLeftOpen(record: SubjectRecord): Fact<'go-decision'> | undefined {
  const decision = latest(record, 'go-decision');
  if (decision === undefined || decision.body.decision === 'go') return undefined;
  const isSeenTo =
    factsOf(record, 'looked-again').some(({ body }) => body.about === decision.id || body.about === decision.first) ||
    factsOf(record, 'dose').some(
      (dose) => dose.on > decision.on || (dose.on === decision.on && dose.seq > decision.seq),
    );
  return isSeenTo ? undefined : decision;
}

export type AfterPutOff = { readonly says: string; readonly owner: Role; readonly by: Day };

/** `lookAgain`: the last day by the protocol, which stands where no day was named, and before a later one that was. */
export function afterPutOff({ body }: Fact<'go-decision'>, lookAgain: Day): AfterPutOff {
  const { nextStep, nextBy, nextOwner, reasonCode, tellsThePatient } = body;
  const tells = tellsThePatient === undefined ? '' : `; who tells the patient: ${tellsThePatient}`;
  return {
    says: `put off (${reasonCode ?? 'no reason recorded'}): ${nextStep ?? 'what comes next was not said'}${tells}`,
    owner: nextOwner ?? 'nurse in charge',
    by: nextBy === undefined ? lookAgain : day(nextBy),
  };
}
