/** What a pile of work says beside its number: what has waited is old, what is yet to come is not. */
import { expect, test } from 'vitest';
import { sinceWhen } from '../src/today/since-when.ts';

test.each([
  ['2026-10-12', 'oldest 12 Oct 2026'],
  ['2026-11-26', 'oldest 26 Nov 2026'],
  ['2026-12-03', 'first on 3 Dec 2026'],
])('%s, seen on 26 November', (day, says) => {
  expect(sinceWhen(day, '2026-11-26')).toBe(says);
});
