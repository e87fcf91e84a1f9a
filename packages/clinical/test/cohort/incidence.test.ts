/**
 * Survival and incidence beside competing ends, against what R's `survival` prints.
 * Kaplan-Meier: `summary(survfit(Surv(time, status) ~ x, aml))` as printed in the package's own tests/doaml.Rout.save (R 2.11.1),
 * the data in Miller 1997, Survival Analysis, p. 49; median 27 and mean 36.364 up to the last day of all 23: R 4.2, survival 3.5-3.
 * Aalen-Johansen: the competing-risks example `crdata` of the package's vignette "survival", section "Competing risks"; its
 * probabilities are worked out by hand here, as fractions of 77, from the definition. Its limits: incidence-limits.test.ts.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Observed, incidenceOf, kaplanMeier, stepOn } from '@twelvemonth/clinical';

/** "13+": still under way on day 13. */
const times = (text: string) =>
  text.split(' ').map((one) => ({ days: Number.parseInt(one, 10), event: !one.endsWith('+') }));
const maintained = times('9 13 13+ 18 23 28+ 31 34 45+ 48 161+');
const nonmaintained = times('5 5 8 8 12 16+ 23 27 30 33 43 45');

/** R prints so many digits: the last one is rounded. */
const rounded = (value: number | undefined, printed: string): string =>
  (value ?? Number.NaN).toFixed(printed.split('.')[1]?.length ?? 0);

type Printed = readonly [
  days: string,
  atRisk: string,
  events: string,
  survival: string,
  standardError: string,
  lower: string,
  upper: string,
];

/** One line of what R prints. */
function asPrinted(curve: ReturnType<typeof kaplanMeier>, printed: readonly string[]): void {
  const [days, atRisk, events, survival, standardError, lower, upper] = printed as Printed;
  const step = curve.find((one) => one.days === Number(days));
  expect([step?.atRisk, step?.events]).toEqual([Number(atRisk), Number(events)]);
  expect(rounded(step?.survival, survival)).toBe(survival);
  expect(rounded(step?.limits?.standardError, standardError)).toBe(standardError);
  expect(rounded(step?.limits?.lower, lower)).toBe(lower);
  expect(rounded(step?.limits?.upper, upper)).toBe(upper);
}

describe('Kaplan-Meier as R prints it', () => {
  test.each([
    ['9', '11', '1', '0.909', '0.0867', '0.7541', '1.000'],
    ['13', '10', '1', '0.818', '0.1163', '0.6192', '1.000'],
    ['18', '8', '1', '0.716', '0.1397', '0.4884', '1.000'],
    ['23', '7', '1', '0.614', '0.1526', '0.3769', '0.999'],
    ['31', '5', '1', '0.491', '0.1642', '0.2549', '0.946'],
    ['34', '4', '1', '0.368', '0.1627', '0.1549', '0.875'],
    ['48', '2', '1', '0.184', '0.1535', '0.0359', '0.944'],
  ])('maintained, day %s', (...printed) => asPrinted(kaplanMeier(maintained), printed));
  test.each([
    ['5', '12', '2', '0.8333', '0.1076', '0.6470', '1.000'],
    ['8', '10', '2', '0.6667', '0.1361', '0.4468', '0.995'],
    ['12', '8', '1', '0.5833', '0.1423', '0.3616', '0.941'],
    ['23', '6', '1', '0.4861', '0.1481', '0.2675', '0.883'],
    ['27', '5', '1', '0.3889', '0.1470', '0.1854', '0.816'],
    ['30', '4', '1', '0.2917', '0.1387', '0.1148', '0.741'],
    ['33', '3', '1', '0.1944', '0.1219', '0.0569', '0.664'],
    ['43', '2', '1', '0.0972', '0.0919', '0.0153', '0.620'],
  ])('not maintained, day %s', (...printed) => asPrinted(kaplanMeier(nonmaintained), printed));
  test('nobody left: zero, and no limits are made up', () => {
    const last = kaplanMeier(nonmaintained).at(-1);
    expect(last).toMatchObject({ days: 45, survival: 0, limits: undefined });
  });
  test('all 23: median 27, mean up to day 161 36.364', () => {
    const steps = kaplanMeier([...maintained, ...nonmaintained]);
    expect(steps.find(({ survival }) => survival <= 0.5)?.days).toBe(27);
    const edges = [0, ...steps.map(({ days }) => days), 161];
    const area = edges.slice(1).reduce((sum, until, index) => {
      const from = edges[index] ?? 0;
      return sum + (until - from) * (stepOn(steps, from)?.survival ?? 1);
    }, 0);
    expect(area.toFixed(3)).toBe('36.364');
  });
});

