/** The people field and the harm scale: countable, told apart without colour, whole at the width of a phone. */
import { describe, expect, test } from 'vitest';
import { harmScale, peopleField } from '@twelvemonth/charts';
import { textWidth } from '../src/drawing.ts';

const hips = (of: number, has: number, spared: number) => ({
  caption: 'Hip fractures in 3 years with the yearly drip',
  of,
  groups: [
    { look: 'has it' as const, count: has, says: `${has} break a hip either way` },
    { look: 'spared' as const, count: spared, says: `${spared} are spared by the drip` },
    { look: 'does not' as const, count: of - has - spared, says: `${of - has - spared} do not break a hip either way` },
  ],
});
/** The paths in their order: those of the field first, then one mark of the legend each. */
const marks = (svg: string): number[] =>
  [...svg.matchAll(/<path d="([^"]*)"/g)].map(([, d]) => (d ?? '').split('M').length - 1);

describe('the people field', () => {
  test.each([
    [100, 9, 4],
    [1000, 15, 10],
    [100, 0, 0],
  ])('of %i: as many marks as people', (of, has, spared) => {
    const { svg } = peopleField(hips(of, has, spared));
    expect(marks(svg).slice(0, -3)).toEqual([has, spared, of - has - spared].filter((count) => count > 0));
  });
  test.each([240, 320, 400, 1120])('at %i px nothing lies outside, neither marks nor words', (width) => {
    for (const of of [100, 1000]) {
      const { svg } = peopleField(hips(of, 9, 4), { width });
      const [, , right = 0] = /viewBox="0 0 (([\d.]+) [\d.]+)"/.exec(svg) ?? [];
      expect(Number(right)).toBe(width);
      for (const [, x, , , says = ''] of svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"([^>]*)>([^<]*)</g))
        expect(Number(x) + textWidth(says, 14)).toBeLessThanOrEqual(width + 1);
      for (const [, x] of svg.matchAll(/M([\d.]+) /g)) expect(Number(x)).toBeLessThanOrEqual(width);
    }
  });
  test('in grey they differ: filled, ring, diamond, dot', () => {
    const { svg } = peopleField({
      caption: 'x',
      of: 100,
      groups: [
        { look: 'has it', count: 6, says: 'a' },
        { look: 'because of it', count: 26, says: 'b' },
        { look: 'spared', count: 8, says: 'c' },
        { look: 'does not', count: 60, says: 'd' },
      ],
    });
    const forms = [...svg.replaceAll(/#[0-9a-f]{6}/g, 'ink').matchAll(/<path d="M[\d.]+ [\d.]+([^z]*)z[^"]*"([^>]*)>/g)]
      .slice(0, 4)
      .map(([, form, rest]) => `${form}${rest}`);
    expect(new Set(forms).size).toBe(4);
  });
  test('says the same as a sentence and a table', () => {
    const { sentence, table } = peopleField(hips(100, 9, 4));
    expect(sentence).toBe(
      'Hip fractures in 3 years with the yearly drip: 9 break a hip either way; 4 are spared by the drip; 87 do not break a hip either way.',
    );
    expect(table.rows).toEqual([
      ['9', '9 break a hip either way'],
      ['4', '4 are spared by the drip'],
      ['87', '87 do not break a hip either way'],
    ]);
  });
  test('people who do not add up are a mistake of ours, not a picture', () => {
    const wrong = { ...hips(100, 9, 4), of: 1000 };
    expect(() => peopleField(wrong)).toThrow(RangeError);
  });
  test('the same data, the same bytes; a thousand people stay small', () => {
    expect(peopleField(hips(1000, 15, 10)).svg).toBe(peopleField(hips(1000, 15, 10)).svg);
    expect(peopleField(hips(1000, 15, 10)).svg.length).toBeLessThan(40_000);
  });
});

describe('the harm scale', () => {
  const data = {
    caption: 'Rare harms',
    of: 10_000,
    rows: [
      { says: 'a heart problem', point: 129, range: { from: 98, to: 170 }, without: 52, common: 'common' },
      { says: 'jaw bone that does not heal', range: { from: 1, to: 10 }, common: 'uncommon' },
      { says: 'a red eye', point: 110, without: 0, common: 'common' },
    ],
  };
  test('each step to the right is ten times more', () => {
    const at = [...harmScale(data).svg.matchAll(/<path d="M(\d+) 4V/g)]
      .map(([, x]) => Number(x))
      .toSorted((a, b) => a - b);
    const gaps = at.slice(1).map((x, index) => x - (at[index] ?? 0));
    expect(at).toHaveLength(5);
    for (const gap of gaps) expect(Math.abs(gap - (gaps[0] ?? 0))).toBeLessThanOrEqual(1);
  });
  test.each([240, 620])('at %i px no words run over the edge', (width) => {
    for (const [, x, , rest = '', says = ''] of harmScale(data, { width }).svg.matchAll(
      /<text x="([\d.]+)" y="([\d.]+)"([^>]*)>([^<]*)</g,
    )) {
      const room = textWidth(says, Number(/font-size="(\d+)"/.exec(rest)?.[1]));
      const half = rest.includes('middle') ? room / 2 : room;
      expect(Number(x) + half).toBeLessThanOrEqual(width + 1);
    }
  });
  test('the table has the range, the number without the treatment, and says where it is not known', () => {
    expect(harmScale(data).table.rows).toEqual([
      ['a heart problem', '129 (98 to 170)', '52', 'common'],
      ['jaw bone that does not heal', '1 to 10', 'not known', 'uncommon'],
      ['a red eye', '110', '0', 'common'],
    ]);
    expect(harmScale(data).sentence).toContain('a heart problem: 129 (98 to 170); without the treatment 52 (common)');
  });
});
