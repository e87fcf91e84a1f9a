/** Bad input is asked about, never guessed: what may be a slip is shown as it was typed, and written once it was confirmed. */
import { describe, expect, test } from 'vitest';
import { type ActNamed, factsOf, parseLedger } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const result = (analyte: string, value: string, unit?: string) => ({
  kind: 'result' as const,
  body: { analyte, quantity: { comparator: '', value, ...(unit === undefined ? {} : { unit }) } },
  effectiveAt: '2026-11-23',
});
const weight = (value: string, unit?: string) => ({
  kind: 'weight' as const,
  body: { quantity: { comparator: '', value, ...(unit === undefined ? {} : { unit }) }, method: 'measured' },
  effectiveAt: '2026-11-23',
});
const record = (
  line: ReturnType<typeof result> | ReturnType<typeof weight>,
  more: object = {},
): ActNamed<'record'> => ({
  name: 'record',
  patient: 'p1',
  line,
  ...more,
});
const here = (): DayUnit => new DayUnit().register();

describe('a value without a unit', () => {
  test.each([
    ['a result', record(result('creatinine', '88'))],
    ['a weight', record(weight('56.2'))],
  ])('%s is refused by name: the unit is asked for', (_, act) => {
    const [refused, ...more] = here().do('dana', act);
    expect(more).toEqual([]);
    expect(refused?.name).toBe('field-wrong');
    expect(refused?.field).toBe('line.body.quantity.unit');
    expect(refused?.says).toContain('the unit is missing');
  });
});

describe('a unit that does not fit the quantity', () => {
  test.each([
    ['creatinine in mmol/L', result('creatinine', '88', 'mmol/L'), 'creatinine is not reported in mmol/L'],
    ['vitamin D in g/L', result('vitamin D', '60', 'g/L'), 'vitamin D is not reported in g/L'],
  ])('%s', (_, line, says) => {
    const [refused] = here().do('dana', record(line));
    expect([refused?.name, refused?.says]).toEqual(['field-wrong', says]);
  });
  test('a weight in stone is told which units there are', () => {
    const [refused] = here().do('dana', record(weight('8.9', 'st')));
    expect(refused?.says).toContain('st is not one of its units: kg, lb');
  });
});

describe('a date without a year, or none at all', () => {
  test.each(['11-23', '23 Nov', '2026-02-30', ''])('"%s" is refused, nothing is completed', (effectiveAt) => {
    const unit = here();
    const names = unit.do('dana', record({ ...weight('56.2', 'kg'), effectiveAt })).map(({ name }) => name);
    expect(names).toContain('field-wrong');
    expect(factsOf(unit.patient(), 'weight')).toEqual([]);
  });
});

describe('a value that may be in another unit', () => {
  test.each([
    ['creatinine that must be mg/dL', result('creatinine', '0.9', 'umol/L'), 'is it 0.9 mg/dL?'],
    ['creatinine that must be umol/L', result('creatinine', '88', 'mg/dL'), 'is it 88 umol/L?'],
    ['calcium that must be mg/dL', result('adjusted calcium', '9.3', 'mmol/L'), 'is it 9.3 mg/dL?'],
    ['a point left out', result('adjusted calcium', '23', 'mmol/L'), 'is a figure or the point out of place?'],
    ['a weight with a point out of place', weight('5.62', 'kg'), 'is a figure or the point out of place?'],
  ])('%s: asked about, with what was typed', (_, line, question) => {
    const unit = here();
    const [asked, ...more] = unit.do('dana', record(line));
    expect(more).toEqual([]);
    expect(asked?.name).toBe('is-it-right');
    expect(asked?.says).toContain(question);
    expect(asked?.says).toContain(`${line.body.quantity.value} `);
    expect(unit.patient().all.some(({ kind }) => kind === line.kind)).toBe(false);
  });
  test('right as typed: written once the very sentence was confirmed', () => {
    const unit = here();
    const act = record(result('creatinine', '24', 'umol/L'));
    const [asked] = unit.do('dana', act);
    expect(unit.refused('dana', { ...act, confirms: ['something else'] })).toEqual(['is-it-right']);
    unit.expect('dana', { ...act, confirms: [asked?.says ?? ''] });
    expect(unit.newest('result').body.quantity.value).toBe('24');
  });
});

describe('two values that contradict', () => {
  test('the same test of the same day with another value: which is right?', () => {
    const unit = here();
    unit.expect('dana', record(result('creatinine', '88', 'umol/L')));
    const [asked] = unit.do('dana', record(result('creatinine', '98', 'umol/L')));
    expect(asked?.name).toBe('is-it-right');
    expect(asked?.says).toBe(
      'You typed creatinine 98 umol/L; the notes have 88 umol/L of the same day, 23 Nov 2026: which is right, or were there two samples?',
    );
  });
  test('of one form: the second line is asked about beside the first', () => {
    const lines = [result('creatinine', '88', 'umol/L'), result('creatinine', '98', 'umol/L')];
    expect(here().refused('dana', { name: 'record together', patient: 'p1', lines })).toEqual(['is-it-right']);
  });
  test('the same value again, another day, or a correction of that entry is no contradiction', () => {
    const unit = here();
    unit.expect('dana', record(result('creatinine', '88', 'umol/L')));
    unit.expect('dana', record(result('creatinine', '88.0', 'umol/L')));
    unit.expect('dana', record({ ...result('creatinine', '98', 'umol/L'), effectiveAt: '2026-11-24' }));
    const second = new DayUnit().register();
    second.expect('dana', record(result('creatinine', '88', 'umol/L')));
    second.expect('dana', record(result('creatinine', '98', 'umol/L'), { amends: second.newest('result').id }));
  });
  test('a weight more than 15 % from the one before', () => {
    const unit = here();
    unit.write('dana', 'weight', weight('56.2', 'kg').body, '2026-11-20');
    const [asked] = unit.do('dana', record(weight('123.9', 'kg')));
    expect(asked?.says).toBe(
      'You typed 123.9 kg; on 20 Nov 2026 it was 56.2 kg, 120 % more: is the unit right, and was it weighed twice?',
    );
    unit.expect('dana', record(weight('123.9', 'lb')));
  });
});