type End = 'a' | 'b' | 'c';
const ends: readonly End[] = ['a', 'b', 'c'];
const crdata: readonly Observed<End>[] = (
  [
    [1, 'a'],
    [2, 'a'],
    [3, 'b'],
    [4, ''],
    [5, 'a'],
    [6, 'a'],
    [7, 'c'],
    [8, ''],
    [6, 'b'],
    [7, 'c'],
    [8, ''],
  ] as const
).map(([days, end]) => ({ days, end: end === '' ? 'still under way' : end }));

test('Aalen-Johansen: entry, a, b and c of the example, as fractions of 77', () => {
  const of77 = incidenceOf(crdata, ends).map(({ days, atRisk, free, share }) => [
    days,
    atRisk,
    ...[free, share.a, share.b, share.c].map((one) => Math.round(one * 77 * 1e9) / 1e9),
  ]);
  expect(of77).toEqual([
    [1, 11, 70, 7, 0, 0],
    [2, 10, 63, 14, 0, 0],
    [3, 9, 56, 14, 7, 0],
    [5, 7, 48, 22, 7, 0],
    [6, 6, 32, 30, 15, 0],
    [7, 4, 16, 30, 15, 16],
  ]);
});

describe('whatever was observed', () => {
  const observed = fc.array(
    fc.record<Observed<End>>({
      days: fc.integer({ min: 0, max: 40 }),
      end: fc.constantFrom<Observed<End>['end']>('a', 'b', 'c', 'still under way'),
    }),
    { minLength: 1, maxLength: 60 },
  );
  test('shares and those still free make one, and no share ever falls', () => {
    fc.assert(
      fc.property(observed, (of) => {
        let before = { a: 0, b: 0, c: 0 };
        for (const { free, share, limits } of incidenceOf(of, ends)) {
          for (const end of ends) {
            const { lower, upper } = limits[end] ?? { lower: share[end], upper: share[end] };
            expect(lower).toBeLessThanOrEqual(share[end]);
            expect(upper).toBeGreaterThanOrEqual(share[end]);
          }
          expect(free + share.a + share.b + share.c).toBeCloseTo(1, 9);
          for (const end of ends) expect(share[end]).toBeGreaterThanOrEqual(before[end] - 1e-12);
          before = share;
        }
      }),
    );
  });
  test('seen to the end, it is plain counting', () => {
    fc.assert(
      fc.property(observed, (of) => {
        const whole = of.map((one) => (one.end === 'still under way' ? { ...one, end: 'c' as const } : one));
        for (const { days, share } of incidenceOf(whole, ends))
          for (const end of ends)
            expect(share[end]).toBeCloseTo(
              whole.filter((one) => one.end === end && one.days <= days).length / whole.length,
              9,
            );
      }),
    );
  });
  test('free of every end is Kaplan-Meier of any end; one end with the others censored is never less than beside them', () => {
    fc.assert(
      fc.property(observed, (of) => {
        const any = kaplanMeier(of.map(({ days, end }) => ({ days, event: end !== 'still under way' })));
        const beside = incidenceOf(of, ends);
        expect(beside.map(({ free }) => free.toFixed(9))).toEqual(any.map(({ survival }) => survival.toFixed(9)));
        const alone = kaplanMeier(of.map(({ days, end }) => ({ days, event: end === 'a' })));
        for (const { days, share } of beside)
          expect(1 - (stepOn(alone, days)?.survival ?? 1)).toBeGreaterThanOrEqual(share.a - 1e-9);
      }),
    );
  });
});
