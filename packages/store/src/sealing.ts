/**
 * Turns drafts into entries: the server's own part of an entry (id, seq, recordedAt, hashes) is made here and nowhere else.
 * Pure, so that both databases write the very same entries.
 */
import {
  hashedText,
  parseSubject,
  type Author,
  type Draft,
  type Entry,
  type Instant,
  type Subject,
  type Uuid,
} from '@twelvemonth/clinical';
import { canonicalText, lengthPrefixed, storable } from './canonical-text.ts';
import { beforeTheFirst, sha256 } from './digest.ts';

/** An entry with the very text of its body that was hashed. */
export type SealedEntry = { readonly entry: Entry; readonly bodyText: string };

/**
 * The id of an act's entry number `index` (from 0): a UUID of version 8 (RFC 9562, section 5.8, "name-based, custom hash")
 * over the act's id, so that an act sent again would make the same entries.
 */
export function entryId(act: Uuid, index: number): Uuid {
  const digits = sha256(lengthPrefixed(['twelvemonth entry', act, String(index)]));
  const variant = ((Number.parseInt(digits.charAt(16), 16) & 0x3) | 0x8).toString(16);
  return `${digits.slice(0, 8)}-${digits.slice(8, 12)}-8${digits.slice(13, 16)}-${variant}${digits.slice(17, 20)}-${digits.slice(20, 32)}`;
}

export function sealDrafts(
  drafts: readonly Draft[],
  act: { readonly id: Uuid; readonly by: Author; readonly at: Instant; readonly subjects: ReadonlySet<Subject> },
  ledgers: ReadonlyMap<Subject, readonly Entry[]>,
): SealedEntry[] {
  const tails = new Map<Subject, Entry>();
  return drafts.map((draft, index) => {
    if (!act.subjects.has(draft.subject))
      throw new Error(`act ${act.id} writes to ${draft.subject}, which it did not name`);
    const sealed = sealDraft(draft, index, act, tails.get(draft.subject) ?? ledgers.get(draft.subject)?.at(-1));
    tails.set(draft.subject, sealed.entry);
    return sealed;
  });
}

function sealDraft(
  draft: Draft,
  index: number,
  act: { readonly id: Uuid; readonly by: Author; readonly at: Instant },
  last: Entry | undefined,
): SealedEntry {
  const bodyText = canonicalText(draft.body);
  const unhashed = {
    subject: draft.subject,
    kind: storable(draft.kind, 'kind'),
    shape: draft.shape,
    // Parsed back, so that what an act returns is what a later reading returns.
    body: JSON.parse(bodyText) as unknown,
    effectiveAt: storable(draft.effectiveAt, 'effectiveAt'),
    zone: storable(draft.zone, 'zone'),
    ...(draft.amends === undefined ? {} : { amends: storable(draft.amends, 'amends') }),
    ...(draft.deviceAt === undefined ? {} : { deviceAt: storable(draft.deviceAt, 'deviceAt') }),
    id: entryId(act.id, index),
    act: act.id,
    seq: (last?.seq ?? 0) + 1,
    recordedAt: laterThan(last?.recordedAt, act.at),
    author: { staff: storable(act.by.staff, 'staff'), role: act.by.role },
    previousHash: last?.hash ?? beforeTheFirst,
  };
  if (!Number.isSafeInteger(unhashed.shape)) throw new TypeError(`shape of ${draft.kind} is not a whole number`);
  return { entry: { ...unhashed, hash: sha256(hashedText(unhashed, bodyText)) }, bodyText };
}

/** `at`, or one millisecond after the last entry if the clock stands still or was put back. */
function laterThan(last: Instant | undefined, at: Instant): Instant {
  const now = instantMs(at);
  return new Date(last === undefined ? now : Math.max(now, instantMs(last) + 1)).toISOString();
}

const instantMs = (at: Instant): number => {
  const ms = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/.test(at) ? Date.parse(at) : Number.NaN;
  if (Number.isNaN(ms)) throw new TypeError(`"${at}" is not a moment in UTC with milliseconds`);
  return ms;
};

/** Subjects become ledger names, lock names and parts of web addresses: anything else is a defect of the caller. */
export function lawfulSubject(subject: Subject): Subject {
  if (parseSubject(subject) === undefined) throw new TypeError(`"${subject}" is not the name of a ledger`);
  return subject;
}
