/**
 * What a review of the course may decide, and who: safety page ("at six consecutive: a specialist's review, who may continue
 * with a reason"; a planned break has an anchor, an end date and triggers; no planned break while on a steroid of 7.5 mg a day
 * or more). NOGG 2021 and Endocrine Society 2019 for the lengths (`from memory`).
 */
import { describe, expect, test } from 'vitest';
import { type Act, day, factsOf, readKindsOf, standingOf, teaching } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const review = (body: object, effectiveAt = '2026-11-24'): Act => ({
  name: 'record',
  patient: 'p1',
  line: { kind: 'course-review', body: { capacity: 'other prescriber', reason: 'seen', ...body }, effectiveAt },
});
const dosed = (...dates: string[]): DayUnit => {
  const unit = new DayUnit().register();
  unit.write('imre', 'triage', { outcome: 'accepted' });
  for (const on of dates)
    unit.expect('imre', {
      name: 'record',
      patient: 'p1',
      line: { kind: 'dose', body: { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, effectiveAt: on },
    });
  return unit;
};
const three = ['2024-03-14', '2025-03-14', '2026-03-14'];
const six = ['2021-03-14', '2022-03-14', '2023-03-14', ...three];
const pause = (reviewOn: string, more: object = {}) =>
  review({ outcome: 'planned break', reviewOn, triggers: 'a fracture', ...more });

describe('who decided', () => {
  test('a review says in which capacity', () => {
    expect(dosed(...three).refused('halina', review({ outcome: 'stop', capacity: undefined }))).toEqual([
      'field-wrong',
    ]);
  });
  test('what someone else wrote meanwhile of fractures, scans or steroids is seen before it is signed', () => {
    expect(readKindsOf(review({ outcome: 'stop' }))).toEqual(
      expect.arrayContaining(['fracture', 'bone-density', 'medicine', 'symptom', 'result', 'course-review']),
    );
  });
  test('only a prescriber signs one', () => {
    expect(dosed(...three).refused('dana', review({ outcome: 'stop' }))).toEqual(['not-yours-to-do']);
  });
  test('after three doses any prescriber may carry on', () => {
    const unit = dosed(...three);
    unit.expect('halina', review({ outcome: 'carry on', toDoses: 6 }));
    expect(standingOf(unit.patient(), teaching, day('2026-11-24')).standing).toBe('between doses');
  });
  test.each([
    { outcome: 'carry on', toDoses: 7 },
    { outcome: 'new course', plannedDoses: 3 },
  ])('after six in a row only a specialist may let it go on: %j', (body) => {
    const unit = dosed(...six);
    expect(unit.refused('halina', review(body))).toEqual(['a-specialist-decides']);
    unit.expect('halina', review({ ...body, capacity: 'specialist', decidedBy: 'Dr Aldo Finch' }));
    expect(standingOf(unit.patient(), teaching, day('2026-11-24')).standing).not.toBe('in review');
  });
  test('anyone who prescribes may choose a break, another treatment or an end', () => {
    for (const body of [
      { outcome: 'planned break', reviewOn: '2029-03-14', triggers: 'a fracture' },
      { outcome: 'other treatment', to: 'denosumab', dueOn: '2027-01-10' },
      { outcome: 'stop' },
    ])
      expect(dosed(...six).refused('halina', review(body))).toEqual([]);
  });
});

describe('a planned break', () => {
  test('ends after it begins, and at the latest five years after the last infusion', () => {
    expect(dosed(...three).refused('halina', pause('2026-11-24'))).toEqual(['field-wrong']);
    expect(dosed(...three).refused('halina', pause('2031-03-15'))).toEqual(['field-wrong']);
    expect(dosed(...three).refused('halina', pause('2031-03-14'))).toEqual([]);
  });
  test('or after another day it is counted from', () => {
    expect(dosed(...three).refused('halina', pause('2031-11-24', { countedFrom: '2026-11-24' }))).toEqual([]);
    expect(dosed(...three).refused('halina', pause('2031-11-25', { countedFrom: '2026-11-24' }))).toEqual([
      'field-wrong',
    ]);
  });
  const onSteroid = (more: object): DayUnit => {
    const unit = dosed(...three);
    unit.write('dana', 'medicine', { name: 'prednisolone', sort: 'steroid', ...more });
    return unit;
  };
  test.each([[{ prednisoloneMgPerDay: '7.5' }], [{}]])('not while on a steroid: %j', (more) =>
    expect(onSteroid(more).refused('halina', pause('2029-03-14'))).toEqual(['no-break-on-steroid']),
  );
  test.each([[{ prednisoloneMgPerDay: '7.49' }], [{ prednisoloneMgPerDay: '20', stoppedOn: '2026-11-24' }]])(
    'below the dose, or stopped by then, it may: %j',
    (more) => expect(onSteroid(more).refused('halina', pause('2029-03-14'))).toEqual([]),
  );
  test('a lower dose of the same name written since decides', () => {
    const unit = onSteroid({ prednisoloneMgPerDay: '20' });
    unit.write('dana', 'medicine', { name: 'Prednisolone', sort: 'steroid', prednisoloneMgPerDay: '5' });
    expect(unit.refused('halina', pause('2029-03-14'))).toEqual([]);
  });
});

describe('undone', () => {
  test('a review is withdrawn, and what was before stands again', () => {
    const unit = dosed(...three);
    unit.expect('halina', pause('2029-03-14'));
    expect(standingOf(unit.patient(), teaching, day('2026-11-24')).standing).toBe('on planned break');
    unit.expect('halina', {
      name: 'withdraw',
      patient: 'p1',
      entry: unit.newest('course-review').id,
      reason: 'meant for another person',
    });
    expect(standingOf(unit.patient(), teaching, day('2026-11-24')).standing).toBe('in review');
  });
  test('a withdrawal is not withdrawn: the review is written again', () => {
    const unit = dosed(...three);
    unit.expect('halina', pause('2029-03-14'));
    unit.expect('halina', { name: 'withdraw', patient: 'p1', entry: unit.newest('course-review').id, reason: 'x' });
    const withdrawal = unit.entries().findLast(({ kind }) => kind === 'withdrawal');
    expect(
      unit.refused('halina', { name: 'withdraw', patient: 'p1', entry: withdrawal?.id ?? '', reason: 'x' }),
    ).toEqual(['entry-of-another-kind']);
    unit.expect('halina', pause('2029-03-14'));
    expect(factsOf(unit.patient(), 'course-review')).toHaveLength(1);
  });
});
