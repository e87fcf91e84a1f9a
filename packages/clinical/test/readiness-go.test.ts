/** The verdict for the day of the visit, and whether a put-off could have been foreseen. */
import { describe, expect, test } from 'vitest';
import {
  type DecisionContext,
  addDays,
  day,
  everyDay,
  foreseeable,
  goVerdict,
  teaching,
  usualDayQuestions,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, doseGiven, ledgerOf, personOf, weighed } from './person.ts';

const context: DecisionContext = { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: everyDay };
const today = '2026-11-25';
const go = (lines: readonly Line[]) => goVerdict(personOf(lines), context, asked);
const item = (lines: readonly Line[], id: string) => go(lines).items.find((one) => one.id === id);

type Answers = Record<string, { answer: 'yes' | 'no' }>;
/** Every question answered so that nothing holds, but for those given. */
const answers = (but: Partial<Record<string, 'yes' | 'no'>> = {}): Answers =>
  Object.fromEntries(
    usualDayQuestions.map(({ id, holdsOn }) => [id, { answer: but[id] ?? (holdsOn === 'yes' ? 'no' : 'yes') }]),
  );
const checklist = (but: Partial<Record<string, 'yes' | 'no'>> = {}, on = today, id = 'c') =>
  at(on, 'checklist', { answers: answers(but) }, id);
const cleared = (entry: string, question: string, on = today) =>
  at(on, 'symptom-cleared', { entry, question, finding: 'looked into: nothing that holds' });
const observed = (but: object = {}) =>
  at(today, 'observations', {
    pulsePerMinute: 72,
    systolicMmHg: 130,
    temperatureCelsius: 36.8,
    saturationPercent: 97,
    newIrregularPulse: false,
    when: 'before',
    ...but,
  });

const ahead = [
  ...clear,
  born('1941-06-02'),
  weighed('2026-11-01', '56.2'),
  ...bloods('2026-11-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L', 'vitamin D': '68 nmol/L' }),
  doseGiven('2025-03-14'),
];
const arrived = [...ahead, weighed(today, '56.0')];
const all = [...arrived, checklist(), observed()];

test('everything asked, measured and in order: ready', () => {
  expect(go(all)).toMatchObject({ verdict: 'ready', headline: 'ready' });
  expect(go(all).items.every(({ verdict }) => verdict === 'ready')).toBe(true);
});

describe('unanswered is never a yes', () => {
  test.each(usualDayQuestions.map(({ id }) => id))('%s not asked today: cannot say', (id) => {
    const { [id]: _, ...rest } = answers();
    const lines = [...arrived, at(today, 'checklist', { answers: rest }), observed()];
    expect(go(lines)).toMatchObject({
      verdict: 'cannot say',
      headline: 'cannot say: 1 question of the day not answered',
    });
    expect(item(lines, id)).toMatchObject({ verdict: 'cannot say', unanswered: true });
  });
  test("yesterday's checklist answers nothing today", () => {
    expect(go([...arrived, checklist({}, '2026-11-24'), observed()]).verdict).toBe('cannot say');
  });
  test('no checklist at all: cannot say, counted in the headline', () => {
    expect(go([...arrived, observed()]).headline).toBe(
      `cannot say: ${usualDayQuestions.length} questions of the day not answered`,
    );
  });
  test('the newest checklist of today decides', () => {
    expect(
      go([...arrived, checklist({ 'drunk-enough': 'no' }, today, 'c1'), checklist({}, today, 'c2'), observed()])
        .verdict,
    ).toBe('ready');
  });
});

