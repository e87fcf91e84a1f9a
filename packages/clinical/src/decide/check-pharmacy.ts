/** The pharmacist's word about a prescription: who may give it about what, and what waits for it. */
import { shortDate } from '../calendar/day.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { holdsPreparation, orderAtPharmacy, pharmacySays } from '../pharmacy/pharmacy-state.ts';
import { TYPED_IN_LATER } from '../visit/running-time.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** About the text of a prescription that stands, by another person than its prescriber. */
export function checkPharmacyCheck(
  record: SubjectRecord,
  { body }: Fact<'pharmacy-check'>,
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const field = `${path}.prescription`;
  const about = factsOf(record, 'prescription').find(({ id }) => id === body.prescription);
  if (about === undefined)
    return [
      refusal('no-such-entry', 'That prescription does not stand any more: it was corrected or withdrawn.', {
        field,
        remedy: 'read the one that stands, then say whether it is right',
      }),
    ];
  return about.author.staff === now.by.staff
    ? [
        refusal('second-person-needed', 'You wrote this prescription yourself.', {
          field,
          remedy: 'another pharmacist looks at it',
        }),
      ]
    : [];
}

export function checkPharmacyAnswer(
  record: SubjectRecord,
  { body }: Fact<'pharmacy-answer'>,
  path: string,
): readonly Refusal[] {
  const check = factsOf(record, 'pharmacy-check').find(({ id }) => id === body.check);
  return check?.body.outcome === 'asked'
    ? []
    : [refusal('no-such-entry', 'The pharmacist has asked no such question.', { field: `${path}.check` })];
}

/**
 * What is prepared, and what runs, waits for the pharmacist where the protocol says so, and wherever one has refused or asked.
 * What was done on paper is written as it was done.
 */
export function checkVerified(record: SubjectRecord, now: Surroundings, typedInLater: boolean): readonly Refusal[] {
  if (typedInLater || now.clock.boot === TYPED_IN_LATER) return [];
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  const order = orderAtPharmacy(record, now.today);
  if (order === undefined || !holdsPreparation(order, protocol)) return [];
  return [
    refusal('prescription-not-verified', `The prescription is ${statePlainly(pharmacySays(order, shortDate))}.`, {
      remedy: remedies[order.state.is],
    }),
  ];
}

/** A dose of a refused prescription is not decided: no cannula is placed for what nobody may prepare. */
export function checkNotRefused(record: SubjectRecord, now: Surroundings): readonly Refusal[] {
  const order = orderAtPharmacy(record, now.today);
  return order?.state.is === 'refused' ? checkVerified(record, now, false) : [];
}

const statePlainly = (says: string): string => says.replace(/^the pharmacist asks/, 'held: the pharmacist asks');

const remedies = {
  waits: 'ask the pharmacist to verify it; prepare nothing before',
  asked: 'the prescriber answers, then the pharmacist looks again',
  answered: 'ask the pharmacist to look again',
  refused: 'the prescriber corrects it or writes another; the pharmacist looks at that one',
  verified: '',
} as const;
