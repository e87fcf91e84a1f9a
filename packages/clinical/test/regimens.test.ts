/**
 * Regimens of other medicines on one sheet: what each asks, counts and waits for (docs/readiness.md R0, R6, R7). Medicines:
 * the clinical fact sheet, section 8 and Z21-Z24; its dates of "Date arithmetic tests".
 */
import { describe, expect, test } from 'vitest';
import {
  day,
  evidenceOf,
  everyDay,
  plainDate,
  protocolFrom,
  readiness,
  requirements,
  teaching,
  teachingSheet,
  underRegimen,
  usualRegimens,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, personOf, weighed } from './person.ts';
import { dose, ordered, good, asking, said, under, course } from './regimen-lines.ts';

describe('what a regimen leaves out is not asked', () => {
  // Section 8: denosumab has no clearance limit; calcium before each dose counts (read).
  const lowClearance = [
    ...good,
    ...bloods('2026-11-20', { creatinine: '190 umol/L', 'adjusted calcium': '2.29 mmol/L' }),
    at('2026-11-20', 'surgery', { what: 'hip repair' }),
  ];
  test('denosumab: no days since a hip repair; calcium is asked', () => {
    expect(said([...lowClearance, ordered('denosumab-60-six-monthly')], 'hip-repair')?.verdict).toBe('does not apply');
    const lowCalcium = [
      ...good,
      ...bloods('2026-11-22', { 'adjusted calcium': '2.10 mmol/L' }),
      ordered('denosumab-60-six-monthly'),
    ];
    expect(said(lowCalcium, 'calcium')?.verdict).toBe('not ready');
  });
  test('a draw is never asked for what is left out', () => {
    const [regimen] = teachingSheet.regimens;
    if (regimen === undefined) throw new Error('the teaching sheet has no regimen');
    const made = protocolFrom({ ...teachingSheet, regimens: [{ ...regimen, leavesOut: ['kidney-function'] }] });
    if (!('protocol' in made)) throw new Error('the sheet has an empty number');
    const context = { protocols: [{ from: 0, protocol: made.protocol }], calendar: everyDay };
    const tests = readiness(personOf([...clear, born('1941-06-02')]), context, asked).nextSteps.flatMap(
      (step) => step.tests ?? [],
    );
    expect(tests).toContain('calcium');
    expect(tests).not.toContain('creatinine');
  });
});

/**
 * Denosumab product text and US boxed warning (clinical.md section 8, read): below 30 mL/min and on dialysis severe and fatal low
 * calcium; no floor that refuses; calcium before each dose and within two weeks after it in those predisposed. Romosozumab
 * product text (section 8, read): severe renal impairment, 15 to 29 mL/min, and dialysis: low calcium threatens, watch it.
 */
describe.each(['denosumab-60-six-monthly', 'romosozumab-monthly'])('%s and the kidneys', (regimen) => {
  // Woman of 85, 50 kg: (140 - 85) x 50 x 1.04 / umol/L: 95 gives 30.1, 96 gives 29.8.
  const at30 = (umolPerL: string, on = '2026-11-01') => [
    ...clear,
    born('1941-06-02'),
    weighed(on, '50'),
    ...bloods(on, { creatinine: `${umolPerL} umol/L`, 'adjusted calcium': '2.34 mmol/L', 'vitamin D': '68 nmol/L' }),
  ];
  const created = (lines: readonly Line[]) =>
    lines
      .map((line) =>
        line.kind === 'result' && (line.body as { analyte?: string }).analyte === 'creatinine' ? (line.id ?? '') : '',
      )
      .find((id) => id !== '') ?? '';
  const accepted = (about: string, on = '2026-11-02') =>
    at(on, 'prescriber-decision', { question: 'low clearance accepted', about, reason: 'calcium good, sample after' });
  test('at the number of the regimen it is ready, below it a prescriber decides', () => {
    expect(under('kidney-function', at30('95'), regimen)).toBe('ready');
    expect(under('kidney-function', at30('96'), regimen)).toBe('cannot say');
    expect(under('kidney-function', at30('96'), 'ibandronate-three-monthly')).toBe('not ready');
  });
  test('not known: cannot say', () => {
    expect(under('kidney-function', [...clear, born('1941-06-02')], regimen)).toBe('cannot say');
    expect(under('kidney-function', at30('95', '2026-09-20'), regimen)).toBe('cannot say');
  });
  test('no window, and the prescriber is named', () => {
    const found = asking([...at30('120'), ordered(regimen)]);
    expect(found.noWindow?.needs).toMatchObject([{ requirement: 'kidney-function', who: 'prescriber' }]);
    expect(found.nextSteps.map(({ kind }) => kind)).toContain('prescriber decides');
  });
  test('a prescriber decided about this creatinine: ready and near the limit, with calcium afterwards said', () => {
    const low = at30('120');
    const lines = [...low, accepted(created(low))];
    const judged = requirements['kidney-function']
      .judge(evidenceOf(personOf(lines), asked), underRegimen(teaching, regimen))
      .on(asked);
    expect([judged.verdict, judged.nearLimit]).toEqual(['ready', true]);
    expect(judged.working().cautions.join(' ')).toContain('a sample within 14 days after the dose');
    expect(asking([...lines, ordered(regimen)]).window).toBeDefined();
  });
  test('the decision is about that one value: the next needs its own', () => {
    const low = at30('120', '2026-10-01');
    const lines = [...low, accepted(created(low), '2026-10-02'), ...at30('120', '2026-11-20').slice(clear.length + 1)];
    expect(under('kidney-function', lines, regimen)).toBe('cannot say');
  });
  test('it never lets a bisphosphonate be given below its floor', () => {
    const low = at30('120');
    for (const id of ['zoledronic-acid-yearly', 'ibandronate-three-monthly'])
      expect(under('kidney-function', [...low, accepted(created(low))], id)).toBe('not ready');
  });
});

