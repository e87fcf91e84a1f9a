/** R10, R11, R12 and the medicines and doses in a row of R1 and R7 (docs/readiness.md), at their edges. Asked on 25 November 2026. */
import { describe, expect, test } from 'vitest';
import { type RequirementId, day, everyDay, plainDate, readiness, teaching } from '@twelvemonth/clinical';
import { judge, verdictsOn } from './judging.ts';
import { type Line, asked, at, bloods, born, clear, doseGiven, personOf, weighed } from './person.ts';

const now = (id: RequirementId, lines: readonly Line[]) => verdictsOn(id, lines, '2026-11-25')[0];
const good = [
  ...clear,
  born('1941-06-02'),
  weighed('2026-11-01', '56.2'),
  ...bloods('2026-11-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L', 'vitamin D': '68 nmol/L' }),
];
const asking = (lines: readonly Line[]) =>
  readiness(
    personOf(lines),
    { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay },
    asked,
  );
const teethException = (from: string, until: string) =>
  at(
    from,
    'prescriber-exception',
    { requirement: 'teeth and jaw', reason: 'dentist agrees', expiresOn: until as never },
    'x',
  );

describe('symptoms not cleared', () => {
  const told = (
    what:
      | 'thigh, hip or groin pain'
      | 'eye pain or redness'
      | 'jaw pain'
      | 'tingling or cramps'
      | 'back pain'
      | 'height loss'
      | 'other',
  ) => at('2026-07-01', 'symptom', { what }, 's');
  test.each([
    ['thigh, hip or groin pain', 'not ready'],
    ['eye pain or redness', 'cannot say'],
    ['jaw pain', 'cannot say'],
    ['tingling or cramps', 'cannot say'],
    ['back pain', 'ready'],
    ['height loss', 'ready'],
    // Ear pain, discharge or bare bone can only be told as this.
    ['other', 'cannot say'],
  ] as const)('%s: %s today and in a year, until cleared', (what, expected) => {
    expect(verdictsOn('symptoms', [told(what)], '2026-11-25', '2027-11-25')).toEqual([expected, expected]);
    expect(now('symptoms', [told(what), at('2026-11-25', 'symptom-cleared', { entry: 's', finding: 'gone' })])).toBe(
      'ready',
    );
    expect(now('symptoms', [told(what), at('2026-11-26', 'symptom-cleared', { entry: 's', finding: 'gone' })])).toBe(
      expected,
    );
  });
  test('thigh pain is called what it may be, and what comes first', () =>
    expect(judge('symptoms', [told('thigh, hip or groin pain')]).on(asked).cause).toBe(
      'suspected atypical fracture: X-ray first',
    ));
  const listed = (answers: Record<string, 'yes' | 'no'>, date = '2026-11-10', id = 'c') =>
    at(
      date,
      'checklist',
      { answers: Object.fromEntries(Object.entries(answers).map(([key, answer]) => [key, { answer }])) },
      id,
    );
  test.each([
    [{ thigh: 'yes' }, 'not ready'],
    [{ teeth: 'yes' }, 'cannot say'],
    [{ eye: 'yes' }, 'cannot say'],
    [{ thigh: 'no', teeth: 'no', eye: 'no' }, 'ready'],
    [{ 'unwell-now': 'yes', 'drunk-enough': 'no' }, 'ready'],
  ] as const)('an answer of an earlier visit, %j: %s', (answers, expected) =>
    expect(now('symptoms', [listed(answers)])).toBe(expected),
  );
  test('a later "no" clears nothing; who looked does', () => {
    const lines = [listed({ thigh: 'yes' }), listed({ thigh: 'no' }, '2026-11-20', 'd')];
    expect(now('symptoms', lines)).toBe('not ready');
    expect(
      now('symptoms', [
        ...lines,
        at('2026-11-21', 'symptom-cleared', { entry: 'c', question: 'thigh', finding: 'X-ray clear' }),
      ]),
    ).toBe('ready');
  });
  test('an exception for teeth and jaw passes over those to its last day, and is shown', () => {
    for (const lines of [[told('jaw pain')], [listed({ teeth: 'yes' })]]) {
      const excepted = [...lines, teethException('2026-11-20', '2026-11-30')];
      expect(verdictsOn('symptoms', excepted, '2026-11-25', '2026-11-30', '2026-12-01')).toEqual([
        'ready',
        'ready',
        'cannot say',
      ]);
      expect(judge('symptoms', excepted).on(asked).exception).toBe('x');
    }
  });
  test.each(['thigh, hip or groin pain', 'eye pain or redness', 'tingling or cramps'] as const)(
    'nothing passes over %s',
    (what) => expect(now('symptoms', [told(what), teethException('2026-11-20', '2026-11-30')])).not.toBe('ready'),
  );
  test('no window while it holds; the one there would be if it were cleared today is told', () => {
    const found = asking([...good, told('thigh, hip or groin pain')]);
    expect(found.window).toBeUndefined();
    expect(found.noWindow?.needs.map(({ requirement, who }) => [requirement, who])).toEqual([
      ['symptoms', 'prescriber'],
    ]);
    expect(found.noWindow?.ifSettled?.first).toBe(asked);
  });
});

