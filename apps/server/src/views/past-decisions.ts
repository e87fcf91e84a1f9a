/**
 * Past decisions decided again: `replay` by what was in force, `what if` by another sheet. Answered in parts, as who flips is:
 * a screen shows how far it is, and stops by asking for no more.
 */
import {
  type ContextsThen,
  type Entry,
  type LedgerOf,
  type Proof,
  type Protocol,
  RULE_SET,
  type Subject,
  addMonths,
  contextsThen,
  nothingSummed,
  replay,
  subjectId,
  summedWith,
  whatIf,
} from '@twelvemonth/clinical';
import type { ReplayAnswer, WhatIfAnswer } from '@twelvemonth/exchange';
import { ledgersOfPerson, ledgersOfService } from '@twelvemonth/store';
import type { AtHand } from '../at-hand.ts';
import { steadyMilliseconds } from '../clock.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';

/** How long one part of the answer may take: others are answered in between. */
const partMilliseconds = 100;

type Past = {
  readonly commit: number;
  readonly patients: readonly Subject[];
  readonly service: ReadonlyMap<Subject, readonly Entry[]>;
  readonly contexts: ContextsThen;
};
/** As of the last commit; another commit is another past. */
const known = new WeakMap<object, Past>();

async function pastOf({ store }: AtHand): Promise<Past> {
  const { commit } = await store.tail();
  const before = known.get(store);
  if (before?.commit === commit) return before;
  const past: Past = {
    commit,
    patients: await store.subjects('patient'),
    service: await ledgersOfService(store),
    contexts: contextsThen(),
  };
  known.set(store, past);
  return past;
}

/** People from `after` on, until the part is over; answers with where the next begins. */
async function eachOfPart(
  atHand: AtHand,
  after: number,
  look: (of: Subject, ledgerOf: LedgerOf, contexts: ContextsThen) => void,
): Promise<{ readonly looked: number; readonly of: number; readonly next?: number }> {
  const { patients, service, contexts } = await pastOf(atHand);
  const began = steadyMilliseconds();
  let at = after;
  for (const of of patients.slice(after)) {
    look(of, await ledgersOfPerson(atHand.store, of, service), contexts);
    at += 1;
    if (steadyMilliseconds() - began > partMilliseconds) break;
  }
  return { looked: Math.min(at, patients.length), of: patients.length, ...(at < patients.length ? { next: at } : {}) };
}

export async function whatIfOf(
  atHand: AtHand,
  { unit, today }: UnitNow,
  draft: Protocol,
  months: number,
  after: number,
): Promise<WhatIfAnswer> {
  let sum = nothingSummed;
  const asked = { unit: unit.id, draft, from: addMonths(today, -months), until: today };
  const part = await eachOfPart(atHand, after, (of, ledgerOf, contexts) => {
    sum = summedWith(sum, whatIf(of, ledgerOf, contexts, asked));
  });
  return { ...part, ...sum };
}

export async function replayOf(atHand: AtHand, after: number): Promise<ReplayAnswer> {
  const proofs: Proof[] = [];
  const part = await eachOfPart(atHand, after, (of, ledgerOf, contexts) => {
    proofs.push(...replay(of, ledgerOf, contexts));
  });
  const differences: ReplayAnswer['differences'] = [];
  for (const { patient, on, signed, now, because, holds } of proofs) {
    if (holds) continue;
    const person = await atHand.people.of(subjectId(patient));
    const name = person === undefined ? subjectId(patient) : fullName(person);
    differences.push({ patient: subjectId(patient), name, on, signed, now, because });
  }
  return { ...part, ruleSet: RULE_SET, decisions: proofs.length, differences };
}