describe('a regimen has its own limits', () => {
  // Ibandronate: clearance of at least 30 mL/min (section 8, read). Woman of 85, 50 kg: (140-85) x 50 x 1.04 / umol/L.
  const at30 = (umolPerL: string) => [
    ...clear,
    born('1941-06-02'),
    weighed('2026-11-24', '50'),
    ...bloods('2026-11-01', { creatinine: `${umolPerL} umol/L`, 'adjusted calcium': '2.29 mmol/L' }),
  ];
  test.each([
    ['95', 'ready', 'not ready'],
    ['96', 'not ready', 'not ready'],
    ['81', 'ready', 'ready'],
  ])('creatinine %s: ibandronate %s, zoledronic acid %s', (umolPerL, ibandronate, zoledronic) => {
    expect([
      under('kidney-function', at30(umolPerL), 'ibandronate-three-monthly'),
      under('kidney-function', at30(umolPerL), 'zoledronic-acid-yearly'),
    ]).toEqual([ibandronate, zoledronic]);
  });
  test('hypersensitivity to a bisphosphonate stops bisphosphonates and nothing else', () => {
    const allergic = [...good, at('2026-02-01', 'allergy', { answer: 'bisphosphonate', reaction: 'rash' })];
    for (const { id, medicine } of usualRegimens)
      expect([medicine, under('hypersensitivity', allergic, id)]).toEqual([
        medicine,
        /denosumab|romosozumab|teriparatide/.test(medicine) ? 'ready' : 'not ready',
      ]);
  });
  test('an allergy to denosumab stops denosumab and nothing else, also where only its words say so', () => {
    for (const told of [
      { substance: 'the six-monthly injection', medicine: 'denosumab' },
      { substance: 'Denosumab 60 mg', medicine: 'medicine not for bones' },
    ] as const) {
      const allergic = [...good, at('2026-02-01', 'allergy', { answer: 'other', ...told })];
      for (const { id, medicine } of usualRegimens)
        expect([medicine, under('hypersensitivity', allergic, id)]).toEqual([
          medicine,
          medicine.startsWith('denosumab') ? 'not ready' : 'ready',
        ]);
    }
  });
  test('romosozumab asks for a heart attack or stroke, and a yes stays until it is cleared', () => {
    const told = [...good, at('2026-11-01', 'checklist', { answers: { 'heart-or-stroke': { answer: 'yes' } } })];
    expect(under('symptoms', told, 'romosozumab-monthly')).toBe('not ready');
    expect(under('symptoms', told, 'zoledronic-acid-yearly')).toBe('ready');
  });
});

