/**
 * What is never passed over, and whose word decides: results nobody has signed, conditions that bear on minerals, an open oncology
 * plan, the daily vitamin D, which weight counts (docs/readiness.md R2, R4, R11, R12, A2). Asked on 25 November 2026.
 */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  day,
  everyDay,
  plainDate,
  protocolFrom,
  readiness,
  teaching,
  teachingSheet,
} from '@twelvemonth/clinical';
import { judge, verdictsOn } from './judging.ts';
import { type Line, asked, at, bloods, born, personOf, weighed, clear } from './person.ts';

const context = { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: everyDay };
const answerOf = (lines: readonly Line[]) => readiness(personOf(lines), context, asked);
const good: readonly Line[] = [
  born('1941-06-02'),
  ...clear,
  weighed('2026-11-01', '56.2'),
  ...bloods('2026-11-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L' }),
];
const level = (text: string, date = '2026-11-20', signedOn: string | null = date) =>
  bloods(date, { 'vitamin D': text }, signedOn);
/** Six doses in a day, for short: what counts is the day the last was taken. */
const loaded = (date: string): readonly Line[] => [
  at(date, 'vitamin-d-loading', { doses: 6, everyDays: 7, unitsPerDose: 50_000, startOn: date as never }),
  at(date, 'vitamin-d-taken', { doses: 6, source: 'told us' }),
];

describe('a vitamin D level after a finished loading that nobody has signed', () => {
  const lines = [...level('31 nmol/L', '2026-08-01'), ...loaded('2026-09-16')];
  test.each([
    ['68 nmol/L', 'ready'],
    ['31 nmol/L', 'cannot say'],
    ['<50 nmol/L', 'cannot say'],
    ['<60 nmol/L', 'cannot say'],
    ['>60 nmol/L', 'ready'],
  ])('%s: %s', (text, expected) =>
    expect(verdictsOn('vitamin-d', [...lines, ...level(text, '2026-11-20', null)], '2026-11-25')).toEqual([expected]),
  );
  test('low and not signed, the way on is a new loading, not a signature', () => {
    const { nextSteps } = answerOf([...good, ...lines, ...level('31 nmol/L', '2026-11-20', null)]);
    expect(nextSteps.map(({ kind }) => kind)).toContain('loading dose');
    expect(nextSteps.map(({ kind }) => kind)).not.toContain('sign results');
  });
});

describe('the daily vitamin D, asked at the recall', () => {
  // Loading ended on 1 July 2026; it stands 120 days by itself, so to 29 October, then 120 from each word that the daily vitamin
  // D is taken, to 365 in all.
  const lines = [...good, ...loaded('2026-07-01')];
  test('nobody has asked: cannot say, and asking is the step, not another loading', () => {
    expect(verdictsOn('vitamin-d', lines, '2026-10-29', '2026-10-30')).toEqual(['ready', 'cannot say']);
    const { window, nextSteps } = answerOf(lines);
    expect(nextSteps.map(({ kind, earliest }) => [kind, plainDate(earliest)])).toEqual([
      ['ask maintenance', '2026-11-25'],
    ]);
    expect(window && [plainDate(window.first), window.certain]).toEqual(['2026-11-25', false]);
  });
  test('confirmed long ago it is asked again, so that the word counts on the day', () => {
    const early = [...lines, at('2026-07-02', 'vitamin-d-maintenance', { taken: true })];
    expect(verdictsOn('vitamin-d', early, '2026-10-30', '2026-10-31')).toEqual(['ready', 'cannot say']);
    const { window, nextSteps } = answerOf(early);
    expect(nextSteps.map(({ kind }) => kind)).toEqual(['ask maintenance']);
    // Asked on 25 November: 120 days from then.
    expect(window && plainDate(window.first)).toBe('2026-11-25');
    expect(
      verdictsOn(
        'vitamin-d',
        [...early, at('2026-11-25', 'vitamin-d-maintenance', { taken: true })],
        '2027-03-25',
        '2027-03-26',
      ),
    ).toEqual(['ready', 'cannot say']);
  });
  test('it is not taken, or its year is over: a new loading', () => {
    const not = at('2026-11-01', 'vitamin-d-maintenance', { taken: false });
    expect(answerOf([...lines, not]).nextSteps.map(({ kind }) => kind)).toContain('loading dose');
    const old = [...good, ...loaded('2025-11-24')];
    expect(answerOf(old).nextSteps.map(({ kind }) => kind)).toContain('loading dose');
    const lastDay = [...good, ...loaded('2025-11-25')];
    expect(answerOf(lastDay).nextSteps.map(({ kind }) => kind)).toContain('ask maintenance');
  });
  test('a loading under way serves a place a year on, if the daily vitamin D is asked about after it', () => {
    const running: readonly Line[] = [
      ...good,
      ...level('31 nmol/L', '2026-11-12'),
      at('2026-11-24', 'vitamin-d-loading', {
        doses: 6,
        everyDays: 7,
        unitsPerDose: 50_000,
        startOn: '2026-11-24' as never,
      }),
      at('2026-02-01', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }),
      at('2026-07-01', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }),
    ];
    const { window, nextSteps } = answerOf(running);
    // The last of six weekly doses on 30 December (the first is late by a day), the dose due on 1 July 2027: 183 days on.
    expect(window && plainDate(window.first)).toBe('2027-07-01');
    expect(nextSteps.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['loading dose', 'ask maintenance']));
    // 120 days before 1 July, so that the word counts on it.
    expect(nextSteps.find(({ kind }) => kind === 'ask maintenance')?.earliest).toBe(day('2027-03-03'));
  });
});

