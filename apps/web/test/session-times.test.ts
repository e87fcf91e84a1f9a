/** Arrival times of a planned session, and the expiry printed on a pack. */
import { expect, test } from 'vitest';
import { arrivalTimes, typedTimes } from '../src/sessions/arrival-times.ts';
import { readExpiry } from '../src/visit/read-expiry.ts';

test('arrivals are spread from opening and none falls at or after closing', () => {
  expect(arrivalTimes('08:40', 20, 4, '17:00')).toEqual(['08:40', '09:00', '09:20', '09:40']);
  expect(arrivalTimes('16:20', 20, 9, '17:00')).toEqual(['16:20', '16:40']);
});

test('times may be typed with blanks, commas or line breaks between them', () => {
  expect(typedTimes('08:40, 09:00\n09:20;09:40')).toEqual(['08:40', '09:00', '09:20', '09:40']);
});

test('an expiry of month and year holds until the last day of that month', () => {
  expect(readExpiry('04 2028')).toBe('2028-04-30');
  expect(readExpiry('2/2028')).toBe('2028-02-29');
  expect(readExpiry('08/28')).toBe('2028-08-31');
  expect(readExpiry('8-28')).toBe('2028-08-31');
  expect(readExpiry('13/28')).toBeUndefined();
  expect(readExpiry('30 4 2028')).toBe('2028-04-30');
});

test('an expiry that names no month there is is not read', () => {
  expect(readExpiry('13 2028')).toBeUndefined();
  expect(readExpiry('2028')).toBeUndefined();
});
