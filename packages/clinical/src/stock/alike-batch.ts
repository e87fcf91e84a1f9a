/**
 * One batch number written in two ways: a hyphen, point or stroke typed or left out makes another batch of it, which nobody
 * recalled and nobody received. Such spellings are asked about where they begin, and a stop of either holds both.
 */
import { sameBatch } from '../ledger/batch-subject.ts';
import { isSubjectOf, type Subject } from '../ledger/subject.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

const lettersAndDigits = (batch: string): string => sameBatch(batch).replaceAll(/[^\p{L}\p{N}]/gu, '');

/** Different batches as they are compared, and alike but for their signs. */
export const isAlikeBatch = (one: string, other: string): boolean =>
  sameBatch(one) !== sameBatch(other) &&
  lettersAndDigits(one) !== '' &&
  lettersAndDigits(one) === lettersAndDigits(other);

/** As it stands in the batch's own notes. */
export const batchWritten = (batch: SubjectRecord): string | undefined =>
  batch.all.map(({ body }) => (body as { readonly batch?: string }).batch).find((one) => one !== undefined);

/** Of the batches at hand, those that are written like this one but for their signs. */
export const alikeBatches = (
  batch: string,
  atHand: Iterable<Subject>,
  recordOf: (of: Subject) => SubjectRecord,
): readonly SubjectRecord[] =>
  [...atHand]
    .filter((of) => isSubjectOf('batch', of))
    .map(recordOf)
    .filter((record) => isAlikeBatch(batchWritten(record) ?? '', batch));
