import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedText } from '../src/exact/fixed-text.ts';

// Against Number.prototype.toFixed (ECMA-262, 21.1.3.3).
describe('a number at one or two places is written as the language writes it', () => {
  test('any number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: false }), fc.constantFrom(1 as const, 2 as const), (value, places) => {
        expect(fixedText(value, places)).toBe(value.toFixed(places));
      }),
    );
  });
  test('numbers as a working has them, and those in the middle between two', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300_000 }),
        fc.constantFrom(1 as const, 2 as const),
        (thousandths, places) => {
          for (const value of [thousandths / 1000, thousandths / 1000 + Number.EPSILON, thousandths / 7])
            expect(fixedText(value, places)).toBe(value.toFixed(places));
        },
      ),
    );
  });
});
