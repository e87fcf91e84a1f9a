/**
 * Nobody whose bone medicine waits for its successor is stopped, paused or closed without it, and nobody like that is without
 * somebody here who looks (the safety page: "Denosumab is a promise with a date"; MHRA, August 2020: not stopped without a
 * specialist's review; romosozumab and teriparatide: what builds bone is lost when nothing holds it).
 */
import { describe, expect, test } from 'vitest';
import { type Standing, addDays, day, plainDate, standingOf, teaching } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
/** Today is 24 November 2026: due on 1 February 2027, to be reached by 1 March. */
const onDenosumab = (): DayUnit => {
  const unit = new DayUnit().register();
  unit.write('imre', 'triage', { outcome: 'accepted' });
  unit.write('dana', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' }, '2026-08-01');
  return unit;
};
const otherTreatment = (dueOn = '2027-02-01') => ({
  outcome: 'other treatment',
  to: 'alendronate',
  dueOn,
  capacity: 'specialist',
  reason: 'kidneys too low for the drip',
});
const closing = { reason: 'goes on with the family doctor', takenOverBy: 'family doctor' };
const now = (unit: DayUnit, after = 0) => standingOf(unit.patient(), teaching, addDays(day(unit.today()), after));

describe('closing while a clock runs', () => {
  test('is refused: it names what has to follow, and by when', () => {
    const unit = onDenosumab();
    const [refusal] = unit.line('imre', 'closed', { reason: 'moved away' });
    expect(refusal).toMatchObject({ name: 'needs-what-follows', remedy: expect.stringContaining('1 Mar 2027') });
    expect(names(unit.line('imre', 'closed', closing)), 'saying who gives it decides nothing').toEqual([
      'needs-what-follows',
    ]);
  });

  test('a review that decided what follows, in time, and somebody who gives it: then it may be', () => {
    const unit = onDenosumab();
    unit.write('halina', 'course-review', otherTreatment());
    expect(unit.line('imre', 'closed', { reason: 'x' })).toMatchObject([
      { name: 'needs-what-follows', field: expect.stringContaining('takenOverBy') },
    ]);
    unit.write('imre', 'closed', closing);
  });

  test.each([
    ['later than it must be reached', '2027-03-02'],
    ['a day that has passed', '2026-11-23'],
  ])('%s is no plan', (_, dueOn) => {
    const unit = onDenosumab();
    unit.write('halina', 'course-review', otherTreatment(dueOn));
    expect(names(unit.line('imre', 'closed', closing))).toEqual(['needs-what-follows']);
  });

  test('at the end of life a prescriber, and nobody else, decides that nothing follows: then it is over', () => {
    const unit = onDenosumab();
    const none = { reason: 'end of life care at home', nothingFollows: 'days to weeks; the family knows the risk' };
    expect(names(unit.line('imre', 'closed', none))).toEqual(['not-yours-to-do']);
    unit.write('halina', 'closed', none);
    expect([now(unit).owner, now(unit).on]).toEqual(['nobody', undefined]);
    expect(now(unit, 400).says).toContain('a prescriber decided that nothing follows: days to weeks');
  });

  test('on the last day in time it is one', () => {
    const unit = onDenosumab();
    unit.write('halina', 'course-review', otherTreatment('2027-03-01'));
    expect(names(unit.line('imre', 'closed', closing))).toEqual([]);
  });

  test('nothing is asked once the successor was begun, or where no clock runs', () => {
    const unit = onDenosumab();
    unit.write('dana', 'medicine', { name: 'alendronate', sort: 'bisphosphonate tablet' }, '2026-11-20');
    unit.write('imre', 'closed', { reason: 'on tablets' });
    const without = new DayUnit().register();
    without.write('imre', 'closed', { reason: 'moved away' });
  });

  test.each([
    ['romosozumab 210 mg', {}],
    ['teriparatide', { until: '2026-11-20' }],
  ])('%s waits for its successor as denosumab does', (medicine, more) => {
    const unit = new DayUnit().register();
    unit.write('imre', 'triage', { outcome: 'accepted' });
    unit.write('dana', 'dose', { medicine, setting: 'elsewhere', ...more }, '2026-11-01');
    expect(names(unit.line('imre', 'closed', { reason: 'x' }))).toEqual(['needs-what-follows']);
    const stop = { outcome: 'stop', capacity: 'specialist', reason: 'x' };
    expect(names(unit.line('halina', 'course-review', stop))).toEqual(['needs-what-follows']);
  });
});

describe('someone closed whose medicine still waits for its successor', () => {
  const planned = (): DayUnit => {
    const unit = onDenosumab();
    unit.write('halina', 'course-review', otherTreatment());
    unit.write('imre', 'closed', closing);
    return unit;
  };

  test('is looked after by the nurse in charge on the day it is due, until it is recorded as begun', () => {
    const unit = planned();
    const { standing, owner, on, says } = now(unit);
    expect([standing, owner, on]).toEqual(['closed', 'nurse in charge', day('2027-02-01')]);
    expect(says).toContain('alendronate decided, due 1 Feb 2027');
    unit.wait(80 * 24 * 60);
    expect(plainDate(now(unit).on ?? day('1900-01-01')), 'once the day has passed: at once').toBe(unit.today());
    unit.write('imre', 'medicine', { name: 'alendronate', sort: 'bisphosphonate tablet' });
    expect(now(unit)).toMatchObject({ standing: 'closed', owner: 'nobody', on: undefined });
  });

  test('an older closing that asked for no plan is looked at by the clock', () => {
    const unit = onDenosumab();
    const [first] = unit.entries();
    if (first === undefined) throw new Error('no notes');
    unit.write('dana', 'medicine', { name: 'alendronate', sort: 'bisphosphonate tablet' }, '2026-11-20');
    unit.write('imre', 'closed', { reason: 'on tablets' });
    unit.write('imre', 'medicine', {
      name: 'alendronate',
      sort: 'bisphosphonate tablet',
      stoppedOn: unit.today(),
    });
    expect(now(unit)).toMatchObject({ standing: 'closed', owner: 'nurse in charge' });
  });
});

describe('no standing waits longer than the clock', () => {
  // Month 5 and no replacement booked: first in line, today.
  const elsewhere: readonly (readonly [Standing, (unit: DayUnit) => void])[] = [
    ['said no', (unit) => unit.write('imre', 'refusal', { to: 'all contact', words: 'no more' })],
    [
      'cannot be reached',
      (unit) => unit.write('imre', 'cannot-be-reached', { tried: 'three calls', lookAgainOn: '2027-10-01' }),
    ],
    ['transferred out', (unit) => unit.write('imre', 'transfer-out', { to: 'another unit', chaseOn: '2027-10-01' })],
  ];
  test.each(elsewhere)('%s', (standing, leave) => {
    const unit = onDenosumab();
    leave(unit);
    const later = now(unit, 50);
    expect(later.standing).toBe(standing);
    expect(later.on).toBe(addDays(day(unit.today()), 50));
    expect(later.says).toContain('denosumab last on 1 Aug 2026');
  });
});
