// Held against reference libraries that share no code with the reader.
import { type Measure, plausibility, plausibleBands } from '@twelvemonth/clinical';
import fc from 'fast-check';
import ucum from '@lhncbc/ucum-lhc';
import reference from 'nhs-number-validator';
import { describe, expect, it } from 'vitest';
import { followsCheckDigit } from '../src/register/check-digit.ts';
import { lettersApart } from '../src/register/similar.ts';
import { problemsOf, runOf } from './bring-in.ts';

describe('the check digit of ten-figure numbers (nhs-number-validator)', () => {
  it('agrees with the reference on every number but ten equal figures, which it lets pass', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^\d{10}$/), (number) => {
        fc.pre(!/^(\d)\1{9}$/.test(number));
        expect(followsCheckDigit(number)).toBe(reference.validate(number));
      }),
      { seed: 20261125, numRuns: 5000 },
    );
  });

  it('is remarked on only where the rest of the file follows it', () => {
    const good = Array.from({ length: 1000 }, (_, index) => `999000${String(index).padStart(4, '0')}`)
      .filter((number) => reference.validate(number))
      .slice(0, 25);
    expect(good).toHaveLength(25);
    const rows = (numbers: readonly string[]) =>
      `NHS No,Surname,Forename,DOB,Sex\n${numbers.map((number, index) => `${number},${'abcdefghijklmnopqrstuvwxyz'[index]}${'qwertyuiop'.slice(0, 3 + (index % 7))},Ada,13/06/19${20 + index},F`).join('\n')}\n`;
    expect(problemsOf(runOf(rows([...good, '9990000009'])), 27)).toEqual(['number-check-digit']);
    expect(problemsOf(runOf(rows(['9990000009', ...good.slice(0, 3)])), 2)).toEqual([]);
  });
});

/** Molecular weights as in the table of standards used across this project: creatinine 113.12, calcium 40.078, 25-hydroxyvitamin D 400.64. */
const converted: readonly (readonly [Measure, string, string, string, string, number | undefined])[] = [
  ['creatinine', 'mg/dL', 'mg/dL', 'umol/L', 'umol/L', 113.12],
  ['adjusted calcium', 'mg/dL', 'mg/dL', 'mmol/L', 'mmol/L', 40.078],
  ['vitamin D', 'ng/mL', 'ng/mL', 'nmol/L', 'nmol/L', 400.64],
  ['albumin', 'g/dL', 'g/dL', 'g/L', 'g/L', undefined],
  ['weight', 'lb', '[lb_av]', 'kg', 'kg', undefined],
  ['height', 'in', '[in_i]', 'cm', 'cm', undefined],
];

describe('plausible values (UCUM)', () => {
  const utils = ucum.UcumLhcUtils.getInstance();
  it.each(converted)(
    '%s: the middle of what is usual in %s is usual in the other unit too, once converted',
    (measure, unit, code, other, otherCode, molecularWeight) => {
      const [low, high] = plausibleBands[measure]?.[unit]?.usual ?? [0, 0];
      for (const value of [low + (high - low) * 0.1, (low + high) / 2, low + (high - low) * 0.9]) {
        const { toVal } = utils.convertUnitTo(
          code,
          value,
          otherCode,
          molecularWeight === undefined ? {} : { molecularWeight },
        );
        expect(plausibility(measure, other, toVal ?? Number.NaN).sits).toBe('usual');
      }
    },
  );

  it.each(['creatinine', 'adjusted calcium', 'calcium', 'albumin', 'height'] as const)(
    '%s: nothing possible in one unit is possible in the other, so a slip of unit is always caught',
    (measure) => {
      const [a, b] = Object.values(plausibleBands[measure] ?? {});
      if (a === undefined || b === undefined) throw new Error('two units expected');
      expect(a.possible[1] < b.possible[0] || b.possible[1] < a.possible[0]).toBe(true);
    },
  );
});

describe('how far apart two names are', () => {
  // Textbook examples of edit distance; the last two are one swap of neighbours (optimal string alignment).
  it.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['lindqvist', 'lindquist', 1],
    ['ca', 'ac', 1],
    ['brian', 'brain', 1],
  ])('%s and %s: %i', (a, b, apart) => {
    expect([lettersApart(a, b, 9), lettersApart(b, a, 9)]).toEqual([apart, apart]);
  });
});
