/** A creatinine that has risen on the person's own (docs/readiness.md R2a). Asked on 25 November 2026 under the teaching protocol. */
import { describe, expect, test } from 'vitest';
import { addDays, day } from '@twelvemonth/clinical';
import { creatinine, person, verdict, woman70 } from './kidney-person.ts';
import { type Line, at, weighed } from './person.ts';

describe('creatinine that has risen on the own baseline', () => {
  const risen = (before: string, now: string, beforeOn = '2026-08-01') => [
    woman70,
    weighed('2026-11-20', '70'),
    ...creatinine(`${before} umol/L`, beforeOn),
    ...creatinine(`${now} umol/L`),
  ];
  test.each([
    ['by 25 umol/L', '100', '125', 'ready'],
    ['by 26 umol/L', '100', '126', 'cannot say'],
    ['by 26 umol/L in hundredths', '99.99', '125.99', 'cannot say'],
    ['by a hair under 26', '100', '125.99', 'ready'],
    ['1.3 times', '60', '78', 'cannot say'],
    ['a hair under 1.3 times', '60', '77.99', 'ready'],
    ['not at all', '80', '80', 'ready'],
  ])('%s', (_, before, now, expected) => {
    expect(verdict(risen(before, now))).toBe(expected);
  });
  test('the lowest of the last 365 days is the baseline; 366 days ago is none', () => {
    const deciding = day('2026-11-20');
    expect(verdict(risen('60', '80', '2025-11-20'))).toBe('cannot say');
    expect(addDays(deciding, -365)).toBe(day('2025-11-20'));
    expect(verdict(risen('60', '80', '2025-11-19'))).toBe('ready');
  });
  test('an unsigned or acute earlier value is no baseline', () => {
    const acute: Line = {
      on: '2026-08-01',
      kind: 'result',
      id: 'acute',
      body: { analyte: 'creatinine', quantity: { comparator: '', value: '50', unit: 'umol/L' }, acuteAdmission: true },
    };
    const signedAcute = at('2026-08-01', 'results-signed', { results: ['acute'] });
    expect(verdict([...person('70', '80'), acute, signedAcute])).toBe('ready');
    // A low one that nobody has signed may be hers: then the creatinine has risen.
    expect(verdict([...person('70', '80'), ...creatinine('50 umol/L', '2026-08-01', null)])).toBe('cannot say');
  });
  test('a prescriber accepts the rise of this result, and of no other', () => {
    const lines = [
      woman70,
      weighed('2026-11-20', '70'),
      ...creatinine('60 umol/L', '2026-08-01'),
      {
        on: '2026-11-20',
        kind: 'result',
        id: 'now',
        body: { analyte: 'creatinine', quantity: { comparator: '', value: '80', unit: 'umol/L' } },
      } as Line,
      at('2026-11-20', 'results-signed', { results: ['now'] }),
    ];
    const accepted = (about: string) =>
      at('2026-11-21', 'prescriber-decision', {
        question: 'creatinine rise accepted',
        about,
        reason: 'trimethoprim, stopped',
      });
    expect(verdict(lines)).toBe('cannot say');
    expect(verdict([...lines, accepted('now')])).toBe('ready');
    expect(verdict([...lines, accepted('another')])).toBe('cannot say');
  });
  test('two values of one day that differ: cannot say until one is withdrawn or corrected, or the test is had again', () => {
    const lines = [woman70, weighed('2026-11-20', '70'), ...creatinine('79 umol/L')];
    expect(verdict(lines)).toBe('ready');
    expect(verdict([...lines, ...creatinine('79.0 umol/L')])).toBe('ready');
    const both = [...lines, ...creatinine('120 umol/L')];
    expect(verdict(both)).toBe('cannot say');
    expect(verdict([...both, ...creatinine('79 umol/L')])).toBe('cannot say');
    expect(verdict([...both, ...creatinine('80 umol/L', '2026-11-21')])).toBe('ready');
  });
  test('nor of a correction: the corrected value has risen too, and nobody has decided about it', () => {
    const result = (id: string, value: string, amends?: string) =>
      ({
        on: '2026-11-20',
        kind: 'result',
        id,
        body: { analyte: 'creatinine', quantity: { comparator: '', value, unit: 'umol/L' } },
        ...(amends === undefined ? {} : { amends }),
      }) as Line;
    const accepted = (about: string) =>
      at('2026-11-21', 'prescriber-decision', { question: 'creatinine rise accepted', about, reason: 'known' });
    const lines = [
      woman70,
      weighed('2026-11-20', '70'),
      ...creatinine('60 umol/L', '2026-08-01'),
      result('first', '80'),
      accepted('first'),
      result('corrected', '90', 'first'),
      at('2026-11-22', 'results-signed', { results: ['corrected'] }),
    ];
    expect(verdict(lines)).toBe('cannot say');
    expect(verdict([...lines, accepted('corrected')])).toBe('ready');
  });
  test('below 35 it is not ready, risen or not', () => {
    expect(
      verdict([
        woman70,
        weighed('2026-11-20', '50'),
        ...creatinine('80 umol/L', '2026-08-01'),
        ...creatinine('130 umol/L'),
      ]),
    ).toBe('not ready');
  });
});
