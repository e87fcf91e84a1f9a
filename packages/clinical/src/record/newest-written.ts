/** Where the order of writing decides and not the day on which something was true: settings, lists, bookings. */
import type { KindName } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from './patient-record.ts';

/** Facts of a kind in the order in which they were written. */
export const asWritten = <Kind extends KindName>(record: SubjectRecord, kind: Kind): readonly Fact<Kind>[] =>
  factsOf(record, kind).toSorted((a, b) => a.seq - b.seq);

export function newestWritten<Kind extends KindName>(record: SubjectRecord, kind: Kind): Fact<Kind> | undefined {
  let newest: Fact<Kind> | undefined;
  for (const fact of factsOf(record, kind)) if (newest === undefined || fact.seq > newest.seq) newest = fact;
  return newest;
}
