/**
 * One line written in the notes, and what comes before it is written: a draft. Entries are only ever added; a correction
 * is another entry of the same kind that names the one it amends, a withdrawal is an entry that voids one.
 */
import type { PlainDate } from '../calendar/day.ts';
import type { Role } from './role.ts';
import type { Subject } from './subject.ts';

/** A moment as the server writes it: UTC, milliseconds, `2026-11-25T09:00:00.000Z`. */
export type Instant = string;
/**
 * A moment as it was on the unit's wall, with its offset: `2027-06-28T10:51:00.000+01:00`. Its local date is its first ten
 * characters, so that reading a ledger never needs a table of time zones.
 */
export type LocalMoment = string;
export type Uuid = string;
export type StaffId = string;

export type Author = { readonly staff: StaffId; readonly role: Role };

/** What someone wants written. `effectiveAt` is when it was true: a date, or a moment where minutes matter. */
export type Draft<Kind extends string = string, Body = unknown> = {
  readonly subject: Subject;
  readonly kind: Kind;
  /** Version of the body's shape; older shapes are read through `upgrade`. */
  readonly shape: number;
  readonly body: Body;
  readonly effectiveAt: LocalMoment | PlainDate;
  /** IANA zone in which `effectiveAt` was said. */
  readonly zone: string;
  /** The entry this one corrects: same ledger, same kind. */
  readonly amends?: Uuid;
  /** The device's own clock, kept but never trusted. */
  readonly deviceAt?: Instant;
};

/** A draft once written. The server makes id, seq, recordedAt and the hashes inside the write. */
export type Entry<Kind extends string = string, Body = unknown> = Draft<Kind, Body> & {
  readonly id: Uuid;
  /** The act that wrote it; an act may write several entries to several ledgers. */
  readonly act: Uuid;
  /** 1, 2, 3 ... within its ledger. */
  readonly seq: number;
  /** When we knew. Strictly increasing within a ledger. */
  readonly recordedAt: Instant;
  readonly author: Author;
  readonly previousHash: string;
  readonly hash: string;
};

/**
 * The text whose SHA-256 is an entry's hash: every stored text in a fixed order, each preceded by its length, so that no
 * two different entries share it.
 */
export function hashedText(entry: Omit<Entry, 'hash'>, bodyText: string): string {
  const parts = [
    entry.previousHash,
    entry.subject,
    String(entry.seq),
    entry.id,
    entry.act,
    entry.kind,
    String(entry.shape),
    bodyText,
    entry.effectiveAt,
    entry.zone,
    entry.amends ?? '',
    entry.deviceAt ?? '',
    entry.recordedAt,
    entry.author.staff,
    entry.author.role,
  ];
  return parts.map((part) => `${part.length}:${part}`).join('');
}

/** The calendar date on which an entry was true, where it was said. */
export const localDate = (effectiveAt: LocalMoment | PlainDate): string => effectiveAt.slice(0, 10);
