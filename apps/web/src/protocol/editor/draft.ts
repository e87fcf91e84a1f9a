/** A version being drafted: the sheet it began from, the sheet as it now reads, and how parts of it are replaced. */
import { type NumberKey, type ProtocolSheet, sheetChanges } from '@twelvemonth/clinical';

export type Draft = {
  readonly base: ProtocolSheet;
  readonly sheet: ProtocolSheet;
  readonly set: (fields: Partial<ProtocolSheet>) => void;
};

/** Paths of what has been changed so far. */
export const changedPaths = ({ base, sheet }: Draft): ReadonlySet<string> =>
  new Set(sheetChanges(base, sheet).map(({ path }) => path));

export function setNumber({ sheet, set }: Draft, key: NumberKey, to: { value?: string | null; source?: string }): void {
  set({ numbers: { ...sheet.numbers, [key]: { ...sheet.numbers[key], ...to } } });
}

export function setReason({ sheet, set }: Draft, path: string, reason: string): void {
  const { [path]: _, ...others } = sheet.reasons ?? {};
  set({ reasons: reason === '' ? others : { ...others, [path]: reason } });
}

/** A name for what somebody put in, from their words: "Slept badly?" as "slept-badly". */
export const idFrom = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');

/** The item one place earlier. */
export function movedUp<Item>(items: readonly Item[], index: number): readonly Item[] {
  const [one, before] = [items[index], items[index - 1]];
  return one === undefined || before === undefined ? items : items.with(index, before).with(index - 1, one);
}

export const replaced = <Item extends { readonly id: string }>(
  items: readonly Item[],
  id: string,
  fields: Partial<Item>,
): readonly Item[] => items.map((item) => (item.id === id ? { ...item, ...fields } : item));