// Classes: clinical fact sheet 4e (anti-inflammatories, diuretics, vancomycin and amphotericin read; the rest from memory).
describe('a medicine entered as another sort than its name says', () => {
  const entered = (name: string, sort: string, more: object = {}): ActNamed<'record'> => ({
    name: 'record',
    patient: 'p1',
    line: { kind: 'medicine', body: { name, sort, ...more }, effectiveAt: '2026-11-23' },
  });
  test.each([
    ['ibuprofen', 'other', '“nephrotoxic”'],
    ['Naproxen 500 mg', 'calcium-lowering', '“nephrotoxic”'],
    ['ramipril', 'other', '“nephrotoxic”'],
    ['alendronic acid 70 mg weekly', 'other', '“bisphosphonate tablet”'],
    ['Risedronat', 'nephrotoxic', '“bisphosphonate tablet”'],
    ['denosumab', 'other', '“other bone medicine”'],
    ['raloxifene', 'other', '“other bone medicine”'],
    ['prednisolone 10 mg', 'other', '“steroid”'],
    ['apixaban', 'other', '“anticoagulant”'],
    ['omeprazole', 'other', '“calcium-lowering”'],
    ['gentamicin', 'other', '“nephrotoxic” and once more as “calcium-lowering”'],
    ['furosemide', 'nephrotoxic', '“calcium-lowering” too'],
  ])('%s as "%s": should it be %s?', (name, sort, wanted) => {
    const [asked, ...more] = here().do('dana', entered(name, sort));
    expect(more).toEqual([]);
    expect([asked?.name, asked?.field]).toEqual(['is-it-right', 'line.body.sort']);
    expect(asked?.says).toMatch(
      new RegExp(`^You typed ${name} as “${sort}”\\. It is .+: should it be written as ${wanted}\\?$`),
    );
  });
  test('the sort its name says is not asked about, nor one that says more, nor what was stopped', () => {
    for (const [name, sort, more] of [
      ['ibuprofen', 'nephrotoxic'],
      ['zoledronic acid with chemotherapy', 'oncology bone plan'],
      ['denosumab', 'oncology bone plan'],
      ['alendronic acid', 'other', { stoppedOn: '2026-11-23' }],
      ['aripiprazole', 'other'],
      ['paracetamol', 'other'],
    ] as const)
      here().expect('dana', entered(name, sort, more));
  });
  test('what is both is written twice, and then asked about no more', () => {
    const unit = here();
    const first = entered('furosemide', 'nephrotoxic');
    unit.expect('dana', { ...first, confirms: [unit.do('dana', first)[0]?.says ?? ''] });
    unit.expect('dana', entered('Furosemide', 'calcium-lowering'));
    unit.expect('dana', entered('furosemide', 'nephrotoxic'));
  });
});

describe('notes written as text', () => {
  const says = (line: string): string => {
    const read = parseLedger(`person  female, born 1941-06-02\n${line}\n`);
    return read.ok ? 'read' : read.problems.map(({ line: at, says }) => `${at}: ${says}`).join();
  };
  test.each([
    ['3 Mar weight 56.2 kg measured', '2: cannot read "3 Mar weight 56.2 kg measured": wanted the year of 3 Mar'],
    ['3 Mar 2026 weight 56.2 measured', '2: cannot read "measured": wanted the unit of 56.2'],
    ['3 Mar 2026 creatinine 88', '2: the line ends too early: wanted the unit of 88'],
    ['3 Mar 2026 creatinine 88 signed', '2: cannot read "signed": wanted the unit of 88'],
    ['3 Mar 2026 weight 8.9 stone measured', '2: cannot read "stone measured": wanted the unit of 8.9'],
  ])('%s: asked about, never guessed', (line, problem) => {
    expect(says(line)).toContain(problem);
    expect(says(line)).toContain('never guessed');
  });
});

describe('a death before a day on which the person was seen', () => {
  const died = (effectiveAt: string, confirms: readonly string[] = []): ActNamed<'record'> => ({
    name: 'record',
    patient: 'p1',
    line: { kind: 'died', body: { source: 'a neighbour rang' }, effectiveAt },
    confirms,
  });
  const seen = (): DayUnit => {
    const unit = here();
    unit.expect('dana', record(weight('56.2', 'kg')));
    return unit;
  };
  const asks =
    'The notes have “body weight” of 23 Nov 2026, after that day: is it this person who has died, and on that day?';

  test('is asked about: written in the wrong notes it would end the recall of somebody who lives', () => {
    const unit = seen();
    const [asked, ...more] = unit.do('dana', died('2026-11-22'));
    expect(more).toEqual([]);
    expect([asked?.name, asked?.field, asked?.says]).toEqual(['is-it-right', 'line.body.source', asks]);
    expect(factsOf(unit.patient(), 'died')).toEqual([]);
    unit.expect('dana', died('2026-11-22', [asks]));
    expect(factsOf(unit.patient(), 'died')).toHaveLength(1);
  });
  test('on the day itself, or later, it is written as told', () => {
    for (const on of ['2026-11-23', '2026-11-24']) expect(seen().do('dana', died(on))).toEqual([]);
  });
});
