/**
 * A weight that does not fit the one before it (docs/readiness.md R2b). Source of the 15 %: common practice, no source; the
 * hazards it answers are pounds for kilograms and a slip of a figure (practice hazards 7 and 8).
 */
import { describe, expect, test } from 'vitest';
import {
  day,
  everyDay,
  protocolFrom,
  quantity,
  readiness,
  teachingSheet,
  verdictOn,
  viewOf,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, personOf, weighed } from './person.ts';

const compiled = protocolFrom(teachingSheet);
if (!('protocol' in compiled)) throw new Error('the teaching sheet has an empty number');
const context = { protocols: [{ from: day('1900-01-01'), protocol: compiled.protocol }], calendar: everyDay };
const person = (...weights: Line[]) =>
  personOf([
    born('1941-06-02'),
    ...clear,
    ...bloods('2026-11-20', { creatinine: '60 umol/L', 'adjusted calcium': '2.30 mmol/L', 'vitamin D': '68 nmol/L' }),
    ...weights,
  ]);
function kidney(...weights: Line[]): string {
  const found = verdictOn(readiness(person(...weights), context, asked, {}), asked).requirements.find(
    ({ requirement }) => requirement === 'kidney-function',
  );
  return `${found?.verdict ?? ''}: ${found?.cause ?? ''}`;
}
const pounds = (on: string, value: string): Line =>
  at(on, 'weight', { quantity: quantity(value, 'lb'), method: 'measured' });
const changed = 'cannot say: weight changed by more than 15 %';
const fine = 'ready: kidney function';

describe('a weight beside the one before it', () => {
  test.each([
    ['exactly 15 % more is no change', '60', '69', fine],
    ['a hundred grams beyond is', '60', '69.1', changed],
    ['exactly 15 % less is no change', '60', '51', fine],
    ['a hundred grams beyond is', '60', '50.9', changed],
  ])('%s', (_, before, now, says) => {
    expect(kidney(weighed('2026-05-01', before), weighed('2026-11-20', now))).toBe(says);
  });
  test('pounds written as kilograms are caught, pounds written as pounds are not', () => {
    expect(kidney(weighed('2026-05-01', '60'), weighed('2026-11-20', '132'))).toBe(changed);
    expect(kidney(weighed('2026-05-01', '60'), pounds('2026-11-20', '132'))).toBe(fine);
  });
  test('weighed once more with nearly the same answer, also that day: it is true', () => {
    expect(kidney(weighed('2026-05-01', '60'), weighed('2026-11-20', '50.5'), weighed('2026-11-20', '50.7'))).toBe(
      fine,
    );
  });
  test('a prescriber who has looked into it settles it for that weight alone', () => {
    const one = { ...weighed('2026-11-20', '50.5'), id: 'w' };
    const decision = at('2026-11-21', 'prescriber-decision', {
      question: 'weight change looked into',
      about: 'w',
      reason: 'lost 10 kg after the operation',
    });
    expect(kidney(weighed('2026-05-01', '60'), one, decision)).toBe(fine);
    expect(kidney(weighed('2026-05-01', '60'), one, decision, weighed('2026-11-22', '60'))).toBe(changed);
  });
  test('an estimate is not what a change is told by, nor a weight from before the own baseline', () => {
    expect(kidney(weighed('2026-05-01', '80', 'estimated'), weighed('2026-11-20', '60'))).toBe(fine);
    expect(kidney(weighed('2025-11-19', '80'), weighed('2026-11-20', '60'))).toBe(fine);
    expect(kidney(weighed('2025-11-20', '80'), weighed('2026-11-20', '60'))).toBe(changed);
  });
  test('below the limit stays below the limit: the doubt does not soften it', () => {
    expect(kidney(weighed('2026-05-01', '60'), weighed('2026-11-20', '35'))).toMatch(/^not ready/);
  });
  test('the next step is to weigh again, and the working says what it was before', () => {
    const record = person(weighed('2026-05-01', '60'), weighed('2026-11-20', '50.5'));
    const view = viewOf(readiness(record, context, asked, {}), record, context, { on: asked });
    expect(JSON.stringify(view.nextSteps)).toMatch(/weigh/i);
    const { working } = view.requirements.find(({ id }) => id === 'kidney-function') ?? {};
    expect(working?.says).toContain('On 1 May 2026 it was 60 kg. Weigh again');
    expect(working?.thresholds.some(({ text }) => text.startsWith('15'))).toBe(true);
  });
});
