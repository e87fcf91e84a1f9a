/** The picture of who came to which end: the same numbers in the drawing, the sentence and the table. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { textWidth } from '../src/drawing.ts';
import { type IncidenceData, incidenceCurve } from '@twelvemonth/charts';

const data: IncidenceData = {
  caption: 'Coming for the second dose',
  people: 40,
  until: 730,
  rows: [
    { days: 365, says: '1 year', atRisk: 30 },
    { days: 730, says: '2 years', atRisk: 3 },
  ],
  lines: [
    {
      says: 'came',
      from: 0,
      points: [
        { days: 380, share: 0.5 },
        { days: 500, share: 0.8, limits: { lower: 0.681, upper: 0.94 } },
      ],
    },
    { says: 'died', from: 0, points: [{ days: 200, share: 0.05 }] },
  ],
};

test('the share holds from its day on, and is told of 100 people', () => {
  const { sentence, table } = incidenceCurve(data);
  expect(sentence).toBe('Coming for the second dose, 40 people: of 100, by 2 years, 80 came, 5 died.');
  expect(table.head).toEqual(['by', 'came', 'died', 'people still under way']);
  expect(table.rows).toEqual([
    ['1 year', '0.0', '5.0', '30'],
    ['2 years', '80.0 (68.1 to 94.0)', '5.0', '3'],
  ]);
});
test('lines are told apart by dashes and names, not by colour alone', () => {
  const { svg } = incidenceCurve(data);
  const dashes = [...svg.matchAll(/<path[^>]*fill="none"[^>]*>/g)].map(
    ([path]) => /stroke-dasharray="[^"]*"/.exec(path)?.[0],
  );
  expect(new Set(dashes).size).toBe(data.lines.length);
  expect(svg).toMatch(/>80 came</);
  expect(svg).toMatch(/>5 died</);
});
test('nobody yet is said', () => {
  expect(incidenceCurve({ ...data, people: 0 }).sentence).toBe('Coming for the second dose: nobody yet.');
});
test('whatever is drawn: within its width, names apart, the same bytes twice', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.integer({ min: 240, max: 1120 }),
      fc.array(share, { minLength: 1, maxLength: 4 }),
      (width, shares) => {
        const lines = shares.map((one, index) => ({
          says: `end ${index}`,
          from: 0 as const,
          points: [{ days: 100, share: one }],
        }));
        const { svg } = incidenceCurve({ ...data, lines }, { width });
        expect(svg).toBe(incidenceCurve({ ...data, lines }, { width }).svg);
        const names = [...svg.matchAll(/y="([\d.]+)"[^>]*font-weight="650"/g)]
          .map(([, y]) => Number(y))
          .toSorted((a, b) => a - b);
        expect(names).toHaveLength(lines.length);
        const gaps = names.slice(1).map((y, index) => y - (names[index] ?? 0));
        expect(gaps.filter((gap) => gap <= 16)).toEqual([]);
        for (const [, x, says] of svg.matchAll(/<text x="([\d.]+)"[^>]*font-weight="650"[^>]*>([^<]*)</g))
          expect(Number(x) + textWidth(says ?? '', 13)).toBeLessThanOrEqual(width);
        for (const [, x] of svg.matchAll(/[HM]([\d.]+)/g)) expect(Number(x)).toBeLessThanOrEqual(width);
      },
    ),
  );
});
