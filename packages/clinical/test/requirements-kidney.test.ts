/** Kidney function at and around every threshold (docs/readiness.md R1, R2). Asked on 25 November 2026 under the teaching protocol. */
import { describe, expect, test } from 'vitest';
import { day } from '@twelvemonth/clinical';
import { creatinine, judged, man70, person, verdict, woman70 } from './kidney-person.ts';
import { type Line, at, born, weighed } from './person.ts';

describe('35 by both printed forms', () => {
  // clinical.md 2a-ex: CG7 is 35 exactly by the umol/L form.
  test('exactly 35 is ready, near the limit', () => {
    expect(judged(person('50', '104'))).toMatchObject({ verdict: 'ready', nearLimit: true });
  });
  test.each([
    ['49.9', 'not ready'],
    ['49.8571', 'not ready'],
    ['50.1', 'ready'],
  ])('%s kg with creatinine 104: %s', (kg, expected) => {
    expect(verdict(person(kg, '104'))).toBe(expected);
  });
  test('one ten-thousandth of a kilogram below 35 is not ready, and says 34.99993, not 35.00', () => {
    const below = judged(person('49.9999', '104'));
    expect(below.verdict).toBe('not ready');
    expect(below.cause).toContain('34.9999');
  });
  // CG9 and CG10: the forms disagree; either below is not ready.
  test('a woman whose mg/dL form passes and umol/L form does not', () => {
    expect(verdict(person('46', '96'))).toBe('not ready');
  });
  test('a man whose umol/L form passes and mg/dL form does not', () => {
    expect(verdict(person('48', '118', man70))).toBe('not ready');
  });
  test('near the limit below 40 by either form, not from 40 by both', () => {
    // 70 x kg x 1.04 / 91 is 40 at 50 kg; the mg/dL form lies above it.
    expect(judged(person('50', '91'))).toMatchObject({ verdict: 'ready', nearLimit: false });
    expect(judged(person('49.9', '91'))).toMatchObject({ verdict: 'ready', nearLimit: true });
  });
  test('a creatinine in mg/dL is judged by both forms too', () => {
    // 70 x 50 x 0.85 / (72 x 1.18) = 35.02; 70 x 50 x 1.04 / (1.18 x 88.4) = 34.89
    expect(verdict([woman70, weighed('2026-11-20', '50'), ...creatinine('1.18 mg/dL')])).toBe('not ready');
    expect(verdict([woman70, weighed('2026-11-20', '50'), ...creatinine('1.17 mg/dL')])).toBe('ready');
  });
  test('a weight in pounds is converted exactly', () => {
    // 110.231 lb = 49.99994... kg; 110.232 lb = 50.00039... kg
    const pounds = (value: string) => [
      woman70,
      at('2026-11-20', 'weight', { quantity: { comparator: '', value, unit: 'lb' }, method: 'measured' }),
      ...creatinine('104 umol/L'),
    ];
    expect(verdict(pounds('110.231'))).toBe('not ready');
    expect(verdict(pounds('110.232'))).toBe('ready');
  });
});

/**
 * Hazards 8, 9 and 12 of the trade: a number of the other unit, or with its point out of place, must never make a clearance.
 * What a body can have: 0.2 to 24 mg/dL, 25 to 300 kg (common practice, no source); 88.4 umol/L for 1 mg/dL.
 */
describe('a number no body can have decides nothing, whoever recorded it as typed', () => {
  const withCreatinine = (value: string) => [woman70, weighed('2026-11-20', '60'), ...creatinine(value)];
  const withWeight = (kg: string) => [woman70, weighed('2026-11-20', kg), ...creatinine('80 umol/L')];
  // 0.2 mg/dL is 17.68 umol/L; 24 mg/dL is 2121.6 umol/L, a clearance of 1.
  test.each([
    ['0.9 umol/L', 'cannot say'],
    ['17.67 umol/L', 'cannot say'],
    ['17.68 umol/L', 'ready'],
    ['0.19 mg/dL', 'cannot say'],
    ['0.2 mg/dL', 'ready'],
    ['2121.6 umol/L', 'not ready'],
    ['2121.7 umol/L', 'cannot say'],
    ['79 mg/dL', 'cannot say'],
  ])('creatinine %s: %s', (value, is) => expect(verdict(withCreatinine(value))).toBe(is));
  test.each([
    ['24.9', 'cannot say'],
    ['25', 'not ready'],
    ['300', 'ready'],
    ['300.1', 'cannot say'],
    ['562', 'cannot say'],
  ])('%s kg: %s', (kg, is) => expect(verdict(withWeight(kg))).toBe(is));
  test('it asks for the unit in which the number would be usual', () => {
    expect(judged(withCreatinine('0.9 umol/L')).working().says).toBe(
      'Reported as 0.9 umol/L: not a plain number in umol/L or mg/dL that a body can have. Is it 0.9 mg/dL?',
    );
  });
});

