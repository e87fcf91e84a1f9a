/** Whom a batch went to, and which batches a person had: from the notes of people alone, wherever the dose was given. */
import type { Day } from '../calendar/day.ts';
import { sameBatch } from '../ledger/batch-subject.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type BatchInPerson = {
  /** As it stands in the notes. */
  readonly batch: string;
  readonly on: Day;
  /** Absent: the pack was opened for them, and no dose of it is in the notes. */
  readonly dose: Fact<'dose'> | undefined;
  readonly preparation: Fact<'preparation'> | undefined;
};

/** Every batch of a person, the newest first. */
export function batchesOf(record: SubjectRecord): readonly BatchInPerson[] {
  const preparations = factsOf(record, 'preparation');
  const given = factsOf(record, 'dose').flatMap((dose): BatchInPerson[] => {
    const { batch } = dose.body;
    if (batch === undefined) return [];
    const preparation = preparations.find((one) => one.on === dose.on && isBatch(one.body.batch, batch));
    return [{ batch, on: dose.on, dose, preparation }];
  });
  const opened = preparations.flatMap((preparation): BatchInPerson[] =>
    given.some((one) => one.preparation === preparation)
      ? []
      : [{ batch: preparation.body.batch, on: preparation.on, dose: undefined, preparation }],
  );
  return [...given, ...opened].toSorted((a, b) => b.on - a.on);
}

export const isBatch = (one: string, other: string): boolean => sameBatch(one) === sameBatch(other);

/** Whether and when somebody told them about the batch; the newest word. */
export const toldOf = (record: SubjectRecord, batch: string): Fact<'told-of-batch'> | undefined =>
  factsOf(record, 'told-of-batch').findLast(({ body }) => isBatch(body.batch, batch));