describe('the interval is that of the prescribed regimen', () => {
  // 2025-08-31 + 6 months -> 2026-02-28; 2025-01-31 + 18 months -> 2026-07-31 (fact sheet, computed).
  test.each([
    ['denosumab-60-six-monthly', 'denosumab 60 mg', '2025-08-31', '2026-02-28'],
    ['zoledronic-acid-18-monthly', 'zoledronic acid 5 mg', '2025-01-31', '2026-07-31'],
    ['zoledronic-acid-24-monthly', 'zoledronic acid 5 mg', '2024-02-29', '2026-02-28'],
    ['ibandronate-three-monthly', 'ibandronate 3 mg', '2026-08-31', '2026-11-30'],
    ['romosozumab-monthly', 'romosozumab 210 mg', '2026-10-31', '2026-11-30'],
  ] as const)('%s: the dose after %s is due %s', (regimen, medicine, last, due) => {
    const lines = [...good, ordered(regimen), dose(last, medicine)];
    expect(plainDate(course(lines).due ?? day('1900-01-01'))).toBe(due);
    expect([
      under('interval', lines, regimen, plainDate((day(due) - 1) as never)),
      under('interval', lines, regimen, due),
    ]).toEqual(['not ready', 'ready']);
  });
  test('a dose of another medicine is no dose of this one', () => {
    const lines = [...good, dose('2026-05-24', 'denosumab 60 mg'), dose('2026-05-01', 'ibandronate 3 mg')];
    expect(course(lines)).toMatchObject({ doses: [], lifetime: 0, firstTimer: true, due: undefined });
    expect(course(lines).given).toEqual([
      { medicine: 'ibandronate 3 mg', doses: 1 },
      { medicine: 'denosumab 60 mg', doses: 1 },
    ]);
    expect(said(lines, 'interval')?.verdict).toBe('ready');
  });
});

describe('the second dose after denosumab, from 3 or 6 months by prescription', () => {
  // ZOLARMAB2 protocol: again at 3 and 6 months; ECTS 2021 (clinical.md 4f).
  const shorter = ordered('zoledronic-acid-yearly', '2026-06-01', {
    interval: { months: 3, reason: 'after denosumab: second dose' },
  });
  const denosumab = dose('2025-10-15', 'denosumab 60 mg', 'elsewhere');
  const first = dose('2026-04-15', 'zoledronic acid 5 mg');
  const due = (lines: readonly Line[]) => plainDate(course(lines).due ?? day('1900-01-01'));
  test('three months after the first dose that followed it', () => {
    expect(due([...good, denosumab, first, shorter])).toBe('2026-07-15');
    expect(said([...good, denosumab, first, shorter], 'interval')?.verdict).toBe('ready');
  });
  // safety.md: "second dose from 3 or 6 months"; ZOLARMAB2 protocol.
  test.each([
    [1, '2027-04-15'],
    [2, '2027-04-15'],
    [3, '2026-07-15'],
    [6, '2026-10-15'],
  ])('an order of %i months: due %s; shorter than the protocol lets it be, the year stands', (months, expected) => {
    const order = ordered('zoledronic-acid-yearly', '2026-06-01', {
      interval: { months, reason: 'after denosumab: second dose' },
    });
    const lines = [...good, denosumab, first, order];
    expect(due(lines)).toBe(expected);
    const { cautions } = requirements.interval
      .judge(evidenceOf(personOf(lines), asked), teaching)
      .on(asked)
      .working();
    expect(cautions.some((caution) => caution.includes('after 3 months at the earliest'))).toBe(months < 3);
  });
  test('not the third dose, and never where no denosumab came before', () => {
    expect(due([...good, denosumab, first, dose('2026-07-20', 'zoledronic acid 5 mg'), shorter])).toBe('2027-07-20');
    expect(due([...good, first, shorter])).toBe('2027-04-15');
    expect(said([...good, first, shorter], 'interval')?.verdict).toBe('not ready');
  });
  test('a longer interval of the order always stands', () => {
    const longer = ordered('zoledronic-acid-yearly', '2026-06-01', { interval: { months: 18, reason: 'low risk' } });
    expect(due([...good, first, longer])).toBe('2027-10-15');
  });
});

describe("a single dose for Paget's disease", () => {
  const paget = [
    ...good,
    ordered('zoledronic-acid-pagets-disease', '2026-01-06'),
    dose('2026-02-10', 'zoledronic acid 5 mg', 'this service', 'p'),
  ];
  test('is not recalled, and another needs a review', () => {
    expect(course(paget)).toMatchObject({
      due: undefined,
      recall: undefined,
      review: { because: 'planned doses given' },
    });
    expect(said(paget, 'course')?.verdict).toBe('not ready');
  });
  test('does not count in a course for osteoporosis, but keeps its interval and counts for life', () => {
    const later = [...paget, ordered('zoledronic-acid-yearly', '2026-06-01')];
    expect(course(later)).toMatchObject({
      doses: [],
      consecutive: 0,
      nextDoseNumber: 1,
      lifetime: 1,
      firstTimer: false,
    });
    expect(said(later, 'interval')?.cause).toContain('10 Feb 2027');
    expect(said(later, 'course')?.verdict).toBe('ready');
  });
  test('doses for osteoporosis are no dose of it', () => {
    const yearly = [
      ...good,
      dose('2025-02-10', 'zoledronic acid 5 mg'),
      ordered('zoledronic-acid-pagets-disease', '2026-06-01'),
    ];
    expect(course(yearly)).toMatchObject({ doses: [], review: undefined });
  });
});
