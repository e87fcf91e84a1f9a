/** The order that stands on a day: the newest prescription dated up to then. Whether it is valid is another question. */
import type { Day } from '../calendar/day.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export const prescribedOn = (record: SubjectRecord, on: Day): Fact<'prescription'> | undefined =>
  factsOf(record, 'prescription').findLast((one) => one.on <= on);

/** The protocol as it stands for what is prescribed to the person on a day. */
export const protocolFor = (protocol: Protocol, record: SubjectRecord, on: Day): Protocol =>
  underRegimen(protocol, prescribedOn(record, on)?.body.regimen);