describe('other bone medicines', () => {
  const injected = (medicine: 'denosumab 60 mg' | 'denosumab 120 mg', date: string) =>
    at(date, 'dose', { medicine, setting: 'elsewhere' });
  test.each(['denosumab 60 mg', 'denosumab 120 mg'] as const)('%s: not ready until six months after', (medicine) => {
    expect(
      verdictsOn('other-bone-medicines', [injected(medicine, '2026-08-31')], '2026-11-25', '2027-02-27', '2027-02-28'),
    ).toEqual(['not ready', 'not ready', 'ready']);
  });
  test('the latest injection decides, and the window begins on its day', () => {
    const lines = [...good, injected('denosumab 60 mg', '2026-01-01'), injected('denosumab 60 mg', '2026-06-10')];
    expect(verdictsOn('other-bone-medicines', lines, '2026-12-09', '2026-12-10')).toEqual(['not ready', 'ready']);
    expect(plainDate(asking(lines).window?.first ?? asked)).toBe('2026-12-10');
  });
  const taken = (
    sort: 'bisphosphonate tablet' | 'other bone medicine' | 'steroid',
    stoppedOn?: string,
    name = 'tablet',
  ) =>
    at('2024-01-01', 'medicine', { name, sort, ...(stoppedOn === undefined ? {} : { stoppedOn: stoppedOn as never }) });
  test.each([
    ['bisphosphonate tablet', 'cannot say'],
    ['other bone medicine', 'cannot say'],
    ['steroid', 'ready'],
  ] as const)('a %s nobody stopped: %s', (sort, expected) =>
    expect(verdictsOn('other-bone-medicines', [taken(sort)], '2026-11-25', '2027-11-25')).toEqual([expected, expected]),
  );
  test('from the day it is stopped it holds nothing', () =>
    expect(
      verdictsOn('other-bone-medicines', [taken('bisphosphonate tablet', '2026-12-01')], '2026-11-30', '2026-12-01'),
    ).toEqual(['cannot say', 'ready']));
  test('the newest entry of a name decides; another name is another medicine', () => {
    expect(
      now('other-bone-medicines', [
        taken('bisphosphonate tablet'),
        taken('bisphosphonate tablet', '2025-01-01', ' Tablet'),
      ]),
    ).toBe('ready');
    expect(
      now('other-bone-medicines', [
        taken('bisphosphonate tablet'),
        taken('bisphosphonate tablet', '2025-01-01', 'other'),
      ]),
    ).toBe('cannot say');
  });
  test('still taken: no window, a prescriber; if stopped today, from today', () => {
    const found = asking([...good, taken('bisphosphonate tablet')]);
    expect(found.noWindow?.needs.map(({ requirement, who }) => [requirement, who])).toEqual([
      ['other-bone-medicines', 'prescriber'],
    ]);
    expect(found.noWindow?.ifSettled?.first).toBe(asked);
  });
});

