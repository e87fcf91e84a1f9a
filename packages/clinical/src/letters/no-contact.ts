import type { Day } from '../calendar/day.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';

/** The no to all contact that holds on a day: nothing is sent to the person until care is reopened. */
export function noContactWanted(record: SubjectRecord, on: Day): Fact<'refusal'> | undefined {
  const { held, by } = heldBy(record, on);
  if (held !== 'said no' || by?.kind !== 'refusal') return undefined;
  const said = by as Fact<'refusal'>;
  return said.body.to === 'all contact' ? said : undefined;
}
