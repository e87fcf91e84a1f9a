/** What the server refuses about a field is told by the name the field has on the screen, never by its name in the code. */
import { kindNamed } from '@twelvemonth/clinical';
import { expect, test } from 'vitest';
import { atField, inSummary, remedyOf } from '../src/paper/refusal-words.ts';
import type { Refusal } from '../src/server/server-problem.ts';

const wrong = (field: string, says: string): Refusal => ({
  name: 'field-wrong',
  field,
  says,
  remedy: kindNamed('observations').help,
});

test.each([
  ['line.body.systolicMmHg', 'observations: Too big: expected number to be <=280', 'Systolic pressure: at most 280'],
  [
    'lines.0.body.saturationPercent',
    'observations: Too small: expected number to be >=50',
    'Oxygen saturation: at least 50',
  ],
  [
    'lines.1.body.quantity.unit',
    'body weight: the unit is missing, and is never guessed: kg, lb',
    'Weight: the unit is missing, and is never guessed: kg, lb',
  ],
])('%s', (field, says, told) => {
  expect(inSummary(wrong(field, says))).toBe(told);
});

test('beside its field the label is not said again', () => {
  expect(atField(wrong('line.body.systolicMmHg', 'observations: Too big: expected number to be <=280'))).toBe(
    'at most 280',
  );
});

test('the help of a whole form is no remedy for one field; a remedy of its own is told', () => {
  expect(
    remedyOf(wrong('line.body.systolicMmHg', 'observations: Too big: expected number to be <=280')),
  ).toBeUndefined();
  const refusal: Refusal = {
    name: 'already-here',
    says: 'Their arrival is in the notes.',
    remedy: 'go on with the next step',
  };
  expect(remedyOf(refusal)).toBe('go on with the next step');
});
