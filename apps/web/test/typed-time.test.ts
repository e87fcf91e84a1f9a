/** A time as it is typed off a day sheet. */
import { expect, test } from 'vitest';
import { readTypedTime } from '../src/words/typed-time.ts';

test.each([
  ['09:05', '09:05'],
  ['9:05', '09:05'],
  ['9.05', '09:05'],
  ['0905', '09:05'],
  ['905', '09:05'],
  [' 14 30 ', '14:30'],
  ['23:59', '23:59'],
])('"%s" is %s', (typed, read) => expect(readTypedTime(typed)).toBe(read));

test.each(['', '9', '24:00', '10:60', '25:70', '10:4', 'ten', '10:40 pm', '1:234'])('"%s" is no time', (typed) =>
  expect(readTypedTime(typed)).toBeUndefined(),
);
