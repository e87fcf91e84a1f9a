/** How long somebody is watched after a dose: longer after the first of that medicine (protocol), wherever an earlier one was given. */
import type { Day } from '../calendar/day.ts';
import type { BoneMedicine } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

export function watchAfter(
  record: SubjectRecord,
  { on, medicine }: { readonly on: Day; readonly medicine: BoneMedicine },
  { number }: Pick<Protocol, 'number'>,
): { readonly first: boolean; readonly minutes: number } {
  const first = !factsOf(record, 'dose').some((one) => one.on < on && one.body.medicine === medicine);
  return { first, minutes: first ? number.observeFirstMinutes : number.observeLaterMinutes };
}
