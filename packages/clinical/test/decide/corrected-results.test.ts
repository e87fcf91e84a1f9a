/** A result withdrawn or corrected, by the laboratory or by us, reopens the decisions it was part of (safety.md; practice.md hazard 79). */
import { describe, expect, test } from 'vitest';
import { type Act, type Fact, day, factsOf, taskRows, teaching } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const creatinineOf = (unit: DayUnit): Fact<'result'> => {
  const found = factsOf(unit.patient(), 'result').find(({ body }) => body.analyte === 'creatinine');
  if (found === undefined) throw new Error('no creatinine');
  return found;
};
const correction = (of: Fact<'result'>, value: string, on: string): Act => ({
  name: 'record',
  patient: 'p1',
  amends: of.id,
  line: {
    kind: 'result',
    body: { analyte: 'creatinine', quantity: { comparator: '', value, unit: 'umol/L' } },
    effectiveAt: on,
  },
});
const tasks = (unit: DayUnit) =>
  taskRows(unit.patient(), teaching, day(unit.today())).filter(
    ({ columns }) => columns['task'] === 'look at a decision again',
  );

describe('a result that was part of a decision', () => {
  test('corrected: the decisions made before are listed until somebody has looked at them', () => {
    const unit = new DayUnit().ready();
    expect(tasks(unit)).toEqual([]);
    unit.expect('dana', correction(creatinineOf(unit), '140', unit.today()));
    expect(tasks(unit).map(({ columns }) => [columns['owner'], columns['detail']])).toEqual([
      ['nurse in charge', expect.stringMatching(/^1 decision made before this was corrected: creatinine 140 umol\/L/)],
    ]);
    unit.write('imre', 'looked-again', { about: creatinineOf(unit).id, finding: 'the prescription is taken back' });
    expect(tasks(unit)).toEqual([]);
  });
  test('corrected twice: looked at after each', () => {
    const unit = new DayUnit().ready();
    unit.expect('dana', correction(creatinineOf(unit), '140', unit.today()));
    unit.write('imre', 'looked-again', { about: creatinineOf(unit).id, finding: 'taken back' });
    unit.expect('dana', correction(creatinineOf(unit), '97', unit.today()));
    expect(tasks(unit).length).toBe(1);
  });
  test('withdrawn after a correction: every decision since the first value is named', () => {
    const unit = new DayUnit().ready();
    unit.expect('dana', correction(creatinineOf(unit), '97', unit.today()));
    unit.expect('dana', {
      name: 'withdraw',
      patient: 'p1',
      entry: creatinineOf(unit).id,
      reason: 'the laboratory took it back: sample haemolysed',
    });
    expect(unit.newest('withdrawal').body.usedBy).toEqual([unit.newest('prescription').id]);
    expect(tasks(unit).length).toBe(1);
  });
  test('corrected before anybody decided: nothing to look at', () => {
    const unit = new DayUnit().register();
    unit.write('imre', 'triage', { outcome: 'accepted' });
    unit.write('dana', 'result', {
      analyte: 'creatinine',
      quantity: { comparator: '', value: '97', unit: 'umol/L' },
    });
    unit.expect('dana', correction(creatinineOf(unit), '79', unit.today()));
    expect(tasks(unit)).toEqual([]);
  });
  test('the corrected value counts once it is signed itself, whatever stood signed before (R1)', () => {
    const unit = new DayUnit().ready();
    unit.expect('dana', correction(creatinineOf(unit), '80', unit.today()));
    const unsigned = taskRows(unit.patient(), teaching, day(unit.today())).filter(
      ({ columns }) => columns['task'] === 'sign results',
    );
    expect(unsigned.map(({ columns }) => columns['detail'])).toEqual(['creatinine']);
  });
});

test('a prescriber looks into a condition that bears on minerals', () => {
  const unit = new DayUnit().ready();
  unit.write('dana', 'condition', { what: 'malabsorption' });
  unit.write('halina', 'prescriber-decision', {
    question: 'mineral metabolism looked into',
    about: unit.newest('condition').id,
    reason: 'on its diet',
  });
  expect(factsOf(unit.patient(), 'prescriber-decision').length).toBe(1);
});
