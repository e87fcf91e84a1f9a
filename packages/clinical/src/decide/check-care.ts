/** Whether anything may still be written of someone who has died or whose care here has ended. */
import type { Day } from '../calendar/day.ts';
import type { KindName } from '../kinds/index.ts';
import { type SubjectRecord, latest } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** What is written after care has ended: what opens it again, what ends it for good, and being in touch. */
const writtenAfterClosing: ReadonlySet<KindName> = new Set([
  'reopened',
  'referral',
  'died',
  'call',
  'advice-answered',
  'letter',
  // What was begun elsewhere: the successor of a medicine whose clock still ran.
  'medicine',
  'letter-drafted',
  'letter-sent',
  'letter-answered',
  'message-ended',
  'red-flag-passed-on',
  'reaction-reported',
  'identity',
  'contact',
  'contact-person',
  // What was booked for a place that is no more is cancelled with whoever it was booked with, also after a death.
  'support-booking',
  // A batch may be called back years after the dose.
  'told-of-batch',
]);

/** What was booked is cancelled, and relatives are told of a batch. */
const writtenAfterDeath: ReadonlySet<KindName> = new Set(['support-booking', 'told-of-batch']);

export function checkKnown(record: SubjectRecord): readonly Refusal[] {
  return record.lastSeq === 0
    ? [
        refusal('unknown-patient', 'There are no notes of this person here.', {
          remedy: 'register them, or search by number',
        }),
      ]
    : [];
}

/** A late entry, dated before the end, may still be written: what happened, happened. */
export function checkCareGoesOn(
  record: SubjectRecord,
  kind: KindName | undefined,
  on: Day,
  now: Surroundings,
): readonly Refusal[] {
  const died = latest(record, 'died');
  if (died !== undefined) {
    if (on < died.on || (kind !== undefined && writtenAfterDeath.has(kind))) return [];
    return [
      refusal('has-died', 'This person has died: nothing new is written after that day.', {
        remedy: 'if that is a mistake, withdraw the entry that says so',
      }),
    ];
  }
  if (kind !== undefined && writtenAfterClosing.has(kind)) return [];
  const { held, since, by } = heldBy(record, now.today);
  if (held !== 'closed' || on < since) return [];
  const reason = by?.kind === 'closed' ? ` (${(by.body as { reason: string }).reason})` : '';
  return [refusal('care-has-ended', `Care here was closed${reason}.`, { remedy: 'reopen it first' })];
}
