/** People as plans call them: by name, with their number where two share one. */
import {
  type Course,
  type Protocol,
  type SubjectRecord,
  courseOf,
  latest,
  protocolFor,
  subjectId,
} from '@twelvemonth/clinical';
import type { Day as CalendarDay } from '@twelvemonth/clinical';
import type { VisitKindName } from './planning-settings.ts';

export const patientOf = (record: SubjectRecord): string => subjectId(record.subject);

/** By patient: what sentences call them. */
export function namesOf(records: readonly SubjectRecord[]): ReadonlyMap<string, string> {
  const plain = records.map((record) => {
    const identity = latest(record, 'identity')?.body;
    return identity === undefined ? patientOf(record) : `${identity.given} ${identity.family}`;
  });
  return new Map(
    records.map((record, index) => {
      const name = plain[index]!;
      const isShared = plain.indexOf(name) !== plain.lastIndexOf(name);
      const number = latest(record, 'identity')?.body.number ?? patientOf(record);
      return [patientOf(record), isShared ? `${name}, ${number}` : name];
    }),
  );
}

export type Ordered = {
  readonly course: Course;
  /** The sheet as it stands for what is prescribed. */
  readonly protocol: Protocol;
  readonly kind: VisitKindName;
};

/** What the next visit is, by what is prescribed and what was given before. */
export function orderedFor(record: SubjectRecord, sheet: Protocol, on: CalendarDay): Ordered {
  const protocol = protocolFor(sheet, record, on);
  const course = courseOf(record, sheet, on);
  const isInfusion = protocol.regimen.given === 'infusion';
  return {
    course,
    protocol,
    kind: isInfusion ? (course.firstTimer ? 'first infusion' : 'later infusion') : 'injection',
  };
}