describe('a medicine started after the sample', () => {
  const started = (sort: 'nephrotoxic' | 'calcium-lowering' | 'other', date: string, stoppedOn?: string) =>
    at(date, 'medicine', { name: 'drug', sort, ...(stoppedOn === undefined ? {} : { stoppedOn: stoppedOn as never }) });
  const of = (...lines: Line[]) => [now('kidney-function', [...good, ...lines]), now('calcium', [...good, ...lines])];
  test.each([
    ['nephrotoxic', '2026-11-02', ['cannot say', 'ready']],
    ['nephrotoxic', '2026-11-01', ['ready', 'ready']],
    ['calcium-lowering', '2026-11-02', ['ready', 'cannot say']],
    ['calcium-lowering', '2026-11-01', ['ready', 'ready']],
    ['other', '2026-11-02', ['ready', 'ready']],
  ] as const)('%s from %s, bloods of 1 November: %j', (sort, date, expected) =>
    expect(of(started(sort, date))).toEqual(expected),
  );
  test('stopping it does not bring the sample back; an entry about the past spoils nothing', () => {
    expect(of(started('nephrotoxic', '2026-11-02', '2026-11-05'))[0]).toBe('cannot say');
    expect(of(started('nephrotoxic', '2026-11-02', '2026-11-01'))[0]).toBe('ready');
  });
  test('a sample taken since counts', () =>
    expect(
      now('kidney-function', [
        ...good,
        started('nephrotoxic', '2026-11-02'),
        ...bloods('2026-11-02', { creatinine: '79 umol/L' }),
      ]),
    ).toBe('ready'));
});

describe('six doses in a row', () => {
  const years = (count: number, last = 2025) =>
    Array.from({ length: count }, (_, index) => doseGiven(`${last - count + 1 + index}-10-01`));
  const review = (date: string, body: object) => at(date, 'course-review', body as never);
  const onward = (date: string, capacity = 'specialist') =>
    review(date, { outcome: 'carry on', toDoses: 10, capacity, reason: 'high risk' });
  test.each([
    ['five, carried on', [onward('2020-01-01'), ...years(5)], 'ready'],
    ['six, carried on before the sixth', [onward('2025-09-30'), ...years(6)], 'not ready'],
    ['six, carried on by a specialist from the day of the sixth', [...years(6), onward('2025-10-01')], 'ready'],
    ['six, carried on by another prescriber', [...years(6), onward('2025-10-01', 'other prescriber')], 'not ready'],
    [
      'six, carried on by nobody knows whom',
      [...years(6), review('2025-10-01', { outcome: 'carry on', toDoses: 10, reason: 'high risk' })],
      'not ready',
    ],
    [
      'a planned break between',
      [
        ...years(6),
        review('2023-01-01', { outcome: 'planned break', reviewOn: '2023-06-01', triggers: 't', reason: 'r' }),
        onward('2023-06-01'),
      ],
      'ready',
    ],
  ] as const)('%s: %s', (_, lines, expected) => {
    const ordered = [...lines].toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
    expect(now('course', ordered)).toBe(expected);
  });
});