describe('an answer that holds the dose', () => {
  test.each(usualDayQuestions.map(({ id, holdsOn, then }) => [id, holdsOn, then] as const))(
    '%s: %s -> %s',
    (id, holdsOn, then) => {
      expect(go([...arrived, checklist({ [id]: holdsOn }), observed()]).verdict).toBe(then);
    },
  );
  test('until a registered practitioner clears this answer of this checklist', () => {
    const lines = [...arrived, checklist({ thigh: 'yes' }), observed()];
    expect(go(lines).verdict).toBe('not ready');
    expect(go([...lines, cleared('c', 'thigh')]).verdict).toBe('ready');
    expect(go([...lines, cleared('another', 'thigh')]).verdict).toBe('not ready');
  });
  test('pain told at an earlier visit still holds, though today the answer is no', () => {
    const lines = [...arrived, checklist({ thigh: 'yes' }, '2026-11-10', 'before'), checklist(), observed()];
    expect(go(lines)).toMatchObject({ verdict: 'not ready' });
    expect(go([...lines, cleared('before', 'thigh', '2026-11-20')]).verdict).toBe('ready');
  });
  test('clearing one answer clears none of the others on that checklist', () => {
    const lines = [...arrived, checklist({ thigh: 'yes', eye: 'yes' }), observed()];
    expect(go([...lines, cleared('c', 'eye')])).toMatchObject({ verdict: 'not ready' });
    expect(go([...lines, cleared('c', 'eye'), cleared('c', 'thigh')]).verdict).toBe('ready');
  });
  test.each(['consent-today', 'drunk-enough', 'unwell-now'])(
    '%s is answered again, never cleared by somebody else',
    (id) => {
      const holdsOn = usualDayQuestions.find((question) => question.id === id)?.holdsOn ?? 'yes';
      const lines = [...arrived, checklist({ [id]: holdsOn }), observed()];
      expect(go([...lines, cleared('c', id)]).verdict).toBe('not ready');
    },
  );
  test('a checklist corrected after it was cleared is cleared again', () => {
    const corrected: Line = { ...checklist({ thigh: 'yes' }, today, 'c2'), amends: 'c' };
    const lines = [...arrived, checklist({ thigh: 'yes' }), observed(), cleared('c', 'thigh'), corrected];
    expect(go(lines).verdict).toBe('not ready');
    expect(go([...lines, cleared('c2', 'thigh')]).verdict).toBe('ready');
  });
  test('having drunk too little at an earlier visit does not', () => {
    expect(
      go([...arrived, checklist({ 'drunk-enough': 'no' }, '2026-11-10', 'before'), checklist(), observed()]).verdict,
    ).toBe('ready');
  });
  test("teeth can be passed over by a prescriber's exception while it lasts; thigh pain cannot", () => {
    const teeth = (until: string) =>
      at(
        '2026-11-20',
        'prescriber-exception',
        { requirement: 'teeth and jaw', reason: 'dentist in two weeks', expiresOn: until as never },
        'x',
      );
    const lines = [...arrived, checklist({ teeth: 'yes' }), observed()];
    expect(go([...lines, teeth('2026-11-25')])).toMatchObject({ verdict: 'ready' });
    expect(item([...lines, teeth('2026-11-25')], 'teeth')?.exception).toBe('x');
    expect(go([...lines, teeth('2026-11-24')]).verdict).toBe('cannot say');
    expect(go([...arrived, checklist({ thigh: 'yes' }), observed(), teeth('2026-11-25')]).verdict).toBe('not ready');
  });
});

describe('observations before the dose', () => {
  // Degrees by definition: 38.0 C is 100.4 F, 38.2 C is 100.76 F. What decides is Celsius, whatever the thermometer reads.
  test.each([
    [{ temperatureCelsius: 37.9, temperatureFahrenheit: 100.2 }, 'temperature 100.2 degrees Fahrenheit (37.9 Celsius)'],
    [
      { temperatureCelsius: 38.2, temperatureFahrenheit: 100.8 },
      'temperature 100.8 degrees Fahrenheit (38.2 Celsius), put off from 100.4 degrees Fahrenheit (38 Celsius)',
    ],
  ])('a thermometer that reads Fahrenheit: %o', (read, says) => {
    expect(item([...arrived, checklist(), observed(read)], 'temperature')?.says).toBe(says);
  });

  test('read again in Celsius: the Fahrenheit of the first reading does not stand beside it', () => {
    const lines = [
      ...arrived,
      checklist(),
      observed({ temperatureCelsius: 38.2, temperatureFahrenheit: 100.8 }),
      at(today, 'observations', { temperatureCelsius: 37.2, when: 'before' }),
    ];
    expect(item(lines, 'temperature')).toMatchObject({ verdict: 'ready', says: 'temperature 37.2 degrees Celsius' });
  });

  // Rule of thumb (common practice, no source): heart rate and rhythm, blood pressure, temperature, saturation, all present.
  test.each(['pulsePerMinute', 'systolicMmHg', 'temperatureCelsius', 'saturationPercent', 'newIrregularPulse'])(
    'without %s: cannot say',
    (field) => {
      expect(go([...arrived, checklist(), observed({ [field]: undefined })]).verdict).toBe('cannot say');
    },
  );
  test.each([
    ['temperature 37.9', { temperatureCelsius: 37.9 }, 'ready'],
    ['temperature 38.0', { temperatureCelsius: 38 }, 'not ready'],
    ['systolic 100', { systolicMmHg: 100 }, 'ready'],
    ['systolic 99', { systolicMmHg: 99 }, 'not ready'],
    ['a new irregular pulse', { newIrregularPulse: true }, 'not ready'],
    ['a pulse known to be regular', { newIrregularPulse: false }, 'ready'],
  ])('%s: %s', (_, but, expected) => {
    expect(go([...arrived, checklist(), observed(but)]).verdict).toBe(expected);
  });
  test('those of another day, or taken during the dose, do not count', () => {
    expect(go([...arrived, checklist(), observed({ when: 'during' })]).verdict).toBe('cannot say');
    expect(go([...arrived, checklist(), { ...observed(), on: '2026-11-24' }]).verdict).toBe('cannot say');
  });
  test('those after the dose add nothing that is missing before it, mend nothing and put nothing off', () => {
    const good = observed({ when: 'after' });
    const bad = observed({ temperatureCelsius: 39, systolicMmHg: 80, newIrregularPulse: true, when: 'after' });
    expect(go([...arrived, checklist(), good]).verdict).toBe('cannot say');
    expect(go([...arrived, checklist(), observed({ saturationPercent: undefined }), good]).verdict).toBe('cannot say');
    for (const fails of [{ temperatureCelsius: 38.4 }, { systolicMmHg: 90 }, { newIrregularPulse: true }])
      expect(go([...arrived, checklist(), observed(fails), good]).verdict).toBe('not ready');
    expect(go([...all, bad])).toEqual(go(all));
  });
  test('what was left out may be added by a second reading, and a later reading replaces an earlier one', () => {
    expect(
      go([
        ...arrived,
        checklist(),
        observed({ saturationPercent: undefined }),
        at(today, 'observations', { saturationPercent: 98, when: 'before' }),
      ]).verdict,
    ).toBe('ready');
    expect(
      go([
        ...arrived,
        checklist(),
        observed({ temperatureCelsius: 38.4 }),
        at(today, 'observations', { temperatureCelsius: 37.2, when: 'before' }),
      ]).verdict,
    ).toBe('ready');
  });
});