describe('minerals', () => {
  const phosphate = (text: string, date: string, signed: boolean, id: string): Line[] => [
    at(
      date,
      'result',
      { analyte: 'phosphate', quantity: { comparator: '', value: text, unit: 'mmol/L' }, referenceLow: '0.8' },
      id,
    ),
    ...(signed ? [at(date, 'results-signed', { results: [id] })] : []),
  ];
  const now = (...lines: (readonly Line[])[]) => judge('mineral-metabolism', lines.flat()).on(asked);
  test('a bad result nobody has signed is not passed over; a good one changes nothing', () => {
    expect(now(phosphate('0.6', '2026-11-10', false, 'm'))).toMatchObject({
      verdict: 'cannot say',
      cause: 'phosphate low, not signed',
    });
    expect(now(phosphate('0.9', '2026-11-10', false, 'm')).verdict).toBe('ready');
    expect(now(phosphate('0.9', '2026-10-10', true, 'm'), phosphate('0.6', '2026-11-10', false, 'n')).verdict).toBe(
      'cannot say',
    );
    expect(now(phosphate('0.6', '2026-10-10', true, 'm'), phosphate('0.9', '2026-11-10', false, 'n')).verdict).toBe(
      'cannot say',
    );
    expect(now(phosphate('0.6', '2026-10-10', false, 'm'), phosphate('0.9', '2026-11-10', true, 'n')).verdict).toBe(
      'ready',
    );
  });
  test('a corrected result is signed itself, or not at all', () => {
    const corrected: Line = {
      ...at(
        '2026-11-10',
        'result',
        { analyte: 'phosphate', quantity: { comparator: '', value: '0.9', unit: 'mmol/L' }, referenceLow: '0.8' },
        'n',
      ),
      amends: 'm',
    };
    const older = phosphate('0.6', '2026-10-10', true, 'o');
    expect(now(older, phosphate('0.7', '2026-11-10', true, 'm'), [corrected]).verdict).toBe('cannot say');
  });
  const condition = (what: BodyOfKind<'condition'>['what']) => at('2020-05-01', 'condition', { what }, 'k');
  const lookedInto = at('2026-11-01', 'prescriber-decision', {
    question: 'mineral metabolism looked into',
    about: 'k',
    reason: 'on its diet, calcium and vitamin D good',
  });
  // safety.md, "Calcium, vitamin D, minerals": correct first, prescriber.
  test.each(['malabsorption', 'bariatric surgery', 'parathyroid or thyroid surgery'] as const)(
    '%s: a prescriber looks into it first',
    (what) => {
      expect(now([condition(what)])).toMatchObject({ verdict: 'cannot say', cause: what });
      expect(now([condition(what), lookedInto]).verdict).toBe('ready');
    },
  );
  test.each([
    ['24 nmol/L', 'cannot say'],
    ['25 nmol/L', 'ready'],
    ['9 ng/mL', 'cannot say'],
    ['10 ng/mL', 'ready'],
    ['<30 nmol/L', 'cannot say'],
    ['>25 nmol/L', 'ready'],
    ['>20 nmol/L', 'cannot say'],
  ])('bone pain with a vitamin D of %s: %s', (text, expected) => {
    expect(now([condition('bone pain')], level(text)).verdict).toBe(expected);
    expect(now([condition('bone pain')], level(text, '2026-11-20', null)).verdict).toBe(expected);
  });
  test('bone pain alone holds nothing, nor after a loading, nor once looked into', () => {
    expect(now([condition('bone pain')]).verdict).toBe('ready');
    expect(now([condition('bone pain')], level('20 nmol/L', '2026-08-01'), loaded('2026-09-16')).verdict).toBe('ready');
    expect(now([condition('bone pain')], level('20 nmol/L', '2026-09-17'), loaded('2026-09-16')).verdict).toBe(
      'cannot say',
    );
    expect(now([condition('bone pain'), lookedInto], level('20 nmol/L')).verdict).toBe('ready');
  });
});

