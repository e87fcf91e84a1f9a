/** A ledger as people read it: every entry, also what was corrected or withdrawn, the newest first. */
import {
  type BodyOfKind,
  type Day,
  type Entry,
  type SubjectRecord,
  entryText,
  isKindName,
  kindNamed,
  localDate,
  parseDay,
  patientSubject,
  recordOf,
  visitOn,
} from '@twelvemonth/clinical';
import type { EntryView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';

/** Written this many days after it was true, an entry is marked as late. */
const lateAfterDays = 2;

/** Said in place of a preparation that the reader may be asked to check. */
export const hiddenUntilChecked = 'prepared; what was read is shown once the second check has been made';

/** Whether an entry holds a reading of a pack that is still to be read by somebody else. */
export type Unread = (entry: { readonly kind: string; readonly on: Day }) => boolean;

/**
 * What was read of a pack is shown to nobody until a second check agrees with it: whoever may be the checker must not have read
 * it anywhere, and may stand at the preparer's own screen. Where two readings differed, or one was withdrawn to be made anew,
 * it is the next reading that would be told.
 */
export function unreadIn({ record, today }: Pick<Person, 'record' | 'today'>): Unread {
  const visit = visitOn(record, today);
  const isRead =
    visit === undefined ||
    visit.over ||
    visit.putOff ||
    visit.infusion !== undefined ||
    visit.dose !== undefined ||
    visit.check?.body.agrees === true ||
    visit.injection?.checkedByAnother === false;
  return ({ kind, on }) => !isRead && (kind === 'preparation' || kind === 'second-check') && on === visit.on;
}

/** One entry as a line of words; an entry this version cannot read is named by its kind. */
export function wordsOf(entry: Entry): string {
  const { amends: _, ...alone } = entry;
  const [fact] = recordOf(entry.subject, [alone]).all;
  return fact === undefined ? `${entry.kind}: cannot be read by this version` : entryText(fact);
}

/** Who checked a dose at home, by name. */
function checkerOf({ kind, body }: Entry, nameOf: (staff: string) => string): string {
  const { checkedBy } = kind === 'dose' ? (body as BodyOfKind<'dose'>) : {};
  return checkedBy === undefined ? '' : `; the second check was made by ${nameOf(checkedBy)}`;
}

export function entryViewsOf(
  entries: readonly Entry[],
  nameOf: (staff: string) => string,
  unreadHere: Unread,
  record: Pick<SubjectRecord, 'subject' | 'together'>,
): EntryView[] {
  const numberOf = new Map(
    (record.together ?? []).map(({ patient, identities }) => [
      patientSubject(patient),
      identities.at(-1)?.number ?? 'without a number',
    ]),
  );
  const amendedBy = new Map<string, string>();
  const withdrawnBy = new Map<string, { readonly id: string; readonly reason: string }>();
  for (const entry of entries) {
    if (entry.amends !== undefined) amendedBy.set(entry.amends, entry.id);
    if (entry.kind === 'withdrawal') {
      const body = entry.body as { readonly entry: string; readonly reason: string };
      withdrawnBy.set(body.entry, { id: entry.id, reason: body.reason });
    }
  }
  return entries
    .map((entry): EntryView => {
      const on = localDate(entry.effectiveAt);
      const withdrawal = withdrawnBy.get(entry.id);
      const amended = amendedBy.get(entry.id);
      const unread = unreadHere({ kind: entry.kind, on: parseDay(on) ?? (0 as Day) });
      return {
        id: entry.id,
        seq: entry.seq,
        kind: entry.kind,
        label: isKindName(entry.kind) ? kindNamed(entry.kind).label : entry.kind,
        on,
        ...(entry.effectiveAt.length > 10 ? { at: entry.effectiveAt } : {}),
        recordedAt: entry.recordedAt,
        by: { name: nameOf(entry.author.staff), role: entry.author.role },
        // Whether two readings differ, and in what, is no reading.
        text:
          unread && entry.kind === 'preparation' ? hiddenUntilChecked : `${wordsOf(entry)}${checkerOf(entry, nameOf)}`,
        body: unread ? {} : entry.body,
        ...(entry.amends === undefined ? {} : { amends: entry.amends }),
        ...(amended === undefined ? {} : { amendedBy: amended }),
        ...(withdrawal === undefined ? {} : { withdrawnBy: withdrawal.id, withdrawnBecause: withdrawal.reason }),
        ...(entry.subject === record.subject ? {} : { from: numberOf.get(entry.subject) ?? '' }),
        late: (parseDay(localDate(entry.recordedAt)) ?? 0) - (parseDay(on) ?? 0) > lateAfterDays,
      };
    })
    .toReversed();
}
