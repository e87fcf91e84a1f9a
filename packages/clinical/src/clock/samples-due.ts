/** Samples that something given asks for afterwards: seen to like a clock, with the person and in the work of the day. */
import type { Day } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { calciumAfterDose } from './calcium-after-dose.ts';
import { calciumAfterLoading } from './calcium-after-loading.ts';
import { creatinineAfterDose } from './creatinine-after-dose.ts';
import { markersAfterDenosumab } from './markers-after-denosumab.ts';

export type SampleDue = {
  /** Last day on which the sample is in time. */
  readonly by: Day;
  /** "calcium after denosumab 60 mg of 12 Oct 2026: sample by 26 Oct 2026" */
  readonly says: string;
};

export const samplesDue = (record: SubjectRecord, protocol: Protocol, today: Day): readonly SampleDue[] =>
  [calciumAfterDose, creatinineAfterDose, calciumAfterLoading, markersAfterDenosumab].flatMap(
    (due) => due(record, protocol, today) ?? [],
  );
