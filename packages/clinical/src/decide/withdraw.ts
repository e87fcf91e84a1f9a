/** An entry voided with a reason. What one act wrote as one thing (an infusion's end and its dose) is voided as one. */
import { kindNamed, type KindName } from '../kinds/index.ts';
import { type Draft, localDate } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import { madeWhileItStood } from '../record/made-while-it-stood.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import type { ActNamed } from './act.ts';
import { checkKnown } from './check-care.ts';
import { checkMayBeWithdrawn } from './check-standing-upon.ts';
import { draftNow } from './draft.ts';
import { entryIn, recordIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, notYours, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

const undoneOtherwise: Partial<Record<KindName, string>> = {
  'place-booked': 'give the place up',
  'place-given-up': 'book the place again',
  'own-page': 'close the page',
  'reminders-plan': 'stop it, or approve it anew',
  'same-person': 'say it anew: one person, two people, or read them apart',
};

export function decideWithdraw(act: ActNamed<'withdraw'>, now: Surroundings): Decided {
  const of = subject('patient', act.patient);
  const record = recordIn(now, of);
  const known = checkKnown(record);
  if (known.length > 0) return decided(known, () => []);
  const written = entryIn(now, record, act.entry);
  const target = record.all.find((fact) => fact.id === act.entry);
  if (written === undefined)
    return decided([refusal('no-such-entry', 'That entry is not in these notes.', { field: 'entry' })], () => []);
  if (target === undefined) {
    return decided(
      [
        refusal(
          'already-withdrawn',
          `The entry of ${localDate(written.effectiveAt)} no longer counts: it was withdrawn or corrected.`,
          { field: 'entry' },
        ),
      ],
      () => [],
    );
  }
  return decided([...checkTarget(record, target, now), ...checkNothingRanIn(target, act.confirms)], () =>
    together(record, target).map((fact) => voiding(record, fact, { entry: fact.id, reason: act.reason }, now)),
  );
}

/** In the ledger that holds the entry, with the decisions that were made while it stood. */
export function voiding(record: SubjectRecord, fact: Fact, body: Fact<'withdrawal'>['body'], now: Surroundings): Draft {
  const decisions = madeWhileItStood(record, fact).map(({ id }) => id);
  return draftNow(
    entryIn(now, record, fact.id)?.subject ?? record.subject,
    'withdrawal',
    decisions.length === 0 ? body : { ...body, usedBy: decisions },
    now,
  );
}

export function checkTarget(record: SubjectRecord, target: Fact, now: Surroundings): readonly Refusal[] {
  const kind = kindNamed(target.kind);
  const refusals: Refusal[] = [];
  if (!kind.writes.includes(now.by.role) && !isOwnUnderDirection(target, now))
    refusals.push(notYours(now.by.role, `withdraw "${kind.label}"`, kind.writes));
  if (target.kind === 'withdrawal') {
    refusals.push(
      refusal('entry-of-another-kind', 'A withdrawal is not withdrawn: what it voided would count again unread.', {
        field: 'entry',
        remedy: 'write the withdrawn entry again',
      }),
    );
  }
  const otherwise = undoneOtherwise[target.kind];
  if (otherwise !== undefined) {
    refusals.push(
      refusal('part-of-a-finished-step', 'The list of the session holds the same place.', {
        field: 'entry',
        remedy: otherwise,
      }),
    );
  }
  const others = together(record, target);
  refusals.push(...others.flatMap((fact) => checkMayBeWithdrawn(record, fact)));
  return refusals;
}

/** The whole bag may be made ready once more after it: what of the first ran in would come on top. Never over 5 mg in all. */
function checkNothingRanIn(target: Fact, confirmed: readonly string[] = []): readonly Refusal[] {
  if (target.kind !== 'infusion-started') return [];
  const says = `By the notes this drip began to run${target.at === undefined ? '' : ` at ${target.at.slice(11, 16)}`}: without its start nothing of that bag has run into this person. Is that so?`;
  return confirmed.includes(says)
    ? []
    : [
        refusal('is-it-right', says, {
          field: 'reason',
          remedy: 'if anything ran in, end the drip with its volume instead: a prescriber decides about the rest',
        }),
      ];
}

/** An order under a group direction is a nurse's own to take back. */
const isOwnUnderDirection = (target: Fact, { by }: Surroundings): boolean =>
  target.kind === 'prescription' &&
  (target as Fact<'prescription'>).body.underDirection !== undefined &&
  target.author.staff === by.staff;

/** The end of an infusion and the dose it made are one fact told twice. */
function together(record: SubjectRecord, target: Fact): readonly Fact[] {
  if (target.kind !== 'dose' && target.kind !== 'infusion-finished') return [target];
  const pair = record.all.filter(
    (fact) => (fact.kind === 'dose' || fact.kind === 'infusion-finished') && fact.act === target.act,
  );
  return pair.length > 1 ? pair : [target];
}
