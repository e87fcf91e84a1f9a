/**
 * Units. Worked values: clinical fact sheet 2f-ex (computed), reference sheet 1.3 and 2.10. The independent check of every
 * conversion is the UCUM library of the US National Library of Medicine (@lhncbc/ucum-lhc), by molecular weight: creatinine
 * 113.12, calcium 40.078, 25-hydroxyvitamin D3 400.64 g/mol (from memory). The trade's factors (88.4, 4.008, 2.496) are rounded
 * from these, so those three agree to a part in ten thousand; kg, cm and g/L agree exactly.
 */
import ucumLibrary from '@lhncbc/ucum-lhc';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Quantity,
  type Ratio,
  albuminGPerL,
  calciumMmolPerL,
  compareRatio,
  compareRatios,
  creatinineMgPerDl,
  creatinineUmolPerL,
  heightCm,
  quantity,
  ratio,
  ratioAsNumber,
  ratioOf,
  ratioText,
  scaled,
  vitaminDInternationalUnits,
  vitaminDNmolPerL,
  weightKg,
} from '@twelvemonth/clinical';

const ucum = ucumLibrary.UcumLhcUtils.getInstance();
function byUcum(from: string, value: number, to: string, molecularWeight?: number): number {
  const { toVal } = ucum.convertUnitTo(from, value, to, molecularWeight === undefined ? {} : { molecularWeight });
  if (toVal === null) throw new Error(`UCUM cannot convert ${from} to ${to}`);
  return toVal;
}
const known = (value: Ratio | undefined): Ratio => {
  if (value === undefined) throw new Error('the unit was not accepted');
  return value;
};

const ROUNDED_FACTOR = 1e-4;
const EXACT = 1e-12;
type Convert = (q: Quantity) => Ratio | undefined;
/** Every conversion there is: what it reads, in our words and in UCUM's, what it gives, and how far the two may differ. */
const conversions: readonly {
  what: string;
  convert: Convert;
  from: string;
  ucum: string;
  to: string;
  gPerMol?: number;
}[] = [
  { what: 'creatinine', convert: creatinineUmolPerL, from: 'umol/L', ucum: 'umol/L', to: 'umol/L' },
  { what: 'creatinine', convert: creatinineUmolPerL, from: 'mg/dL', ucum: 'mg/dL', to: 'umol/L', gPerMol: 113.12 },
  { what: 'calcium', convert: calciumMmolPerL, from: 'mmol/L', ucum: 'mmol/L', to: 'mmol/L' },
  { what: 'calcium', convert: calciumMmolPerL, from: 'mg/dL', ucum: 'mg/dL', to: 'mmol/L', gPerMol: 40.078 },
  { what: 'albumin', convert: albuminGPerL, from: 'g/L', ucum: 'g/L', to: 'g/L' },
  { what: 'albumin', convert: albuminGPerL, from: 'g/dL', ucum: 'g/dL', to: 'g/L' },
  { what: 'vitamin D', convert: vitaminDNmolPerL, from: 'nmol/L', ucum: 'nmol/L', to: 'nmol/L' },
  { what: 'vitamin D', convert: vitaminDNmolPerL, from: 'ng/mL', ucum: 'ng/mL', to: 'nmol/L', gPerMol: 400.64 },
  { what: 'weight', convert: weightKg, from: 'kg', ucum: 'kg', to: 'kg' },
  { what: 'weight', convert: weightKg, from: 'lb', ucum: '[lb_av]', to: 'kg' },
  { what: 'height', convert: heightCm, from: 'cm', ucum: 'cm', to: 'cm' },
  { what: 'height', convert: heightCm, from: 'in', ucum: '[in_i]', to: 'cm' },
];