describe('age of the day', () => {
  // Born 15 Jan 1942, 48.5 kg, 80 umol/L: worked case 5.
  const lines = [born('1942-01-15'), weighed('2026-11-20', '48.5'), ...creatinine('80 umol/L')];
  test('the day before, the birthday, the day after', () => {
    expect(['2027-01-14', '2027-01-15'].map((on) => verdict(lines, day(on)))).toEqual(['ready', 'not ready']);
  });
  test('a birthday of 29 February falls on 1 March', () => {
    const leap = [born('1944-02-29'), weighed('2027-02-01', '48.5'), ...creatinine('82 umol/L', '2027-02-01')];
    // 58 x 48.5 x 1.04 / 82 = 35.68; 57 x 48.5 x 1.04 / 82 = 35.06; 56: 34.45
    const at82and83 = ['2027-02-28', '2027-03-01'].map(
      (on) =>
        judged(leap, day(on), day('2027-02-10'))
          .working()
          .inputs.find(({ label }) => label === 'born')?.text,
    );
    expect(at82and83).toEqual(['29 Feb 1944, so 82 years', '29 Feb 1944, so 83 years']);
  });
});

describe('what is missing cannot be said', () => {
  const whole = person('60', '70');
  test.each([
    ['no creatinine', [woman70, weighed('2026-11-20', '60')], 'creatinine never measured'],
    ['no weight', [woman70, ...creatinine('70 umol/L')], 'weight never recorded'],
    [
      'an estimated weight',
      [woman70, weighed('2026-11-20', '60', 'estimated'), ...creatinine('70 umol/L')],
      'weight of 20 Nov 2026 only estimated',
    ],
    [
      'an unsigned creatinine',
      [woman70, weighed('2026-11-20', '60'), ...creatinine('70 umol/L', '2026-11-20', null)],
      'bloods of 20 Nov 2026 not signed',
    ],
    [
      '"<" on creatinine',
      [woman70, weighed('2026-11-20', '60'), ...creatinine('<70 umol/L')],
      'creatinine cannot be used as reported',
    ],
    [
      '">" on creatinine',
      [woman70, weighed('2026-11-20', '60'), ...creatinine('>70 umol/L')],
      'creatinine cannot be used as reported',
    ],
    [
      'creatinine in mmol/L',
      [woman70, weighed('2026-11-20', '60'), ...creatinine('0.07 mmol/L')],
      'creatinine cannot be used as reported',
    ],
    [
      'a creatinine of nought',
      [woman70, weighed('2026-11-20', '60'), ...creatinine('0 umol/L')],
      'creatinine cannot be used as reported',
    ],
    [
      'a weight of nought',
      [woman70, weighed('2026-11-20', '0'), ...creatinine('70 umol/L')],
      'weight cannot be used as recorded',
    ],
    [
      'only the year of birth',
      [born('1956'), weighed('2026-11-20', '60'), ...creatinine('70 umol/L')],
      'age not known, so clearance',
    ],
    [
      'a birth date that lies ahead',
      [born('2027-01-01'), weighed('2026-11-20', '60'), ...creatinine('70 umol/L')],
      'age not known, so clearance',
    ],
  ] as const)('%s', (_, lines, cause) => {
    expect(judged(lines)).toMatchObject({ verdict: 'cannot say', cause });
  });
  test('no sex recorded', () => {
    const unknown = at('2020-01-01', 'identity', {
      family: 'A',
      given: 'B',
      born: '1956-11-20',
      number: '999 204 7713',
    });
    expect(judged([unknown, ...whole.slice(1)])).toMatchObject({
      verdict: 'cannot say',
      cause: 'sex not recorded, so clearance',
    });
  });
  test('with everything there it is ready', () => {
    expect(verdict(whole)).toBe('ready');
  });
  test('the newest decides, also where only an older one is signed', () => {
    expect(judged([...whole, ...creatinine('71 umol/L', '2026-11-22', null)])).toMatchObject({
      verdict: 'cannot say',
      cause: 'bloods of 22 Nov 2026 not signed',
    });
  });
  test('a signature on the first value does not cover its correction', () => {
    const lines: Line[] = [
      woman70,
      weighed('2026-11-20', '60'),
      {
        on: '2026-11-20',
        kind: 'result',
        id: 'first',
        body: { analyte: 'creatinine', quantity: { comparator: '', value: '170', unit: 'umol/L' } },
      },
      at('2026-11-20', 'results-signed', { results: ['first'] }),
    ];
    const amended: Line = {
      on: '2026-11-20',
      kind: 'result',
      id: 'second',
      amends: 'first',
      body: { analyte: 'creatinine', quantity: { comparator: '', value: '70', unit: 'umol/L' } },
    };
    expect(verdict(lines)).toBe('not ready');
    expect(verdict([...lines, amended])).toBe('cannot say');
  });
});

