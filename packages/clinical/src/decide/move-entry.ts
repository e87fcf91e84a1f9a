/**
 * An entry that was written in the wrong person's notes: withdrawn there and written in the right ones by one act. A result
 * has to be signed again there: signing says whose it is.
 */
import { kindNamed, type KindName } from '../kinds/index.ts';
import { shortDate } from '../calendar/day.ts';
import { patientSubject } from '../record/together.ts';
import type { ActNamed } from './act.ts';
import { checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { checkLine, checkNewLine } from './check-line.ts';
import { draftNow, draftOf } from './draft.ts';
import { entryIn, patientIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';
import { checkTarget, voiding } from './withdraw.ts';

/** What is told or measured of a person. Decisions, consent and the steps of a visit are made anew, with the person there. */
export const movableKinds: ReadonlySet<KindName> = new Set([
  'result',
  'weight',
  'height',
  'dental',
  'surgery',
  'fracture',
  'symptom',
  'allergy',
  'medicine',
  'dose',
  'reaction',
  'illness',
  'well-since',
  'vitamin-d-taken',
  'vitamin-d-maintenance',
  'call',
]);

export function decideMoveEntry(act: ActNamed<'move entry'>, now: Surroundings): Decided {
  const from = patientIn(now, act.patient);
  const to = patientIn(now, act.to);
  const refusals: Refusal[] = [...checkKnown(from), ...checkKnown(to)];
  if (act.patient === act.to)
    refusals.push(fieldWrong('to', 'these are the same notes', 'choose the person it belongs to'));
  const fact = from.all.find(({ id }) => id === act.entry);
  const written = entryIn(now, from, act.entry);
  if (fact === undefined || written === undefined) {
    const says =
      written === undefined
        ? 'That entry is not in these notes.'
        : 'That entry no longer counts: withdrawn or corrected.';
    return decided([...refusals, refusal('no-such-entry', says, { field: 'entry' })], () => []);
  }
  const givenHere =
    fact.kind === 'dose' && from.all.some((one) => one.kind === 'infusion-finished' && one.act === fact.act);
  if (!movableKinds.has(fact.kind) || givenHere) {
    refusals.push(
      refusal('part-of-a-finished-step', `"${kindNamed(fact.kind).label}" of ${shortDate(fact.on)} is not moved.`, {
        field: 'entry',
        remedy: 'withdraw it, and have it decided or done again in the right notes',
      }),
    );
  }
  refusals.push(...checkTarget(from, fact, now));
  const line = { kind: fact.kind, body: fact.body, effectiveAt: written.effectiveAt };
  const there = checkLine(to, line, 'line', now);
  refusals.push(...there.refusals);
  if (there.fact !== undefined) refusals.push(...checkNewLine(to, there.fact, now));
  const here = patientSubject(act.to);
  return decided(refusals, () => [
    voiding(from, fact, { entry: fact.id, reason: act.reason, movedTo: act.to }, now),
    draftOf(here, fact.kind, fact.body, written.effectiveAt, written.zone),
    draftNow(here, 'moved-here', { from: act.patient, entry: fact.id, reason: act.reason }, now),
  ]);
}