describe('an oncology plan with a bone medicine', () => {
  const plan = (more: Partial<BodyOfKind<'medicine'>> = {}) =>
    at('2026-03-01', 'medicine', { name: 'zoledronic acid, six-monthly', sort: 'oncology bone plan', ...more });
  test('open: not ready, oncology decides; closed: from that day', () => {
    expect(judge('other-bone-medicines', [plan()]).on(asked)).toMatchObject({
      verdict: 'not ready',
      cause: 'oncology plan: oncology decides',
    });
    const closed = [plan({ stoppedOn: '2026-12-01' as never })];
    expect(verdictsOn('other-bone-medicines', closed, '2026-11-30', '2026-12-01')).toEqual(['not ready', 'ready']);
  });
  test('no window while it is open', () => {
    const { window, noWindow } = answerOf([...good, ...level('68 nmol/L'), plan()]);
    expect(window).toBeUndefined();
    expect(noWindow?.needs.map(({ requirement }) => requirement)).toEqual(['other-bone-medicines']);
    expect(noWindow?.ifSettled?.first).toBe(asked);
  });
});

describe('which weight decides', () => {
  // 160 cm: ideal 52.4 kg (45.5 + 2.3 x 2.99 inches over 60), adjusted 69.4 kg, actual 95 kg; (140 - 80) x kg x 1.04 / umol/L.
  const heavy = (creatinine: string, height = true): readonly Line[] => [
    born('1946-06-02'),
    ...clear,
    weighed('2026-11-20', '95'),
    ...bloods('2026-11-20', { creatinine: `${creatinine} umol/L` }),
    ...(height
      ? [
          at('2026-11-20', 'height', {
            quantity: { comparator: '', value: '160', unit: 'cm' },
            which: 'peak adult',
          }),
        ]
      : []),
  ];
  const by = (weightThatDecides: 'actual' | 'ideal' | 'adjusted', lines: readonly Line[]) => {
    const made = protocolFrom({ ...teachingSheet, weightThatDecides });
    if (!('protocol' in made)) throw new Error('empty number');
    return judge('kidney-function', lines, made.protocol).on(asked);
  };
  test('at 110 umol/L: 53.9 by actual, 39.4 by adjusted, 29.7 mL/min by ideal weight', () => {
    expect(by('actual', heavy('110')).verdict).toBe('cannot say');
    expect(by('adjusted', heavy('110')).verdict).toBe('cannot say');
    expect(by('ideal', heavy('110')).verdict).toBe('not ready');
    expect(by('ideal', heavy('110')).cause).toContain('29.7');
  });
  test('at 90 umol/L all pass, and the deciding one says how near it is', () => {
    expect(by('actual', heavy('90'))).toMatchObject({ verdict: 'ready', nearLimit: false });
    expect(by('adjusted', heavy('90'))).toMatchObject({ verdict: 'ready', nearLimit: false });
    expect(by('ideal', heavy('90'))).toMatchObject({ verdict: 'ready', nearLimit: true });
  });
  test('all are shown', () => {
    for (const weight of ['actual', 'adjusted', 'ideal'] as const) {
      const shown = by(weight, heavy('110')).working();
      const text = JSON.stringify(shown.formulas);
      for (const value of ['53.89', '39.39', '29.71']) expect([weight, text.includes(value)]).toEqual([weight, true]);
    }
  });
  test('without a height another weight than the actual cannot be told', () => {
    expect(by('actual', heavy('110', false)).verdict).toBe('ready');
    for (const weight of ['adjusted', 'ideal'] as const)
      expect(by(weight, heavy('110', false))).toMatchObject({
        verdict: 'cannot say',
        cause: 'height not recorded, so ideal weight',
      });
  });
  test('below 152.4 cm there is no ideal weight, and the actual decides', () => {
    const short = [
      ...heavy('110', false),
      at('2026-11-20', 'height', { quantity: { comparator: '', value: '152', unit: 'cm' }, which: 'peak adult' }),
    ];
    expect(by('ideal', short).verdict).toBe('ready');
  });
  test('why a weight may mislead is shown beside the sum', () => {
    const plastered = [
      ...heavy('90'),
      at('2026-11-21', 'weight', {
        quantity: { comparator: '', value: '96', unit: 'kg' },
        method: 'measured',
        caution: 'leg in plaster',
      }),
    ];
    expect(judge('kidney-function', plastered).on(asked).working().cautions).toContain(
      'The weight may mislead: leg in plaster.',
    );
  });
  test('the teaching sheet lets the actual weight decide, as the label says', () =>
    expect(teachingSheet.weightThatDecides).toBe('actual'));
});
