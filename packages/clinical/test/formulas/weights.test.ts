/**
 * Ideal weight (Devine 1974), adjusted weight (Winter 2012), both from memory; body mass index (WHO). BW rows: clinical fact
 * sheet 2d-ex (computed).
 */
import { describe, expect, test } from 'vitest';
import {
  adjustedWeightKg,
  bodyMassIndex,
  compareRatio,
  idealWeightKg,
  isAtLeastPercentOf,
  ratioOf,
  ratioText,
  scaled,
} from '@twelvemonth/clinical';

const exactly = (text: string) => ratioOf(scaled(text));

const rows = [
  ['BW1', 'female', '160', '58', '52.38', '54.63', '110.7', 22.66],
  ['BW2', 'female', '155', '95', '47.85', '66.71', '198.5', 39.54],
  ['BW3', 'male', '178', '82', '73.18', '76.71', '112.1', 25.88],
  ['BW4', 'female', '152.4', '45', '45.50', '45.30', '98.9', 19.38],
  ['BW5', 'male', '180', '110', '74.99', '89.00', '146.7', 33.95],
] as const;

describe('ideal and adjusted weight', () => {
  test.each(rows)(
    '%s: %s %s cm %s kg: ideal %s, adjusted %s, %s %% of ideal',
    (_row, sex, cm, actual, ideal, adjusted, percent) => {
      const found = idealWeightKg(sex, exactly(cm));
      if (found === undefined) throw new Error('too short');
      expect(ratioText(found, 2)).toBe(ideal);
      expect(ratioText(adjustedWeightKg(exactly(actual), found, scaled('0.4')), 2)).toBe(adjusted);
      expect(isAtLeastPercentOf(exactly(actual), found, scaled((Number(percent) - 0.1).toFixed(1)))).toBe(true);
      expect(isAtLeastPercentOf(exactly(actual), found, scaled((Number(percent) + 0.1).toFixed(1)))).toBe(false);
    },
  );

  // Reference sheet 2.10 (checked in R and Python).
  test('158 cm, 104 kg, a woman: ideal 50.571 kg, adjusted 71.943 kg', () => {
    const ideal = idealWeightKg('female', exactly('158'));
    if (ideal === undefined) throw new Error('too short');
    expect(ratioText(ideal, 3)).toBe('50.571');
    expect(ratioText(adjustedWeightKg(exactly('104'), ideal, scaled('0.4')), 3)).toBe('71.943');
  });

  test('at 60 inches exactly it is 50 kg for a man and 45.5 kg for a woman', () => {
    const man = idealWeightKg('male', exactly('152.4'));
    const woman = idealWeightKg('female', exactly('152.4'));
    expect(man && compareRatio(man, scaled('50'))).toBe(0);
    expect(woman && compareRatio(woman, scaled('45.5'))).toBe(0);
  });

  // BW6 is 148 cm: the equation would give 41.52 kg there, where it was never made for.
  test('BW6: is not worked out below 152.4 cm', () => {
    expect(idealWeightKg('female', exactly('148'))).toBeUndefined();
    expect(idealWeightKg('female', exactly('152.3999'))).toBeUndefined();
    expect(idealWeightKg('male', exactly('152.4'))).toBeDefined();
  });

  test('so many per cent of the ideal weight is met exactly', () => {
    expect(isAtLeastPercentOf(exactly('60'), exactly('50'), scaled('120'))).toBe(true);
    expect(isAtLeastPercentOf(exactly('59.9999'), exactly('50'), scaled('120'))).toBe(false);
  });
});

describe('body mass index', () => {
  test.each([
    ...rows.map(([row, , cm, kg, , , , index]) => [row, cm, kg, index] as const),
    ['BW6', '148', '40', 18.26] as const,
  ])('%s: %s cm, %s kg: %d kg/m2', (_row, cm, kg, index) =>
    expect(bodyMassIndex(Number(cm), Number(kg))).toBeCloseTo(index, 2),
  );
});
