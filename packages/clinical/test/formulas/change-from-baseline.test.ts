/** A weight that changed by more than so many per cent from the one before is asked about: common practice, no source. */
import { expect, test } from 'vitest';
import { changedByMoreThan } from '../../src/formulas/change-from-baseline.ts';
import { ratioOf, scaled } from '@twelvemonth/clinical';

test.each([
  ['60', '69', false],
  ['60', '69.0001', true],
  ['60', '51', false],
  ['60', '50.9999', true],
  ['60', '60', false],
])('from %s to %s kg is more than 15 %%: %s', (was, now, expected) =>
  expect(changedByMoreThan(ratioOf(scaled(now)), ratioOf(scaled(was)), scaled('15'))).toBe(expected),
);