describe('ideal and adjusted weight beside the actual one', () => {
  // clinical.md 2a-ex2: F 79, 155 cm, 95 kg, creatinine 115: actual 52.41, adjusted 36.80, ideal 26.40 mL/min.
  const heavy = (cm: string, which: 'peak adult' | 'measured now' = 'peak adult') => [
    born('1947-06-01'),
    at('2026-11-20', 'weight', { quantity: { comparator: '', value: '95', unit: 'kg' }, method: 'measured' }, 'w'),
    at('2026-11-20', 'height', { quantity: { comparator: '', value: cm, unit: 'cm' }, which }),
    ...creatinine('115 umol/L'),
  ];
  test('the actual weight passes, the ideal one does not: cannot say', () => {
    expect(judged(heavy('155'))).toMatchObject({ verdict: 'cannot say', cause: 'ideal weight gives another answer' });
  });
  test('a prescriber says the actual weight decides, for this weight', () => {
    const decided = (about: string) =>
      at('2026-11-21', 'prescriber-decision', {
        question: 'weight: actual decides',
        about,
        reason: 'with the pharmacist',
        pharmacist: 'Ph. Lindqvist',
      });
    expect(verdict([...heavy('155'), decided('w')])).toBe('ready');
    expect(verdict([...heavy('155'), decided('older')])).toBe('cannot say');
  });
  test('below 152.4 cm, or without a height, the ideal weight is not looked at', () => {
    expect(verdict(heavy('152.3'))).toBe('ready');
    expect(verdict(heavy('152.4'))).toBe('cannot say');
    expect(verdict(heavy('155').filter(({ kind }) => kind !== 'height'))).toBe('ready');
  });
  test("peak adult height goes before today's", () => {
    const tall = at('2020-01-01', 'height', {
      quantity: { comparator: '', value: '190', unit: 'cm' },
      which: 'peak adult',
    });
    // Ideal at 190 cm: 79.5 kg -> 43.9 mL/min.
    expect(verdict([...heavy('155', 'measured now'), tall])).toBe('ready');
  });
  test('a weight below the ideal one is judged as it is', () => {
    expect(
      verdict([
        woman70,
        weighed('2026-11-20', '50'),
        at('2026-11-20', 'height', { quantity: { comparator: '', value: '175', unit: 'cm' }, which: 'peak adult' }),
        ...creatinine('104 umol/L'),
      ]),
    ).toBe('ready');
  });
});

describe('the working', () => {
  const working = judged(person('50', '104')).working();
  test('puts the numbers into both forms, names the paper, shows eGFR as never deciding', () => {
    expect(working.formulas[0]).toMatchObject({ put: '(140 - 70) x 50 kg x 1.04 / 104 umol/L', gives: '35.00 mL/min' });
    expect(working.formulas[1]).toMatchObject({
      put: '(140 - 70) x 50 kg x 0.85 / (72 x 1.1765 mg/dL)',
      gives: '35.12 mL/min',
    });
    expect(working.formulas.every(({ source }) => source.length > 10)).toBe(true);
    expect(
      working.formulas
        .filter(({ name }) => name.startsWith('eGFR'))
        .every(({ name }) => name.includes('never decides')),
    ).toBe(true);
  });
  test('names every input with its day and entry, and the limits by their key', () => {
    expect(working.inputs.map(({ label }) => label)).toEqual(['creatinine', 'weight, measured', 'born', 'sex']);
    expect(working.inputs[0]?.on).toBe(day('2026-11-20'));
    expect(working.inputs.every(({ entry }) => entry !== undefined)).toBe(true);
    expect(working.thresholds).toContainEqual({ key: 'clearanceFloor' });
  });
  test('warns of a weight that may mislead and of a medicine begun after the sample', () => {
    const lines = [
      woman70,
      at('2026-11-20', 'weight', {
        quantity: { comparator: '', value: '60', unit: 'kg' },
        method: 'measured',
        caution: 'leg in plaster',
      }),
      ...creatinine('70 umol/L'),
      at('2026-11-22', 'medicine', { name: 'naproxen', sort: 'nephrotoxic' }),
    ];
    expect(judged(lines).working().cautions).toEqual([
      'The weight may mislead: leg in plaster.',
      'naproxen, hard on the kidneys, recorded from 22 Nov 2026: after the sample of 20 Nov 2026.',
    ]);
  });
});
