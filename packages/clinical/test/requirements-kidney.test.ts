/** Kidney function at and around every threshold (docs/readiness.md R1, R2). Asked on 25 November 2026 under the teaching protocol. */
import { describe, expect, test } from 'vitest';
import { type Day, addDays, day, evidenceOf, requirements, shortDate, teaching } from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, personOf, weighed } from './person.ts';

const judged = (lines: readonly Line[], on: Day = asked, today: Day = asked) =>
  requirements['kidney-function'].judge(evidenceOf(personOf(lines), today), teaching).on(on);
const verdict = (lines: readonly Line[], on?: Day) => judged(lines, on).verdict;
const creatinine = (value: string, on = '2026-11-20', signedOn: string | null = on) =>
  bloods(on, { creatinine: value }, signedOn);
/** 70 years old: (140 - 70) x kg x 1.04 / umol/L. */
const woman70 = born('1956-11-20');
const man70 = born('1956-11-20', 'male');
const person = (kg: string, umol: string, who = woman70) => [
  who,
  weighed('2026-11-20', kg),
  ...creatinine(`${umol} umol/L`),
];

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

describe('in date', () => {
  const lines = person('60', '70');
  test('bloods count 56 days from the sample, that day included, and not one more', () => {
    const last = addDays(day('2026-11-20'), 56);
    expect([verdict(lines, last), verdict(lines, addDays(last, 1))]).toEqual(['ready', 'cannot say']);
    expect(judged(lines, addDays(last, 1)).cause).toBe('bloods of 20 Nov 2026 out of date');
  });
  test('a weight counts 90 days, and not one more', () => {
    const old = [woman70, weighed('2026-09-01', '60'), ...creatinine('70 umol/L')];
    const last = addDays(day('2026-09-01'), 90);
    expect([verdict(old, last), verdict(old, addDays(last, 1))]).toEqual(['ready', 'cannot say']);
    expect(judged(old, addDays(last, 1)).cause).toBe(`weight of ${shortDate(day('2026-09-01'))} out of date`);
  });
  test('an exception for the age of bloods carries a passing value to its last day, and is shown', () => {
    const except = [
      ...lines,
      at(
        '2026-11-21',
        'prescriber-exception',
        { requirement: 'age of bloods', reason: 'cannot travel', expiresOn: '2027-01-31' as never },
        'x1',
      ),
    ];
    expect(judged(except, day('2027-01-31'))).toMatchObject({ verdict: 'ready', exception: 'x1' });
    expect(verdict(except, day('2027-02-01'))).toBe('cannot say');
    expect(judged(except, day('2027-01-15')).exception).toBeUndefined();
  });
  // Common practice, no source: the teaching protocol lets an exception last 90 days and carry bloods of up to 100 days.
  test('it lasts no longer than the protocol says, and carries bloods no older', () => {
    const madeOn = (on: string) => [
      woman70,
      ...creatinine('70 umol/L', '2026-10-01'),
      weighed('2026-11-20', '60'),
      at(on, 'prescriber-exception', {
        requirement: 'age of bloods',
        reason: 'cannot travel',
        expiresOn: '2099-01-01' as never,
      }),
    ];
    const on = (exceptionOf: string, ...dates: string[]) =>
      dates.map((date) => verdict(madeOn(exceptionOf), day(date)));
    // 5 October and 90 days; 1 October and 100 days.
    expect(on('2026-10-05', '2027-01-03', '2027-01-04')).toEqual(['ready', 'cannot say']);
    expect(on('2026-11-20', '2027-01-09', '2027-01-10')).toEqual(['ready', 'cannot say']);
  });
  test('it carries a failing value as failing: nobody makes an exception below 35', () => {
    const except = [
      ...person('49', '104'),
      at('2026-11-21', 'prescriber-exception', {
        requirement: 'age of bloods',
        reason: 'cannot travel',
        expiresOn: '2027-01-31' as never,
      }),
    ];
    expect(verdict(except, day('2027-01-31'))).toBe('not ready');
  });
});

