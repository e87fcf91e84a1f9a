/** The results of one sample become entries of one date, exactly as they were typed. */
import { kindNamed } from '@twelvemonth/clinical';
import { expect, test } from 'vitest';
import { nothingTyped } from '../src/fields/typed-quantity.ts';
import { type SampleEntered, sampleLines } from '../src/person/record/sample-lines.ts';

const empty: SampleEntered = {
  on: '2026-11-20',
  values: {},
  low: '',
  high: '',
  mineralLimits: {},
  laboratory: '',
  acute: undefined,
  weight: nothingTyped,
};

test('nothing entered, nothing written', () => {
  expect(sampleLines(empty)).toEqual([]);
});

test('a value keeps its text, its sign and its unit; the limits go with the calcium alone', () => {
  const lines = sampleLines({
    ...empty,
    values: {
      creatinine: { comparator: '', value: '79', unit: 'umol/L' },
      'vitamin D': { comparator: '<', value: '20.0', unit: 'nmol/L' },
      'adjusted calcium': { comparator: '', value: '2.20', unit: 'mmol/L' },
    },
    low: '2,20',
    high: '2.60',
    acute: 'no',
  });
  expect(lines.map(({ body }) => body)).toEqual([
    { analyte: 'creatinine', quantity: { comparator: '', value: '79', unit: 'umol/L' }, acuteAdmission: false },
    {
      analyte: 'adjusted calcium',
      quantity: { comparator: '', value: '2.20', unit: 'mmol/L' },
      referenceLow: '2.20',
      referenceHigh: '2.60',
      acuteAdmission: false,
    },
    { analyte: 'vitamin D', quantity: { comparator: '<', value: '20.0', unit: 'nmol/L' }, acuteAdmission: false },
  ]);
  for (const { body } of lines) expect(kindNamed('result').body.safeParse(body).success).toBe(true);
});

test('a mineral test goes with the one limit it is compared with, and with no other', () => {
  const bodies = sampleLines({
    ...empty,
    low: '2.20',
    high: '2.60',
    values: {
      'alkaline phosphatase': { comparator: '', value: '90', unit: 'U/L' },
      phosphate: { comparator: '', value: '1.0', unit: 'mmol/L' },
      magnesium: { comparator: '', value: '0.8', unit: 'mmol/L' },
    },
    mineralLimits: { 'alkaline phosphatase': '130', phosphate: ' 0,80 ' },
  }).map(({ body }) => body);
  expect(bodies).toEqual([
    { analyte: 'alkaline phosphatase', quantity: { comparator: '', value: '90', unit: 'U/L' }, referenceHigh: '130' },
    { analyte: 'phosphate', quantity: { comparator: '', value: '1.0', unit: 'mmol/L' }, referenceLow: '0.80' },
    { analyte: 'magnesium', quantity: { comparator: '', value: '0.8', unit: 'mmol/L' } },
  ]);
  for (const body of bodies) expect(kindNamed('result').body.safeParse(body).success).toBe(true);
});

test('a weight of that day is its own entry, measured', () => {
  const [line] = sampleLines({ ...empty, weight: { comparator: '', value: '56.2', unit: 'kg' } });
  expect(line).toEqual({
    kind: 'weight',
    body: { quantity: { comparator: '', value: '56.2', unit: 'kg' }, method: 'measured' },
    effectiveAt: '2026-11-20',
  });
});
