/**
 * Consent, or a recorded best-interest decision. A consent counts for planning as long as the protocol says and is asked again on
 * the day; a best-interest decision is made for one dose; a no said after it ends it (docs/readiness.md R8).
 */
import { addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';
import { type Blocker, type Judge, type Path, type Requirement, always, judgement, readyPath } from './requirement.ts';

const givenToday: NonNullable<Blocker['settled']> = (known) => ({
  consent: { decision: 'given', on: known.today, entry: undefined },
  saidNo: undefined,
  cannotDecide: undefined,
});

const ifTheyThinkOtherwise: Path = {
  is: 'blocked',
  by: {
    what: 'consent, if the person thinks otherwise',
    who: 'patient',
    step: 'ask consent',
    settled: givenToday,
  },
};

const bestInterestAgain: Path = {
  is: 'blocked',
  by: {
    what: 'a best-interest decision for this dose, or consent where the person can give it',
    who: 'nurse',
    step: 'ask consent',
    settled: givenToday,
  },
};

const thresholds = [{ key: 'consentValidDays' }] as const;

const reads = ['consent', 'saidNo', 'lastDose', 'cannotDecide'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge({ consent, saidNo, lastDose, cannotDecide }: Read, { number }: Protocol): Judge {
  const validDays = number.consentValidDays;
  const ask = (why: string): Path => ({ is: 'steps', needs: { ask: { what: 'consent', validDays, why } } });
  if (saidNo !== undefined) {
    const { to, words } = saidNo.body;
    return always(
      judgement('not ready', `said no to ${to}`, () => ({
        says: `On ${shortDate(saidNo.on)} this person said no to ${to}: “${words}”. No consent was recorded after that.`,
        inputs: [{ label: 'said no', text: `to ${to}`, on: saidNo.on, entry: saidNo.id }],
      })),
      ifTheyThinkOtherwise,
    );
  }
  if (cannotDecide !== undefined && (consent === undefined || consent.decision === 'given')) {
    return always(
      judgement('cannot say', 'found not able to decide this', () => ({
        says: `On ${shortDate(cannotDecide.on)} it was found that this person cannot decide this: no consent of theirs counts until they can, and nobody has decided in their best interest.`,
        inputs: [{ label: 'can they decide this?', text: 'no', on: cannotDecide.on, entry: cannotDecide.id }],
      })),
      bestInterestAgain,
    );
  }
  if (consent === undefined) {
    return always(
      judgement('cannot say', 'consent never asked', () => ({ says: 'Nobody has recorded consent.' })),
      ask('consent was never asked'),
    );
  }
  const { decision, on, entry } = consent;
  const inputs = [
    entry === undefined ? { label: 'consent', text: decision, on } : { label: 'consent', text: decision, on, entry },
  ];
  if (decision === 'not given') {
    return always(
      judgement('not ready', 'consent not given', () => ({ says: `Asked on ${shortDate(on)}: not given.`, inputs })),
      ifTheyThinkOtherwise,
    );
  }
  const bestInterest = decision === 'best interest';
  if (bestInterest && lastDose !== undefined && lastDose.on >= on) {
    return always(
      judgement('cannot say', 'the best-interest decision was for the last dose', () => ({
        says: `Decided on ${shortDate(on)} for the dose of ${shortDate(lastDose.on)}; each dose needs a decision of its own.`,
        inputs: [...inputs, { label: 'dose', text: lastDose.body.medicine, on: lastDose.on, entry: lastDose.id }],
      })),
      bestInterestAgain,
    );
  }
  const until = addDays(on, validDays);
  const ready = judgement('ready', 'consent', () => ({
    says: `Recorded as ${decision} on ${shortDate(on)}; counts until ${shortDate(until)} and is asked again on the day.`,
    inputs,
    thresholds,
  }));
  const over = judgement(
    'cannot say',
    bestInterest ? 'a best-interest decision for this dose' : `consent of ${shortDate(on)} to be asked again`,
    () => ({ says: `What was recorded on ${shortDate(on)} counted until ${shortDate(until)}.`, inputs, thresholds }),
  );
  return {
    changes: [addDays(until, 1)],
    on: (day) => (day <= until ? ready : over),
    path: (day) => {
      if (day <= until) return readyPath;
      return bestInterest ? bestInterestAgain : ask(`consent of ${shortDate(on)} counts until ${shortDate(until)}`);
    },
  };
}

export const consent: Requirement<(typeof reads)[number]> = {
  id: 'consent',
  title: 'Consent',
  clearedBy: 'the person, or a best-interest decision for this dose. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
