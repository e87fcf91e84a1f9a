/** The quick path and the whole one give the same verdict: on every ledger, under every protocol, on every date. */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type Protocol,
  type ProtocolSheet,
  addDays,
  protocolFrom,
  readiness,
  recordOf,
  teachingSheet,
  verdictIn,
  verdictOn,
  verdictSpans,
} from '@twelvemonth/clinical';
import { caseOf } from './oracle/random-ledgers.ts';

const made = (sheet: ProtocolSheet): Protocol => {
  const found = protocolFrom(sheet);
  if (!('protocol' in found)) throw new Error('an empty number');
  return found.protocol;
};
const strict = made({
  ...teachingSheet,
  numbers: {
    ...teachingSheet.numbers,
    clearanceFloor: { ...teachingSheet.numbers.clearanceFloor, value: '40' },
    bloodsValidDays: { ...teachingSheet.numbers.bloodsValidDays, value: '28' },
    vitaminDFloor: { ...teachingSheet.numbers.vitaminDFloor, value: '60' },
  },
});
const horizon = 420;

describe.each([0, 1, 2, 3])('on random ledgers, a quarter of them', (quarter) => {
  test('every date from the day asked on', () => {
    const seen = new Set<string>();
    for (let index = 0; index < 60; index += 1) {
      const found = caseOf(20_000 + quarter * 60 + index);
      const record = recordOf('patient/person', found.entries);
      const { calendar, from, next, sheet } = found;
      const first = [{ from: -100_000, protocol: made(sheet) }];
      const timelines = [
        next === undefined ? first : [...first, { from: next.from, protocol: made(next.sheet) }],
        [{ from: 0, protocol: strict }],
        [{ from: from + 30, protocol: strict }],
        [],
      ];
      for (const protocols of timelines) {
        const context = { protocols, calendar };
        const today = (from + (index % 10)) as Day;
        const whole = readiness(record, context, today);
        const spans = verdictSpans(record, context, today);
        for (let ahead = 0; ahead <= horizon; ahead += index % 4 === 0 ? 1 : 7) {
          const on = addDays(today, ahead);
          const { verdict } = verdictOn(whole, on);
          expect(verdictIn(spans, on), `${ahead} days on:\n${found.text}`).toBe(verdict);
          seen.add(verdict);
        }
      }
    }
    // All but "does not apply", which no whole ledger comes to.
    expect(seen.size).toBe(3);
  });
});

test('asked about a day before the one asked on, it is a defect', () => {
  expect(() => verdictIn([{ from: 10 as Day, verdict: 'ready' }], 9 as Day)).toThrow(RangeError);
});
