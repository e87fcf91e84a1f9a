/**
 * What must hold for the checker's random ledgers, which reach every requirement under every regimen: the answer depends on the
 * entries alone, what is taken away never makes anyone ready, and the ends of a window are exact.
 */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type DecisionContext,
  type Entry,
  type KindName,
  type RequirementId,
  addDays,
  kindNamed,
  parseLedger,
  entriesFromDrafts,
  printLedger,
  protocolFrom,
  readiness,
  recordOf,
  verdictOn,
} from '@twelvemonth/clinical';
import { type Case, caseOf } from './oracle/random-ledgers.ts';

const SEEDS = Array.from({ length: 200 }, (_, index) => 40_000 + index);
const person = 'patient/person';

function contextOf({ sheet, calendar, next }: Case): DecisionContext {
  const compiled = (one: Case['sheet']) => {
    const made = protocolFrom(one);
    if (!('protocol' in made)) throw new Error('a number is empty');
    return made.protocol;
  };
  const protocols = [{ from: -100_000, protocol: compiled(sheet) }];
  if (next !== undefined) protocols.push({ from: next.from, protocol: compiled(next.sheet) });
  return { protocols, calendar };
}

const decided = (c: Case, entries: readonly Entry[] = c.entries) =>
  readiness(recordOf(person, entries), contextOf(c), c.from as Day);
/** The verdicts and dates of an answer, without what only points at entries. */
const plain = ({ window, noWindow, nextSteps, timelines }: ReturnType<typeof decided>) => ({
  window: window && [window.first, window.last, window.certain],
  needs: noWindow?.needs.map(({ requirement }) => requirement),
  steps: nextSteps.map(({ kind, earliest, latest }) => [kind, earliest, latest]),
  spans: timelines.map(({ requirement, spans }) => [
    requirement,
    spans.map(({ from, until, verdict, cause }) => [from, until, verdict, cause]),
  ]),
});

describe('the same entries give the same answer', () => {
  test('asked twice, and of entries that went through a store and came back', () => {
    for (const seed of SEEDS) {
      const c = caseOf(seed);
      const usual = plain(decided(c));
      expect(plain(decided(c))).toEqual(usual);
      const stored = JSON.parse(JSON.stringify(c.entries)) as Entry[];
      expect(plain(decided(c, stored))).toEqual(usual);
    }
  });
  test('written out as text and read in again', () => {
    for (const seed of SEEDS) {
      const c = caseOf(seed);
      const first = parseLedger(c.text);
      if (!first.ok) throw new Error(c.text);
      const again = parseLedger(printLedger(first.drafts));
      if (!again.ok) throw new Error(JSON.stringify(again.problems));
      const entries = entriesFromDrafts(again.drafts, { start: '2020-01-01T00:00:00.000Z' });
      expect(plain(decided(c, entries))).toEqual(plain(decided(c)));
    }
  });
});

describe('what is taken away never makes anyone ready', () => {
  const needs: readonly (readonly [KindName, RequirementId])[] = [
    ['identity', 'identity'],
    ['allergy', 'hypersensitivity'],
    ['pregnancy', 'pregnancy'],
    ['result', 'kidney-function'],
    ['result', 'calcium'],
    ['weight', 'kidney-function'],
    ['results-signed', 'calcium'],
    ['prescription', 'prescription'],
    ['consent', 'consent'],
    ['dental', 'teeth-and-jaw'],
  ];
  test.each(needs)('without any %s, %s is ready on no day', (kind, requirement) => {
    let held = 0;
    for (const seed of SEEDS.slice(0, 100)) {
      const c = caseOf(seed);
      const answer = decided(
        c,
        c.entries.filter((entry) => entry.kind !== kind),
      );
      for (let ahead = 0; ahead <= 400; ahead += 20) {
        const said = verdictOn(answer, addDays(c.from as Day, ahead)).requirements.find(
          (one) => one.requirement === requirement,
        );
        // Left out by the regimen, or passed over by a prescriber's exception that is shown.
        if (said?.verdict === 'does not apply' || said?.exception !== undefined) continue;
        expect([seed, ahead, said?.verdict]).not.toEqual([seed, ahead, 'ready']);
        held += 1;
      }
    }
    expect(held).toBeGreaterThan(500);
  });
});

describe('the ends of a window are exact', () => {
  test('certain: ready on the first day and on the last, not on the day before and not on the day after', () => {
    let windows = 0;
    let ended = 0;
    // Most of these people wait for someone: certain windows are few.
    for (const seed of [...SEEDS, ...SEEDS.map((one) => one + SEEDS.length)]) {
      const c = caseOf(seed);
      const answer = decided(c);
      if (answer.window?.certain !== true) continue;
      windows += 1;
      const { first, last } = answer.window;
      expect([seed, verdictOn(answer, first).verdict]).toEqual([seed, 'ready']);
      const before = first > c.from ? verdictOn(answer, addDays(first, -1)).verdict : 'a day nobody asked about';
      expect([seed, before]).not.toEqual([seed, 'ready']);
      if (last === undefined) continue;
      ended += 1;
      for (let day = first; day <= last; day = addDays(day, 1))
        expect([seed, day, verdictOn(answer, day).verdict]).toEqual([seed, day, 'ready']);
      expect([seed, verdictOn(answer, addDays(last, 1)).verdict]).not.toEqual([seed, 'ready']);
    }
    expect([windows > 5, ended > 5]).toEqual([true, true]);
  });
});

describe('what has nothing to do with it changes nothing', () => {
  const bodies: readonly (readonly [KindName, unknown])[] = [
    ['adherence', { medicine: 'calcium and vitamin D', taken: 'nearly all', source: 'told by the person' }],
    ['reaction', { what: 'flu-like', severity: 'mild', days: 2 }],
    ['call', { route: 'telephone', about: 'recall', reached: true }],
    ['spine-imaging', { method: 'X-ray', found: 'no fracture' }],
    ['medicine', { name: 'amlodipine', sort: 'other' }],
    ['result', { analyte: 'egfr', quantity: { comparator: '', value: '90', unit: 'mL/min/1.73m2' } }],
  ];
  test.each(bodies)('%s', (kind, body) => {
    for (const seed of SEEDS.slice(0, 60)) {
      const c = caseOf(seed);
      const last = c.entries.at(-1);
      if (last === undefined) throw new Error('an empty ledger');
      const more = {
        ...last,
        kind,
        shape: kindNamed(kind).shape,
        body: kindNamed(kind).body.parse(body),
        id: 'nothing-to-do-with-it',
        seq: last.seq + 1,
        amends: undefined,
      } as unknown as Entry;
      expect(plain(decided(c, [...c.entries, more]))).toEqual(plain(decided(c)));
    }
  });
});
