import { describe, expect, test } from 'vitest';
import {
  type ProtocolSheet,
  carryOnAsks,
  demoSheet,
  inUsUnits,
  emptyNumbers,
  numberKeyNames,
  numberKeys,
  protocolFrom,
  protocolSchema,
  requirementIds,
  starterProtocols,
  starterSheet,
  starterUk,
  starterUs,
} from '@twelvemonth/clinical';

const names: readonly (readonly [string, ProtocolSheet])[] = [
  ['UK-like', starterUk],
  ['EU-like', starterSheet],
  ['US-like', starterUs],
];
const told = ({ numbers }: ProtocolSheet, key: (typeof numberKeyNames)[number]): string => {
  const { value, suggestion } = numbers[key];
  return value ?? `empty, suggested ${suggestion ?? '-'}`;
};

describe.each(names)('the %s starter', (_, sheet) => {
  test('is a sheet for real people with every requirement, regimens and a source beside each number', () => {
    expect(protocolSchema.parse(sheet)).toEqual(sheet);
    expect(sheet.teachingOnly).toBe(false);
    expect([...sheet.gravity].toSorted()).toEqual([...requirementIds].toSorted());
    for (const { source } of sheet.regimens) expect(source.length).toBeGreaterThan(10);
    for (const key of numberKeyNames) expect([key, sheet.numbers[key].source.length > 5]).toEqual([key, true]);
  });

  test('cannot be put into force as it ships: somebody decides what its sources leave open', () => {
    expect(emptyNumbers(sheet).length).toBeGreaterThan(10);
    expect('empty' in protocolFrom(sheet)).toBe(true);
  });

  test('suggests something for every number it leaves empty, and a suggestion is no value', () => {
    for (const { key, suggestion } of emptyNumbers(sheet)) expect([key, suggestion]).toEqual([key, expect.anything()]);
  });
});

describe('where guidelines disagree the starters do', () => {
  test('their names are three', () => {
    expect(new Set(starterProtocols.map(({ version }) => version)).size).toBe(3);
    expect(starterProtocols.map(({ version }) => version).toSorted()).toEqual(
      names.map(([, { version }]) => version).toSorted(),
    );
  });

  // Contraindicated below 35 mL/min in both product texts; no less than 15 minutes in both (clinical.md Z3, Z7, read).
  test('they agree on what both product texts say', () => {
    for (const [, { numbers }] of names) {
      expect(numbers.clearanceFloor).toMatchObject({ value: '35', status: 'read' });
      expect(numbers.runningMinutesLeast).toMatchObject({ value: '15', status: 'read' });
    }
  });

  // National Osteoporosis Society 2018: above 50 nmol/L sufficient; American Geriatrics Society 2014: 30 ng/mL (clinical.md D1, D14).
  test('vitamin D: the UK says 50 nmol/L; the US leaves it open between 20 and 30 ng/mL and the stricter is suggested', () => {
    expect(starterUk.numbers.vitaminDFloor.value).toBe('50');
    expect(starterUs.numbers.vitaminDFloorNgPerMl).toMatchObject({ value: null, suggestion: '30' });
    expect(starterSheet.numbers.vitaminDFloor).toMatchObject({ value: null, suggestion: '50' });
  });

  // 0.3 mg/dL x 88.4 = 26.52 umol/L; 0.8 mg/dL per g/dL / 4.008 / 10 rounds to 0.02 mmol/L per g/L (clinical.md 2e, 2f).
  test('the US numbers are those of US units', () => {
    expect(starterUs.numbers.creatinineRise.suggestion).toBe((0.3 * 88.4).toFixed(2));
    expect(starterUs.numbers.calciumAdjustSlope.value).toBe((0.8 / 4.008 / 10).toFixed(2));
  });

  test('nothing the US starter says rests on a text of the EU or the UK; a suggestion may name a paper from there, never a product text', () => {
    const europes = /\((?:EU|EU\/UK|UK)\)/;
    const guidance = /National Osteoporosis Society|Manchester|NOGG|Harmony/;
    for (const key of numberKeyNames) {
      const { value, source } = starterUs.numbers[key];
      expect([key, europes.test(source), value !== null && guidance.test(source)]).toEqual([key, false, false]);
    }
    for (const { id, source, cautions } of starterUs.regimens)
      expect([id, europes.test([source, ...cautions].join(' ')), guidance.test(source)]).toEqual([id, false, false]);
  });

  // EU product text 4.2: 50,000 to 125,000 IU before the first dose after a hip fracture (clinical.md Z18, read).
  test('loading after a hip repair is asked for by the European text, not by the US one', () => {
    expect(names.map(([, { hipRepairNeedsLoading }]) => hipRepairNeedsLoading)).toEqual([true, true, false]);
  });

  // US product text, highlights: routine oral examination before treatment (clinical.md Z33, J1, read); elsewhere where there is a risk.
  test('a dental check is demanded by the US text, asked about elsewhere', () => {
    expect(names.map(([, { dentalCheck }]) => dentalCheck)).toEqual(['asked', 'asked', 'demanded']);
  });

  test('a clinician may take every suggestion as a decision: then the sheet decides', () => {
    for (const [, sheet] of names) {
      const numbers = { ...sheet.numbers };
      for (const { key, suggestion } of emptyNumbers(sheet))
        numbers[key] = { ...numbers[key], value: suggestion ?? null, status: 'local decision' };
      expect('protocol' in protocolFrom({ ...sheet, numbers })).toBe(true);
    }
    expect('protocol' in protocolFrom(demoSheet('x'))).toBe(true);
  });
});

