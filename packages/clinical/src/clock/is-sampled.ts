/** Whether a test was had: a signed result of a sample of those days. */
import type { Day } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

export function isSampled(
  record: SubjectRecord,
  analytes: readonly BodyOfKind<'result'>['analyte'][],
  { from, until }: { readonly from: Day; readonly until: Day },
): boolean {
  const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
  return factsOf(record, 'result').some(
    ({ id, on, body }) => on >= from && on <= until && signed.has(id) && analytes.includes(body.analyte),
  );
}
