/** How the list of people is sorted and narrowed. */
import type { PersonRow } from '@twelvemonth/exchange';

export const orders = { 'by date': 'next date first', name: 'name', window: 'window opens', due: 'dose due' } as const;
export type Order = keyof typeof orders;
export const isOrder = (text: string | undefined): text is Order => text !== undefined && Object.hasOwn(orders, text);

const never = '9999-12-31';
/** Care that has gone elsewhere or ended: after everyone the unit still looks after. */
const elsewhere = new Set([
  'returned to referrer',
  'moved to other treatment',
  'transferred out',
  'said no',
  'died',
  'closed',
]);

const keyOf: Readonly<Record<Order, (row: PersonRow) => string>> = {
  'by date': (row) => (elsewhere.has(row.standing.standing) ? never : (row.place?.on ?? row.standing.on ?? never)),
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