describe('mineral metabolism', () => {
  const measured = (
    analyte: string,
    text: string,
    limits: { low?: string; high?: string },
    date = '2026-10-01',
    id = 'm',
  ) => {
    const match = /^([<>]=?)?([\d.]+) (\S+)$/.exec(text);
    return [
      at(
        date,
        'result',
        {
          analyte,
          quantity: { comparator: match?.[1] ?? '', value: match?.[2], unit: match?.[3] },
          ...(limits.low === undefined ? {} : { referenceLow: limits.low }),
          ...(limits.high === undefined ? {} : { referenceHigh: limits.high }),
        } as never,
        id,
      ),
      at(date, 'results-signed', { results: [id] }),
    ];
  };
  test('never measured: ready, with a caution that names each', () => {
    const judged = judge('mineral-metabolism', []).on(asked);
    expect(judged.verdict).toBe('ready');
    expect(judged.working().cautions.join(' ')).toMatch(
      /alkaline phosphatase, phosphate, magnesium, parathyroid hormone/,
    );
  });
  test.each([
    ['alkaline phosphatase', '130 U/L', { low: '30', high: '130' }, 'ready'],
    ['alkaline phosphatase', '131 U/L', { low: '30', high: '130' }, 'cannot say'],
    ['alkaline phosphatase', '20 U/L', { low: '30', high: '130' }, 'ready'],
    // Laboratories' limits differ by method, so without one nothing can be told: common practice, no source.
    ['alkaline phosphatase', '400 U/L', {}, 'cannot say'],
    ['alkaline phosphatase', '80 U/L', { low: '30' }, 'cannot say'],
    ['phosphate', '0.4 mmol/L', {}, 'cannot say'],
    ['phosphate', '0.9 mmol/L', { high: '1.5' }, 'cannot say'],
    ['magnesium', '0.9 mmol/L', {}, 'cannot say'],
    ['parathyroid hormone', '5.0 pmol/L', { low: '1.6' }, 'cannot say'],
    ['alkaline phosphatase', '<130 U/L', { high: '130' }, 'ready'],
    ['alkaline phosphatase', '>100 U/L', { high: '130' }, 'cannot say'],
    ['phosphate', '0.80 mmol/L', { low: '0.8' }, 'ready'],
    ['phosphate', '0.79 mmol/L', { low: '0.8' }, 'cannot say'],
    ['phosphate', '<0.90 mmol/L', { low: '0.8' }, 'cannot say'],
    ['magnesium', '0.70 mmol/L', { low: '0.7' }, 'ready'],
    ['magnesium', '0.6999 mmol/L', { low: '0.7' }, 'cannot say'],
    ['magnesium', '>0.70 mmol/L', { low: '0.7' }, 'ready'],
    ['parathyroid hormone', '6.9 pmol/L', { high: '6.9' }, 'ready'],
    ['parathyroid hormone', '7.0 pmol/L', { high: '6.9' }, 'cannot say'],
  ] as const)('%s %s within %j: %s', (analyte, text, limits, expected) =>
    expect(now('mineral-metabolism', measured(analyte, text, limits))).toBe(expected),
  );
  test('not signed, it is not passed over; looked into by a prescriber, it holds nothing; about another result, it still does', () => {
    const low = measured('phosphate', '0.6 mmol/L', { low: '0.8' });
    const decision = (about: string) =>
      at('2026-10-05', 'prescriber-decision', { question: 'mineral metabolism looked into', about, reason: 'known' });
    expect(now('mineral-metabolism', low.slice(0, 1))).toBe('cannot say');
    expect(now('mineral-metabolism', [...low, decision('m')])).toBe('ready');
    expect(now('mineral-metabolism', [...low, decision('other')])).toBe('cannot say');
    expect(
      now('mineral-metabolism', [...low, ...measured('phosphate', '0.9 mmol/L', { low: '0.8' }, '2026-10-20', 'n')]),
    ).toBe('ready');
  });
  test('without a limit a prescriber looks into it, or a newer result with its limit settles it', () => {
    const bare = measured('phosphate', '0.9 mmol/L', {});
    expect(judge('mineral-metabolism', bare).on(asked).cause).toBe('phosphate without a laboratory limit');
    const decision = at('2026-10-05', 'prescriber-decision', {
      question: 'mineral metabolism looked into',
      about: 'm',
      reason: 'well above any limit in use',
    });
    expect(now('mineral-metabolism', [...bare, decision])).toBe('ready');
    expect(
      now('mineral-metabolism', [...bare, ...measured('phosphate', '0.9 mmol/L', { low: '0.8' }, '2026-10-20', 'n')]),
    ).toBe('ready');
  });
  test('no window, a prescriber is named; looked into today, from today', () => {
    const found = asking([...good, ...measured('phosphate', '0.6 mmol/L', { low: '0.8' })]);
    expect(found.noWindow?.needs.map(({ requirement, who }) => [requirement, who])).toEqual([
      ['mineral-metabolism', 'prescriber'],
    ]);
    expect(found.noWindow?.ifSettled?.first).toBe(asked);
  });
});
