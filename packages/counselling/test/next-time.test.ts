/** A reaction carried into next year's talk. Numbers: Black 2007 NEJM 356:1809 (read as 32, 7 and 3) and Wark 2012 (read). */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FeltAfter, nextTimeAfter } from '@twelvemonth/counselling';

const aching: FeltAfter = { says: 'flu-like, aching, 2 days', severity: 'mild', atTheChair: false };

test('after a first dose: 32 of 100 then, 7 of 100 next time, both ways, with a plan and its sources', () => {
  const next = nextTimeAfter([aching], 1);
  if (next?.is !== 'less likely next time') throw new Error('nothing planned');
  expect(next.numbers).toMatch(/^Of 100 people 32 felt ill .* and 7 after drip number 2\. 93 did not\./);
  expect(next.plan[0]).toMatch(/four hours after .* 46 felt worse with it, 76 without/);
  expect(next.felt).toEqual([aching.says]);
  expect(next.sources.map(({ citation }) => citation).join(' ')).toMatch(/Black 2007.*Wark 2012/);
});
test('after a second dose 3 of 100; after a third it says that later ones were not counted', () => {
  const numbers = (doses: number) => {
    const next = nextTimeAfter([aching], doses);
    return next?.is === 'less likely next time' ? next.numbers : '';
  };
  expect(numbers(2)).toMatch(/and 3 after drip number 3\. 97 did not/);
  expect(numbers(3)).toMatch(/later ones were not counted/);
});
test('a severe one, or one at the chair, is never talked down: a prescriber first', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          says: fc.constant('x'),
          severity: fc.constantFrom('mild', 'moderate', 'severe'),
          atTheChair: fc.boolean(),
        }),
        { minLength: 1 },
      ),
      fc.integer({ min: 1, max: 6 }),
      (felt, doses) => {
        const grave = felt.some(({ severity, atTheChair }) => severity === 'severe' || atTheChair);
        expect(nextTimeAfter(felt as FeltAfter[], doses)?.is).toBe(
          grave ? 'a prescriber first' : 'less likely next time',
        );
      },
    ),
  );
});
test('nothing told: nothing is made up', () => {
  expect(nextTimeAfter([], 1)).toBeUndefined();
});
