/** An entry as both databases keep it: one column a text, nothing interpreted by the database. */
import type { Author, Entry, Subject } from '@twelvemonth/clinical';
import type { SealedEntry } from './sealing.ts';

export const entryColumns = [
  'subject',
  'seq',
  'id',
  'act',
  'kind',
  'shape',
  'body',
  'effective_at',
  'zone',
  'amends',
  'device_at',
  'recorded_at',
  'staff',
  'role',
  'previous_hash',
  'hash',
] as const;

export type EntryRow = {
  readonly subject: Subject;
  readonly seq: number;
  readonly id: string;
  readonly act: string;
  readonly kind: string;
  readonly shape: number;
  readonly body: string;
  readonly effective_at: string;
  readonly zone: string;
  readonly amends: string | null;
  readonly device_at: string | null;
  readonly recorded_at: string;
  readonly staff: string;
  readonly role: string;
  readonly previous_hash: string;
  readonly hash: string;
};

export const rowOfEntry = ({ entry, bodyText }: SealedEntry): (string | number | null)[] => [
  entry.subject,
  entry.seq,
  entry.id,
  entry.act,
  entry.kind,
  entry.shape,
  bodyText,
  entry.effectiveAt,
  entry.zone,
  entry.amends ?? null,
  entry.deviceAt ?? null,
  entry.recordedAt,
  entry.author.staff,
  entry.author.role,
  entry.previousHash,
  entry.hash,
];

export const entryOfRow = (row: EntryRow): Entry => ({
  subject: row.subject,
  kind: row.kind,
  shape: row.shape,
  body: JSON.parse(row.body) as unknown,
  effectiveAt: row.effective_at,
  zone: row.zone,
  ...(row.amends === null ? {} : { amends: row.amends }),
  ...(row.device_at === null ? {} : { deviceAt: row.device_at }),
  id: row.id,
  act: row.act,
  seq: row.seq,
  recordedAt: row.recorded_at,
  author: { staff: row.staff, role: row.role as Author['role'] },
  previousHash: row.previous_hash,
  hash: row.hash,
});

/** Rows in (subject, seq) order, cut into ledgers; ledgers asked for but not there are empty. */
export function ledgerRowsOf(subjects: readonly Subject[], rows: readonly EntryRow[]): Map<Subject, EntryRow[]> {
  const ledgers = new Map<Subject, EntryRow[]>(subjects.map((subject) => [subject, []]));
  for (const row of rows) ledgers.get(row.subject)?.push(row);
  return ledgers;
}

export const ledgersOfRows = (subjects: readonly Subject[], rows: readonly EntryRow[]): Map<Subject, Entry[]> =>
  new Map([...ledgerRowsOf(subjects, rows)].map(([subject, ofSubject]) => [subject, ofSubject.map(entryOfRow)]));
