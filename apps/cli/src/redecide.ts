/**
 * Everyone decided again from the notes, as after the adoption of a version: the verdict of today and the first and last day of
 * the window, under what is in force, beside what another version says. Notes are read a batch at a time and none are kept.
 */
import {
  type BriefAnswer,
  type Day,
  type DecisionContext,
  type Subject,
  type Verdict,
  briefAnswer,
  protocolFrom,
  protocolInForceOn,
  protocolVersions,
  recordOf,
  subject,
  unitOfPatient,
  verdicts,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { todayIn } from './clock.ts';
import { misused } from './ending.ts';
import { type UnitContext, allUnits } from './units.ts';

export type Redecided = {
  readonly people: number;
  /** Of those decided so far. */
  readonly done: number;
  readonly verdicts: Readonly<Record<Verdict, number>>;
  readonly withWindow: number;
  /** Whose verdict, or window, the other version would have otherwise. Absent where none is compared. */
  readonly otherwise?: { readonly verdict: number; readonly window: number };
  /** At no unit, or at one where no protocol is in force. */
  readonly leftOut: number;
};

export type Redeciding = {
  readonly today: Day | undefined;
  /** A version of the same unit's protocol to compare with. */
  readonly against: string | undefined;
  readonly told: (done: number, of: number) => void;
  /** Asked between batches. */
  readonly isStopped: () => boolean;
};

const BATCH = 200;

type AtUnit = { readonly today: Day; readonly context: DecisionContext; readonly other: DecisionContext | undefined };

export async function redecide(reader: StoreReader, asked: Redeciding): Promise<Redecided> {
  const units = new Map<string, AtUnit>();
  for (const [id, unit] of await allUnits(reader)) {
    const at = await atUnit(reader, unit, asked);
    if (at !== undefined) units.set(id, at);
  }
  const people = await reader.subjects('patient');
  const count = Object.fromEntries(verdicts.map((verdict) => [verdict, 0])) as Record<Verdict, number>;
  const otherwise = { verdict: 0, window: 0 };
  let [done, withWindow, leftOut] = [0, 0, 0];
  for (let from = 0; from < people.length && !asked.isStopped(); from += BATCH) {
    for (const [of, entries] of await reader.ledgers(people.slice(from, from + BATCH))) {
      done += 1;
      const record = recordOf(of, entries);
      const at = units.get(unitOfPatient(record));
      if (at === undefined) {
        leftOut += 1;
        continue;
      }
      const answer = briefAnswer(record, at.context, at.today);
      count[answer.verdict] += 1;
      if (answer.window !== undefined) withWindow += 1;
      if (at.other === undefined) continue;
      const before = briefAnswer(record, at.other, at.today);
      if (before.verdict !== answer.verdict) otherwise.verdict += 1;
      if (!sameWindow(before, answer)) otherwise.window += 1;
    }
    asked.told(done, people.length);
    await nextTurn();
  }
  return {
    people: people.length,
    done,
    verdicts: count,
    withWindow,
    leftOut,
    ...(asked.against === undefined ? {} : { otherwise }),
  };
}

const sameWindow = (a: BriefAnswer, b: BriefAnswer): boolean =>
  a.window?.first === b.window?.first && a.window?.last === b.window?.last;

async function atUnit(
  reader: StoreReader,
  { unit, context }: UnitContext,
  { today: asked, against }: Redeciding,
): Promise<AtUnit | undefined> {
  const today = asked ?? todayIn(unit.zone);
  if (protocolInForceOn(context.protocols, today) === undefined) return undefined;
  if (against === undefined) return { today, context, other: undefined };
  const of: Subject = subject('protocol', unit.id);
  const found = protocolVersions(recordOf(of, await reader.ledger(of))).findLast(({ version }) => version === against);
  if (found?.sheet === undefined) throw misused(`There is no version "${against}" of the protocol of ${unit.name}.`);
  const made = protocolFrom(found.sheet);
  if ('empty' in made) throw misused(`The version "${against}" has empty numbers.`);
  return { today, context, other: { ...context, protocols: [{ from: 0, protocol: made.protocol }] } };
}
