/** Whether a batch is stopped: in quarantine, or recalled. The newest word about it holds. */
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

/** What stops a pack of the batch; undefined: nothing does. Where the pack's product number is not known, any stop holds. */
export function stopOf(batch: SubjectRecord, productNumber?: string): Fact<'batch-stopped'> | undefined {
  const released = Math.max(0, ...factsOf(batch, 'batch-released').map(({ seq }) => seq));
  return factsOf(batch, 'batch-stopped').findLast(
    ({ seq, body }) =>
      seq > released &&
      (body.productNumber === undefined || productNumber === undefined || body.productNumber === productNumber),
  );
}
