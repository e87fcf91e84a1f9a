import { describe, expect, test } from 'vitest';
import { type Fact, type KindName, day, entryText, kindNamed, kindNames } from '@twelvemonth/clinical';

const fact = (kind: KindName, body: unknown = kindNamed(kind).example): Fact =>
  ({
    id: 'e1',
    first: 'e1',
    act: 'a1',
    seq: 1,
    kind,
    on: day('2026-10-09'),
    at: undefined,
    body,
    author: { staff: 's', role: 'nurse' },
    recordedAt: '2026-10-09T09:00:00.000Z',
  }) as Fact;

describe('an entry in one line', () => {
  test.each(kindNames)('%s: every kind has words of its own', (kind) => {
    const text = entryText(fact(kind));
    expect(text.length).toBeGreaterThan(5);
    expect(text).not.toMatch(/undefined|\[object|NaN|\n/);
  });
  test.each<[KindName, unknown, string]>([
    [
      'result',
      { analyte: 'creatinine', quantity: { comparator: '', value: '79', unit: 'umol/L' } },
      'creatinine 79 umol/L (sample of 9 Oct 2026)',
    ],
    [
      'result',
      { analyte: 'vitamin D', quantity: { comparator: '<', value: '20', unit: 'nmol/L' } },
      'vitamin D <20 nmol/L (sample of 9 Oct 2026)',
    ],
    [
      'dose',
      { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391', partMilliliters: 60 },
      'zoledronic acid 5 mg given on 9 Oct 2026, this service, batch PA-2391, part dose of 60 mL',
    ],
    ['allergy', { answer: 'none known' }, 'no allergies known'],
    [
      'infusion-finished',
      { milliliters: 100, ranSeconds: 1815, clock: { boot: 'b', uptimeMilliseconds: 0, wall: '' } },
      'infusion finished, 100 mL in 30 min 15 s',
    ],
  ])('%s reads as a nurse would say it', (kind, body, text) => {
    expect(entryText(fact(kind, body))).toBe(text);
  });
});
