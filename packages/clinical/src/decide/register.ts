/** A new person: who they are, how to reach them, who asks us to treat them. */
import { unitOf } from '../unit/unit.ts';
import { subject } from '../ledger/subject.ts';
import type { ActNamed } from './act.ts';
import { checkBorn, checkNotBeforeBirth, checkNotFuture, dayOf } from './check-dates.ts';
import { draftOf } from './draft.ts';
import { after } from './extended.ts';
import { recordIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import { entriesForTwo } from './same-person.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideRegister(act: ActNamed<'register'>, now: Surroundings): Decided {
  const of = subject('patient', act.patient);
  const refusals: Refusal[] = [];
  if (recordIn(now, of).lastSeq > 0) {
    refusals.push(refusal('already-registered', 'This person has notes here already.', { remedy: 'open them' }));
  }
  refusals.push(...lookAlikes(act, now));
  if (unitOf(recordIn(now, subject('unit', act.referral.unit))) === undefined) {
    refusals.push(refusal('unknown-unit', `No unit is called "${act.referral.unit}".`, { field: 'referral.unit' }));
  }
  const on = dayOf(act.on);
  refusals.push(...checkNotFuture(act.on, 'on', now), ...checkBorn(act.identity.born, 'identity.born', now));
  if (on !== undefined) refusals.push(...checkNotBeforeBirth(act.identity.born, on, 'on'));
  return decided(refusals, () => {
    const drafts = [
      draftOf(of, 'identity', act.identity, act.on, now.zone),
      ...(act.contact === undefined ? [] : [draftOf(of, 'contact', act.contact, act.on, now.zone)]),
      draftOf(of, 'referral', act.referral, act.on, now.zone),
    ];
    const entered = recordIn(after(drafts, now), of);
    return [...drafts, ...entriesForTwo(act.patient, entered, act.notTheSameAs ?? [], now)];
  });
}

const lookAlikes = (act: ActNamed<'register'>, now: Surroundings): readonly Refusal[] =>
  (now.lookAlikes ?? [])
    .filter(({ patient }) => patient !== act.patient && !(act.notTheSameAs ?? []).includes(patient))
    .map(({ patient, says }) =>
      refusal('looks-like-someone-here', `This may be someone who is here already: ${says}.`, {
        field: `notTheSameAs.${patient}`,
        remedy: 'open that person and compare; if they are two, say so',
      }),
    );