describe('every conversion against UCUM', () => {
  test.each(conversions)('$what from $from to $to', ({ convert, from, ucum: ucumFrom, to, gPerMol }) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 600_000 }), (n) => {
        const ours = ratioAsNumber(known(convert(quantity((n / 1000).toFixed(3), from))));
        const theirs = byUcum(ucumFrom, n / 1000, to, gPerMol);
        expect(Math.abs(ours / theirs - 1)).toBeLessThan(gPerMol === undefined ? EXACT : ROUNDED_FACTOR);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
  test('creatinine back again, from umol/L to mg/dL', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), (n) => {
        const ours = ratioAsNumber(creatinineMgPerDl(ratio(BigInt(n), 1n)));
        expect(Math.abs(ours / byUcum('umol/L', n, 'mg/dL', 113.12) - 1)).toBeLessThan(ROUNDED_FACTOR);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
  // Reference sheet 1.3: what the library gave when it was tried.
  test('the library is the one that was tried: its own figures', () => {
    expect(byUcum('mg/dL', 1, 'umol/L', 113.12)).toBeCloseTo(88.401697, 6);
    expect(byUcum('mg/dL', 10, 'mmol/L', 40.078)).toBeCloseTo(2.495134, 6);
    expect(byUcum('ng/mL', 20, 'nmol/L', 400.64)).toBeCloseTo(49.920128, 6);
    expect(byUcum('[lb_av]', 154, 'kg')).toBeCloseTo(69.853225, 6);
    expect(byUcum('[in_i]', 62, 'cm')).toBeCloseTo(157.48, 6);
  });
  // Reference sheet 0.6: annotations are ignored, so the library itself cannot tell an indexed rate from a clearance.
  test('UCUM converts mL/min to mL/min/1.73 m2 by 1: keeping eGFR and clearance apart is ours to do', () => {
    expect(byUcum('mL/min', 40, 'mL/min/{1.73_m2}')).toBe(40);
  });
});

describe('worked values', () => {
  test.each([
    ['0.6', '53.04'],
    ['0.8', '70.72'],
    ['1.0', '88.40'],
    ['1.2', '106.08'],
    ['1.5', '132.60'],
  ])('creatinine %s mg/dL is %s umol/L', (mg, umol) =>
    expect(ratioText(known(creatinineUmolPerL(quantity(mg, 'mg/dL'))), 2)).toBe(umol),
  );
  test.each([
    ['60', '0.6787'],
    ['92', '1.0407'],
    ['110', '1.2443'],
    ['150', '1.6968'],
  ])('creatinine %s umol/L is %s mg/dL', (umol, mg) =>
    expect(ratioText(creatinineMgPerDl(ratioOf(scaled(umol))), 4)).toBe(mg),
  );
  test.each([
    ['10', '24.96'],
    ['12', '29.95'],
    ['20', '49.92'],
    ['30', '74.88'],
    // The same table turned round: 25, 30, 50, 75, 125 nmol/L divided by 2.496.
    ['10.016', '25.00'],
    ['12.019', '30.00'],
    ['20.032', '50.00'],
    ['30.048', '75.00'],
    ['50.080', '125.00'],
  ])('vitamin D %s ng/mL is %s nmol/L', (ng, nmol) =>
    expect(ratioText(known(vitaminDNmolPerL(quantity(ng, 'ng/mL'))), 2)).toBe(nmol),
  );
  test('the trap: 20 ng/mL is 49.92 nmol/L, so it is compared as 20 and not as 50', () => {
    expect(compareRatio(known(vitaminDNmolPerL(quantity('20', 'ng/mL'))), scaled('50'))).toBeLessThan(0);
  });
  // NOS 2018 (read): 1 ug is 40 IU. UCUM calls the unit arbitrary and converts it to nothing.
  test('20 ug of vitamin D are 800 IU', () => {
    expect(compareRatio(vitaminDInternationalUnits(ratioOf(scaled('20'))), scaled('800'))).toBe(0);
    expect(ucum.convertUnitTo('ug', 20, '[iU]', {}).toVal).toBeNull();
  });
  test('a pound is 0.45359237 kg and an inch 2.54 cm by definition (1959)', () => {
    expect(compareRatios(known(weightKg(quantity('1', 'lb'))), ratio(45_359_237n, 100_000_000n))).toBe(0);
    expect(compareRatios(known(heightCm(quantity('1', 'in'))), ratio(254n, 100n))).toBe(0);
  });
});

test('a unit that does not belong is not guessed', () => {
  expect(creatinineUmolPerL(quantity('88', 'mmol/L'))).toBeUndefined();
  expect(calciumMmolPerL(quantity('2.3', 'g/L'))).toBeUndefined();
  expect(albuminGPerL(quantity('40', 'mmol/L'))).toBeUndefined();
  expect(vitaminDNmolPerL(quantity('50', 'mg/dL'))).toBeUndefined();
  expect(weightKg(quantity('9', 'stone'))).toBeUndefined();
  expect(heightCm(quantity('1.6', 'm'))).toBeUndefined();
});
