/** Packs counted, batch by batch, while a form is filled in. */
import type { SessionDayView } from '@twelvemonth/exchange';

export type PackCount = { readonly packs: number | undefined; readonly note: string };
export type PackCounts = Readonly<Record<string, PackCount>>;

export const countOf = (counts: PackCounts, batch: string): PackCount =>
  counts[batch] ?? { packs: undefined, note: '' };

/** What was counted; a batch left empty was not. */
export const countsToSend = (counts: PackCounts, { batches }: SessionDayView) =>
  batches.flatMap(({ batch }) => {
    const { packs, note } = countOf(counts, batch);
    return packs === undefined ? [] : [{ batch, packs, ...(note.trim() === '' ? {} : { note: note.trim() }) }];
  });
