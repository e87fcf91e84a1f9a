/** How the list of people is sorted and narrowed. */
import type { PersonRow } from '@twelvemonth/exchange';

export const orders = {
  'by date': 'who needs someone soonest',
  name: 'name',
  window: 'window opens',
  due: 'dose due',
} as const;
export type Order = keyof typeof orders;
export const isOrder = (text: string | undefined): text is Order => text !== undefined && Object.hasOwn(orders, text);

const never = '9999-12-31';
/** After everyone the unit is treating: first those someone may still have to find or ask, then those whose care is over. */
const later: Readonly<Record<string, number>> = {
  'cannot be reached': 1,
  'moved to other treatment': 1,
  'said no': 1,
  'transferred out': 1,
  'returned to referrer': 2,
  died: 2,
  closed: 2,
};

const keyOf: Readonly<Record<Order, (row: PersonRow) => string>> = {
  'by date': ({ standing, place }) => `${later[standing.standing] ?? 0} ${place?.on ?? standing.on ?? never}`,
  name: () => '',
  window: (row) => row.window?.first ?? never,
  due: (row) => row.due ?? never,
};

export function ordered(rows: readonly PersonRow[], order: Order): readonly PersonRow[] {
  const key = keyOf[order];
  const compare = new Intl.Collator('en-GB', { sensitivity: 'base' }).compare;
  return rows
    .map((row) => ({ row, key: key(row) }))
    .toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : compare(a.row.name, b.row.name)))
    .map(({ row }) => row);
}

export type Narrowed = { readonly standing: string | undefined; readonly verdict: string | undefined };

export const narrowed = (rows: readonly PersonRow[], { standing, verdict }: Narrowed): readonly PersonRow[] =>
  rows.filter(
    (row) =>
      (standing === undefined || row.standing.standing === standing) &&
      (verdict === undefined || row.verdict === verdict),
  );