describe('creatinine that has risen on the own baseline', () => {
  const risen = (before: string, now: string, beforeOn = '2026-08-01') => [
    woman70,
    weighed('2026-11-20', '70'),
    ...creatinine(`${before} umol/L`, beforeOn),
    ...creatinine(`${now} umol/L`),
  ];
  test.each([
    ['by 25 umol/L', '100', '125', 'ready'],
    ['by 26 umol/L', '100', '126', 'cannot say'],
    ['by 26 umol/L in hundredths', '99.99', '125.99', 'cannot say'],
    ['by a hair under 26', '100', '125.99', 'ready'],
    ['1.3 times', '60', '78', 'cannot say'],
    ['a hair under 1.3 times', '60', '77.99', 'ready'],
    ['not at all', '80', '80', 'ready'],
  ])('%s', (_, before, now, expected) => {
    expect(verdict(risen(before, now))).toBe(expected);
  });
  test('the lowest of the last 365 days is the baseline; 366 days ago is none', () => {
    const deciding = day('2026-11-20');
    expect(verdict(risen('60', '80', '2025-11-20'))).toBe('cannot say');
    expect(addDays(deciding, -365)).toBe(day('2025-11-20'));
    expect(verdict(risen('60', '80', '2025-11-19'))).toBe('ready');
  });
  test('an unsigned or acute earlier value is no baseline', () => {
    const acute: Line = {
      on: '2026-08-01',
      kind: 'result',
      id: 'acute',
      body: { analyte: 'creatinine', quantity: { comparator: '', value: '50', unit: 'umol/L' }, acuteAdmission: true },
    };
    const signedAcute = at('2026-08-01', 'results-signed', { results: ['acute'] });
    expect(verdict([...person('70', '80'), acute, signedAcute])).toBe('ready');
    // A low one that nobody has signed may be hers: then the creatinine has risen.
    expect(verdict([...person('70', '80'), ...creatinine('50 umol/L', '2026-08-01', null)])).toBe('cannot say');
  });
  test('a prescriber accepts the rise of this result, and of no other', () => {
    const lines = [
      woman70,
      weighed('2026-11-20', '70'),
      ...creatinine('60 umol/L', '2026-08-01'),
      {
        on: '2026-11-20',
        kind: 'result',
        id: 'now',
        body: { analyte: 'creatinine', quantity: { comparator: '', value: '80', unit: 'umol/L' } },
      } as Line,
      at('2026-11-20', 'results-signed', { results: ['now'] }),
    ];
    const accepted = (about: string) =>
      at('2026-11-21', 'prescriber-decision', {
        question: 'creatinine rise accepted',
        about,
        reason: 'trimethoprim, stopped',
      });
    expect(verdict(lines)).toBe('cannot say');
    expect(verdict([...lines, accepted('now')])).toBe('ready');
    expect(verdict([...lines, accepted('another')])).toBe('cannot say');
  });
  test('two values of one day that differ: cannot say until one is withdrawn or corrected, or the test is had again', () => {
    const lines = [woman70, weighed('2026-11-20', '70'), ...creatinine('79 umol/L')];
    expect(verdict(lines)).toBe('ready');
    expect(verdict([...lines, ...creatinine('79.0 umol/L')])).toBe('ready');
    const both = [...lines, ...creatinine('120 umol/L')];
    expect(verdict(both)).toBe('cannot say');
    expect(verdict([...both, ...creatinine('79 umol/L')])).toBe('cannot say');
    expect(verdict([...both, ...creatinine('80 umol/L', '2026-11-21')])).toBe('ready');
  });
  test('nor of a correction: the corrected value has risen too, and nobody has decided about it', () => {
    const result = (id: string, value: string, amends?: string) =>
      ({
        on: '2026-11-20',
        kind: 'result',
        id,
        body: { analyte: 'creatinine', quantity: { comparator: '', value, unit: 'umol/L' } },
        ...(amends === undefined ? {} : { amends }),
      }) as Line;
    const accepted = (about: string) =>
      at('2026-11-21', 'prescriber-decision', { question: 'creatinine rise accepted', about, reason: 'known' });
    const lines = [
      woman70,
      weighed('2026-11-20', '70'),
      ...creatinine('60 umol/L', '2026-08-01'),
      result('first', '80'),
      accepted('first'),
      result('corrected', '90', 'first'),
      at('2026-11-22', 'results-signed', { results: ['corrected'] }),
    ];
    expect(verdict(lines)).toBe('cannot say');
    expect(verdict([...lines, accepted('corrected')])).toBe('ready');
  });
  test('below 35 it is not ready, risen or not', () => {
    expect(
      verdict([
        woman70,
        weighed('2026-11-20', '50'),
        ...creatinine('80 umol/L', '2026-08-01'),
        ...creatinine('130 umol/L'),
      ]),
    ).toBe('not ready');
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

describe('samples that do not count', () => {
  const well = (on: string) => at(on, 'well-since', {});
  const ill = (on: string) => at(on, 'illness', { what: 'chest infection', sort: 'illness' });
  test('an illness nobody has ended voids every sample, also one taken after it', () => {
    expect(judged([...person('60', '70'), ill('2026-11-10')])).toMatchObject({
      verdict: 'cannot say',
      cause: 'bloods of 20 Nov 2026 no longer count',
    });
  });
  test('samples count from two days after "well since"', () => {
    expect(verdict([...person('60', '70'), ill('2026-11-10'), well('2026-11-18')])).toBe('ready');
    expect(verdict([...person('60', '70'), ill('2026-11-10'), well('2026-11-19')])).toBe('cannot say');
  });
  test('a "well since" before the illness ends nothing', () => {
    expect(verdict([...person('60', '70'), well('2026-11-09'), ill('2026-11-10')])).toBe('cannot say');
  });
  test('samples count from eleven days after any operation, and none from before it', () => {
    const operation = (on: string) => at(on, 'surgery', { what: 'other operation' });
    expect(verdict([...person('60', '70'), operation('2026-11-09')])).toBe('ready');
    expect(verdict([...person('60', '70'), operation('2026-11-10')])).toBe('cannot say');
    expect(verdict([...person('60', '70'), operation('2026-11-22')])).toBe('cannot say');
  });
  test('a sample of an acute admission never counts', () => {
    const acute: Line = {
      on: '2026-11-21',
      kind: 'result',
      id: 'a',
      body: { analyte: 'creatinine', quantity: { comparator: '', value: '60', unit: 'umol/L' }, acuteAdmission: true },
    };
    expect(verdict([...person('60', '70'), acute, at('2026-11-21', 'results-signed', { results: ['a'] })])).toBe(
      'cannot say',
    );
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