/** The page is made from the sheets: after a change run this file with -u and read what changed. */
test('docs/guide/starters.md says how the starters differ', async () => {
  const differs = numberKeyNames.filter((key) => new Set(names.map(([, sheet]) => told(sheet, key))).size > 1);
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const lines = [
    '# The three starters',
    '',
    'A service begins its protocol from one of three sheets. None is ever in force by itself: numbers their sources leave open are empty, with a suggestion beside them, and a clinician and a pharmacist sign what the unit has decided. A starter is no guideline. Read the sources; local policy and a licensed prescriber decide.',
    '',
    'Whoever sets the service up chooses the one that is offered first. Every number, its source and how well that was read stand on the *Protocol* screen; a version may begin from any starter. What is not in the table is the same in all three.',
    '',
    row(['number', 'unit', ...names.map(([name]) => name)]),
    row(['---', '---', ...names.map(() => '---')]),
    ...differs.map((key) =>
      row([numberKeys[key].means, numberKeys[key].unit, ...names.map(([, sheet]) => told(sheet, key))]),
    ),
    '',
    row(['policy', ...names.map(([name]) => name)]),
    row(['---', ...names.map(() => '---')]),
    row([
      'loading after a hip repair',
      ...names.map(([, sheet]) => (sheet.hipRepairNeedsLoading ? 'asked for' : 'not asked for')),
    ]),
    row(['a dental check before treatment', ...names.map(([, sheet]) => sheet.dentalCheck)]),
    row([
      'what speaks for carrying on',
      ...names.map(([, sheet]) =>
        sheet.carryOn
          .map((one) => carryOnAsks(one, (key) => sheet.numbers[key].value ?? sheet.numbers[key].suggestion ?? ''))
          .join('; '),
      ),
    ]),
    row(['regimens', ...names.map(([, { regimens }]) => regimens.map(({ title }) => title).join('; '))]),
    '',
    'Where guidelines differ and the product does not, it keeps the stricter reading for everyone: both printed forms of the clearance must pass, an eGFR never passes anyone, hypersensitivity to any bisphosphonate counts, pregnancy and breast-feeding are never passed over.',
    '',
  ];
  await expect(lines.join('\n')).toMatchFileSnapshot('../../../docs/guide/starters.md');
});

// 1 mg/dL = 88.4 umol/L; 1 mmol/L = 4.008 mg/dL; 1 ng/mL = 2.496 nmol/L (clinical.md 2f); 38 degrees Celsius is 100.4 Fahrenheit.
test('a number is shown in US units beside its own, and only where they differ', () => {
  expect(inUsUnits('creatinineRise', '26.52')).toBe('0.3 mg/dL');
  expect(inUsUnits('calciumLow', '2.20')).toBe('8.82 mg/dL');
  expect(inUsUnits('vitaminDFloor', '75')).toBe('30.05 ng/mL');
  expect(inUsUnits('calciumAdjustSlope', '0.02')).toBe('0.8 mg/dL per g/dL');
  expect(inUsUnits('putOffTemperature', '38')).toBe('100.4 degrees Fahrenheit');
  expect(inUsUnits('clearanceFloor', '35')).toBeUndefined();
  expect(inUsUnits('creatinineRise', 'about 26')).toBeUndefined();
});
