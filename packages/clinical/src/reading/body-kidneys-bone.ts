/** Body, kidneys and bone of a person at a glance, as known on a day. Nothing here passes or stops anyone. */
import type { Day } from '../calendar/day.ts';
import { courseOf } from '../course/course.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import { bodyReading } from './body.ts';
import { boneReading } from './bone.ts';
import { kidneyReading } from './kidneys.ts';
import { observedReading } from './observed.ts';
import type { ReadingPart } from './reading.ts';

export function bodyKidneysBone(record: SubjectRecord, protocol: Protocol, today: Day): readonly ReadingPart[] {
  const evidence = evidenceOf(record, today);
  const ordered = underRegimen(protocol, evidence.prescription?.body.regimen);
  const observed = observedReading(record, today);
  return [
    bodyReading(evidence, ordered, today),
    boneReading(record, courseOf(record, protocol, today), ordered, today),
    ...(observed === undefined ? [] : [observed]),
    kidneyReading(evidence, ordered, today),
  ];
}