describe('a weight of the day', () => {
  const rest = [checklist(), observed()];
  test('without it: cannot say, though a weight of three weeks ago is in date for planning', () => {
    expect(go([...ahead, ...rest])).toMatchObject({ verdict: 'cannot say', headline: 'cannot say: not weighed today' });
  });
  test.each(['reported', 'estimated'] as const)('%s today is not weighed today', (method) => {
    expect(go([...ahead, weighed(today, '56.0', method), ...rest]).verdict).toBe('cannot say');
  });
  test('the clearance is worked out again with it', () => {
    // 55 x kg x 1.04 / 79: 48.4 kg gives 35.04, 48.3 kg gives 34.97.
    expect(go([...ahead, weighed(today, '48.4'), ...rest])).toMatchObject({ verdict: 'ready', nearLimit: true });
    expect(go([...ahead, weighed(today, '48.3'), ...rest])).toMatchObject({ verdict: 'not ready' });
  });
});

describe('symptoms told before', () => {
  const told = (what: 'thigh, hip or groin pain' | 'jaw pain' | 'eye pain or redness' | 'tingling or cramps') =>
    at('2026-07-01', 'symptom', { what }, 's');
  test.each([
    ['thigh, hip or groin pain', 'not ready'],
    ['jaw pain', 'cannot say'],
    ['eye pain or redness', 'cannot say'],
    ['tingling or cramps', 'cannot say'],
  ] as const)('%s: %s until cleared', (what, expected) => {
    expect(go([...all, told(what)]).verdict).toBe(expected);
    expect(go([...all, told(what), at('2026-07-10', 'symptom-cleared', { entry: 's', finding: 'gone' })]).verdict).toBe(
      'ready',
    );
  });
});

test('what is settled ahead still counts on the day', () => {
  expect(go([...all, at('2026-11-24', 'illness', { what: 'flu', sort: 'illness' })]).verdict).toBe('not ready');
  expect(goVerdict(personOf(all), { ...context, protocols: [] }, asked).verdict).toBe('cannot say');
});

describe('foreseeable', () => {
  const visit = day('2026-12-10');
  test('bloods that run out before the visit were in sight seven days before', () => {
    const lines = [
      ...clear,
      born('1941-06-02'),
      weighed('2026-10-09', '56.2'),
      ...bloods('2026-10-09', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L', 'vitamin D': '68 nmol/L' }),
    ];
    expect(foreseeable(ledgerOf(lines), context, visit)).toBe(true);
    expect(
      foreseeable(
        ledgerOf([...lines, ...bloods('2026-12-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L' })]),
        context,
        visit,
      ),
    ).toBe(false);
  });
  test('an illness of the last week was not', () => {
    const lines = [...ahead, at('2026-12-05', 'illness', { what: 'vomiting', sort: 'illness' })];
    expect(foreseeable(ledgerOf(lines), context, visit)).toBe(false);
    expect(
      foreseeable(
        ledgerOf([...ahead, at('2026-12-03', 'illness', { what: 'vomiting', sort: 'illness' })]),
        context,
        visit,
      ),
    ).toBe(true);
  });
  test('what was true by then but written later was not known', () => {
    const entries = ledgerOf([...ahead, at('2026-12-01', 'illness', { what: 'vomiting', sort: 'illness' })]).map(
      (entry) => (entry.kind === 'illness' ? { ...entry, recordedAt: '2026-12-09T09:00:00.000Z' } : entry),
    );
    expect(foreseeable(entries, context, visit)).toBe(false);
  });
  test('of notes that did not exist yet nothing could be seen', () => {
    expect(foreseeable([], context, visit)).toBe(false);
    expect(
      foreseeable(
        ledgerOf([at('2026-12-09', 'consent', { decision: 'given', how: 'spoken' })]),
        context,
        addDays(visit, 0),
      ),
    ).toBe(false);
  });
});
