/** How many packs of a batch lie at a unit: what was counted last, more came in, less went out or was opened for somebody. */
import type { Day } from '../calendar/day.ts';
import { sameBatch } from '../ledger/batch-subject.ts';
import type { Instant } from '../ledger/entry.ts';
import { subjectId } from '../ledger/subject.ts';
import { newestWritten } from '../record/newest-written.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

/** A pack that was opened for somebody at a unit. */
export type PackUsed = {
  readonly batch: string;
  readonly unit: string;
  readonly patient: string;
  readonly on: Day;
  /** When it was opened. Typed in later, a pack is not taken off a count that was made after it had gone. */
  readonly openedAt: Instant;
};

/** Packs opened for a person at sessions of the service, as far as the preparations stand. `unitOf` names a session's unit. */
export function packsUsedFor(
  record: SubjectRecord,
  unitOf: (session: string) => string | undefined,
): readonly PackUsed[] {
  return factsOf(record, 'preparation').flatMap(({ body, on, at, recordedAt }) => {
    const session = factsOf(record, 'arrived').find((arrived) => arrived.on === on)?.body.session;
    const unit = session === undefined ? undefined : unitOf(session);
    return unit === undefined
      ? []
      : [
          {
            batch: sameBatch(body.batch),
            unit,
            patient: subjectId(record.subject),
            on,
            openedAt: at === undefined ? recordedAt : new Date(Date.parse(at)).toISOString(),
          },
        ];
  });
}

export type OnHand = {
  /** What the sum says; below nought where more were opened than ever came in. */
  readonly packs: number;
  /** The last count, if anybody ever counted. */
  readonly counted: { readonly packs: number; readonly on: Day; readonly saidThen: number } | undefined;
  readonly opened: number;
};

/** `uses`: the packs of this batch that were opened at this unit. */
export function onHand(batch: SubjectRecord, unit: string, uses: readonly PackUsed[]): OnHand {
  const here = (body: { readonly unit: string }): boolean => body.unit === unit;
  const sumUntil = (from: Instant, until: Instant | undefined, start: number): number => {
    const isWithin = (at: Instant): boolean => at > from && (until === undefined || at < until);
    const within = ({ recordedAt }: { readonly recordedAt: Instant }): boolean => isWithin(recordedAt);
    const packs = (facts: readonly { readonly body: { readonly unit: string; readonly packs: number } }[]): number =>
      facts.filter(({ body }) => here(body)).reduce((sum, { body }) => sum + body.packs, 0);
    return (
      start +
      packs(factsOf(batch, 'batch-received').filter(within)) -
      packs(factsOf(batch, 'batch-taken-out').filter(within)) -
      uses.filter(({ openedAt }) => isWithin(openedAt)).length
    );
  };
  const counts = factsOf(batch, 'batch-counted')
    .filter(({ body }) => here(body))
    .toSorted((a, b) => a.seq - b.seq);
  const last = counts.at(-1);
  const before = counts.at(-2);
  return {
    packs: sumUntil(last?.recordedAt ?? '', undefined, last?.body.packs ?? 0),
    counted:
      last === undefined
        ? undefined
        : {
            packs: last.body.packs,
            on: last.on,
            saidThen: sumUntil(before?.recordedAt ?? '', last.recordedAt, before?.body.packs ?? 0),
          },
    opened: uses.length,
  };
}

/** What the batch is, as it was received last; undefined: nobody received it. */
export const receivedAs = (batch: SubjectRecord) => newestWritten(batch, 'batch-received')?.body;
