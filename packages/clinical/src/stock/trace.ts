/** Whom a batch went to, and which batches a person had: from the notes of people alone, wherever the dose was given. */
import type { Day } from '../calendar/day.ts';
import { sameBatch } from '../ledger/batch-subject.ts';
import { isTakenDaily } from '../protocol/medicines.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { standingStops } from './batch-stop.ts';

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

/** Doses of medicines that come in packs of which no batch is in the notes, the newest first: nobody can say what they were. */
export const dosesWithoutBatch = (record: SubjectRecord): readonly Fact<'dose'>[] =>
  factsOf(record, 'dose')
    .filter(({ body }) => body.batch === undefined && !isTakenDaily(body.medicine))
    .toSorted((a, b) => b.on - a.on);

/** Whether and when somebody told them about the batch; the newest word. */
export const toldOf = (record: SubjectRecord, batch: string): Fact<'told-of-batch'> | undefined =>
  factsOf(record, 'told-of-batch').findLast(({ body }) => isBatch(body.batch, batch));

/** What people have to be told of: the newest recall that stands, else the newest quarantine. */
export function toTellOf(batch: SubjectRecord): Fact<'batch-stopped'> | undefined {
  const standing = standingStops(batch);
  return standing.findLast(({ body }) => body.why === 'batch recall') ?? standing.at(-1);
}

/** Who was told before the batch was stopped was told of something else: of an earlier quarantine, or before it was recalled. */
export const isToldBefore = (told: Fact<'told-of-batch'>, stop: Fact<'batch-stopped'> | undefined): boolean =>
  stop !== undefined && (told.on < stop.on || (told.on === stop.on && told.recordedAt < stop.recordedAt));
