/**
 * Where a prescription stands with the pharmacist. A check is about the very text it was made of: a corrected prescription is
 * one nobody has verified, and so is a newer one.
 */
import { prescribedOn } from '../course/prescribed.ts';
import { type Day, day } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';
import type { Held } from '../standing/transitions.ts';
import { placesOf } from '../visit/place.ts';

type Check<Outcome extends Fact<'pharmacy-check'>['body']['outcome']> = Fact<'pharmacy-check'> & {
  readonly body: Extract<Fact<'pharmacy-check'>['body'], { outcome: Outcome }>;
};

export type PharmacyState =
  /** Nobody has looked. `changedSince`: a version of it that no longer stands was verified. */
  | { readonly is: 'waits'; readonly since: Day; readonly changedSince: Fact<'pharmacy-check'> | undefined }
  /** The prescriber has a question to answer. */
  | { readonly is: 'asked'; readonly since: Day; readonly check: Check<'asked'> }
  /** The prescriber has answered: the pharmacist looks again. */
  | {
      readonly is: 'answered';
      readonly since: Day;
      readonly check: Check<'asked'>;
      readonly answer: Fact<'pharmacy-answer'>;
    }
  | { readonly is: 'verified'; readonly since: Day; readonly check: Check<'verified'> }
  | { readonly is: 'refused'; readonly since: Day; readonly check: Check<'refused'> };

const newest = <One extends Fact>(facts: readonly One[]): One | undefined =>
  facts.reduce<One | undefined>((last, one) => (last === undefined || one.seq > last.seq ? one : last), undefined);

export function pharmacyState(record: SubjectRecord, prescription: Fact<'prescription'>): PharmacyState {
  const checks = factsOf(record, 'pharmacy-check');
  const last = newest(checks.filter(({ body }) => body.prescription === prescription.id));
  if (last === undefined)
    return { is: 'waits', since: prescription.on, changedSince: verifiedBefore(record, prescription) };
  const since = last.on;
  const { outcome } = last.body;
  if (outcome === 'verified') return { is: 'verified', since, check: last as Check<'verified'> };
  if (outcome === 'refused') return { is: 'refused', since, check: last as Check<'refused'> };
  const check = last as Check<'asked'>;
  const answer = newest(factsOf(record, 'pharmacy-answer').filter(({ body }) => body.check === check.id));
  return answer === undefined ? { is: 'asked', since, check } : { is: 'answered', since: answer.on, check, answer };
}

/** What was verified of a text of this prescription that was corrected since. */
function verifiedBefore(
  record: SubjectRecord,
  { id, first, seq }: Fact<'prescription'>,
): Fact<'pharmacy-check'> | undefined {
  if (first === id) return undefined;
  const standing = new Set(factsOf(record, 'prescription').map((one) => one.id));
  return newest(
    factsOf(record, 'pharmacy-check').filter(
      (one) =>
        one.seq < seq &&
        one.body.outcome === 'verified' &&
        (one.body.prescription === first || !standing.has(one.body.prescription)),
    ),
  );
}

export type OrderAtPharmacy = { readonly prescription: Fact<'prescription'>; readonly state: PharmacyState };

/** The order that stands on a day, and where it stands with the pharmacist. */
export function orderAtPharmacy(record: SubjectRecord, on: Day): OrderAtPharmacy | undefined {
  const prescription = prescribedOn(record, on);
  return prescription === undefined ? undefined : { prescription, state: pharmacyState(record, prescription) };
}

/** Whether the unit's protocol wants a pharmacist's word before anything is prepared. */
export const needsPharmacist = (protocol: Protocol | undefined): boolean =>
  protocol?.sheet.pharmacyVerification === 'before preparation';

/**
 * Whether preparing waits for somebody. A refusal and an open question hold it whatever the protocol says: a pharmacist who
 * doubts a prescription is heard. What nobody has looked at holds it where the protocol wants it looked at.
 */
export function holdsPreparation({ state }: OrderAtPharmacy, protocol: Protocol | undefined): boolean {
  switch (state.is) {
    case 'verified':
      return false;
    case 'refused':
    case 'asked':
    case 'answered':
      return true;
    case 'waits':
      return needsPharmacist(protocol);
  }
}

/**
 * Whether an order is one a pharmacist still looks at: in its days, its person in care, and a dose to come under it: none was
 * given since it was first written, or a place is held for another.
 */
export function isOpenOrder(record: SubjectRecord, order: Fact<'prescription'>, today: Day): boolean {
  if (day(order.body.validUntil) < today || careEnded.has(heldBy(record, today).held)) return false;
  const given = factsOf(record, 'dose').filter(({ on, seq }) => on >= order.on && seq > order.firstSeq);
  const last = Math.max(...given.map(({ on }) => on));
  return given.length === 0 || placesOf(record).some(({ on }) => on > last && on >= today);
}

const careEnded: ReadonlySet<Held> = new Set<Held>(['died', 'closed', 'transferred out']);

/** "waits for the pharmacist: changed since it was verified on 3 Nov 2026" */
export function pharmacySays({ state }: OrderAtPharmacy, shown: (day: Day) => string): string {
  switch (state.is) {
    case 'verified':
      return `verified by the pharmacist on ${shown(state.since)}`;
    case 'refused':
      return `refused by the pharmacist on ${shown(state.since)}: ${state.check.body.reason}`;
    case 'asked':
      return `the pharmacist asks the prescriber since ${shown(state.since)}: ${state.check.body.question}`;
    case 'answered':
      return `answered by the prescriber on ${shown(state.since)}: ${state.answer.body.answer}; the pharmacist looks again`;
    case 'waits':
      return state.changedSince === undefined
        ? 'not verified by a pharmacist'
        : `changed since it was verified on ${shown(state.changedSince.on)}: not verified`;
  }
}
