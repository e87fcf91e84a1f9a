/** When those who had a first dose are asked how they are: safety rules, "first-timers of a Thursday are called Friday and Monday". */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Aftercare,
  type BodyOfKind,
  type Day,
  type Fact,
  type UnitCalendar,
  addDays,
  aftercareLines,
  aftercareOf,
  contactsAfter,
  dangerSignNames,
  day,
  entryText,
  everyDay,
  isAdviceLineDay,
  plainDate,
  reactionSymptoms,
  taskRows,
  teaching,
} from '@twelvemonth/clinical';
import { DayUnit, type Person } from '../decide/a-day-unit.ts';

const weekdays: UnitCalendar = { ...everyDay, adviceLineWeekdays: [1, 2, 3, 4, 5] };
const usual = { firstDays: 1, lastDays: 3 };
const dated = (dosedOn: string, calendar: UnitCalendar = weekdays): string[] =>
  contactsAfter(day(dosedOn), usual, calendar).map(({ from, by }) => `${plainDate(from)} to ${plainDate(by)}`);

describe('on which days', () => {
  test('a Thursday’s dose: Friday and Monday', () => {
    expect(dated('2026-11-26')).toEqual(['2026-11-27 to 2026-11-27', '2026-11-30 to 2026-11-30']);
  });
  test('a Tuesday’s: once, from Wednesday to Friday', () => {
    expect(dated('2026-11-24')).toEqual(['2026-11-25 to 2026-11-27']);
  });
  test('a Friday’s: Monday, the third day', () => {
    expect(dated('2026-11-27')).toEqual(['2026-11-30 to 2026-11-30']);
  });
  test('a day that is closed counts as no day: a Tuesday before two closed days is called after them', () => {
    const closed = { ...weekdays, closedDays: [day('2026-12-24'), day('2026-12-25')] };
    expect(dated('2026-12-22', closed)).toEqual(['2026-12-23 to 2026-12-23', '2026-12-28 to 2026-12-28']);
    expect(dated('2026-12-23', closed)).toEqual(['2026-12-28 to 2026-12-28']);
  });
  test('every contact is on open days, after the dose, and the last is on the last day or the first open one after it', () => {
    const calendars = fc.record({
      weekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }),
      closed: fc.array(fc.integer({ min: 0, max: 20 })),
    });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), calendars, (offset, of) => {
        const on = addDays(day('2026-01-01'), offset);
        const calendar = {
          ...everyDay,
          adviceLineWeekdays: of.weekdays,
          closedDays: of.closed.map((days) => addDays(on, days)),
        };
        const contacts = contactsAfter(on, usual, calendar);
        for (const { from, by } of contacts) {
          expect(isAdviceLineDay(calendar, from) && isAdviceLineDay(calendar, by)).toBe(true);
          expect(from > on && from <= by).toBe(true);
        }
        const last = contacts[contacts.length - 1]?.by as Day;
        expect(last).toBeGreaterThanOrEqual(addDays(on, 3));
        for (let between = addDays(on, 3); between < last; between = addDays(between, 1))
          expect(isAdviceLineDay(calendar, between)).toBe(false);
      }),
    );
  });
});

type Asked = Extract<BodyOfKind<'aftercare'>, { outcome: 'asked' }>;
const dosed = (): DayUnit => {
  const unit = new DayUnit().ready();
  unit.at('2026-11-26T10:00:00.000Z').write('dana', 'dose', {
    medicine: 'zoledronic acid 5 mg',
    setting: 'this service',
    batch: 'PA-2391',
  });
  return unit;
};
const answers = (unit: DayUnit, more: Partial<Asked> = {}): Asked => ({
  outcome: 'asked',
  dose: unit.newest('dose').first,
  how: 'telephone',
  toldBy: 'the person',
  feels: 'as before the dose',
  felt: [],
  notFelt: reactionSymptoms,
  signs: [],
  notSigns: dangerSignNames,
  drinks: 'as usual or more',
  paracetamol: 'none',
  ...more,
});
const now = (unit: DayUnit): Aftercare | undefined =>
  aftercareOf(unit.patient(), teaching, weekdays, day(unit.today()));
const waits = (unit: DayUnit): string | undefined => {
  const found = now(unit);
  return found?.waitsFor === undefined ? undefined : plainDate(found.tryOn as Day);
};
const missed = { route: 'telephone', about: 'aftercare', reached: false };
const tried = (unit: DayUnit, body: unknown, kind: Fact['kind'] = 'aftercare', who: Person = 'dana') =>
  unit.line(who, kind, body).map(({ name }) => name);

describe('what has come of it', () => {
  test('asked on Friday, asked again on Monday, then nothing waits', () => {
    const unit = dosed();
    expect(waits(unit)).toBe('2026-11-27');
    unit.at('2026-11-27T10:00:00.000Z').write('dana', 'aftercare', answers(unit));
    expect(waits(unit)).toBe('2026-11-30');
    unit.at('2026-11-30T10:00:00.000Z').write('dana', 'aftercare', answers(unit));
    expect(waits(unit)).toBeUndefined();
  });
  test('a call in vain is counted and the next try has a date: the agreed one, else the next open day', () => {
    const unit = dosed().at('2026-11-27T10:00:00.000Z');
    unit.write('bettina', 'call', missed);
    expect([waits(unit), now(unit)?.attempts.length]).toEqual(['2026-11-30', 1]);
    unit.at('2026-11-30T10:00:00.000Z').write('bettina', 'call', { ...missed, callBackOn: '2026-12-02' });
    expect([waits(unit), now(unit)?.attempts.length]).toEqual(['2026-12-02', 2]);
    const tasks = taskRows(unit.patient(), teaching, day(unit.today()), weekdays).map(({ columns }) => columns['task']);
    expect(tasks).toContain('aftercare call');
    expect(tasks, 'told once').not.toContain('call back');
  });
  test('the line went dead before a danger sign was asked: it is no contact', () => {
    const unit = dosed().at('2026-11-27T10:00:00.000Z');
    unit.write('dana', 'aftercare', answers(unit, { notSigns: dangerSignNames.slice(1) }));
    expect(waits(unit)).toBe('2026-11-27');
    expect(now(unit)?.broken).toHaveLength(1);
    expect(entryText(unit.newest('aftercare'))).toMatch(/not asked: trouble breathing or swelling$/);
  });
  test('a nurse stops asking, with a reason', () => {
    const unit = dosed().at('2026-12-02T10:00:00.000Z');
    const reason = 'three calls, a letter; the family doctor saw her well';
    unit.write('dana', 'aftercare', { outcome: 'not asked further', dose: unit.newest('dose').first, reason });
    expect(waits(unit)).toBeUndefined();
  });
  test('nobody is asked after a dose given elsewhere, nor after a second one', () => {
    const unit = new DayUnit().ready();
    const dose = { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' };
    unit.write('dana', 'dose', dose, '2025-11-20');
    expect(now(unit)).toBeUndefined();
    unit.write('dana', 'dose', { ...dose, setting: 'this service', batch: 'PA-2391' });
    expect(now(unit)).toBeUndefined();
  });
});

describe('answers', () => {
  const fever = { what: 'fever or shivering', beganOn: '2026-11-26', severity: 'moderate' } as const;
  test.each([
    ['began before the drip', { felt: [{ ...fever, beganOn: '2026-11-25' }] }],
    ['is still to begin', { felt: [{ ...fever, beganOn: '2026-11-28' }] }],
    ['ended before it began', { felt: [{ ...fever, beganOn: '2026-11-27', endedOn: '2026-11-26' }] }],
    ['both felt and not felt', { felt: [fever], notFelt: reactionSymptoms }],
    ['a sign both yes and no', { signs: ['palpitations'] }],
  ])('%s: refused', (_, more) => {
    const unit = dosed().at('2026-11-27T10:00:00.000Z');
    const rest = reactionSymptoms.filter((one) => one !== 'fever or shivering');
    expect(tried(unit, { ...answers(unit, { notFelt: rest }), ...more })).toEqual(['field-wrong']);
  });
  test('about a dose that is not there: refused', () => {
    const unit = dosed().at('2026-11-27T10:00:00.000Z');
    expect(tried(unit, { ...answers(unit), dose: 'nowhere' })).toEqual(['no-such-entry']);
  });

  test('a red flag stands on the list until it is written to whom it was passed on', () => {
    const unit = dosed().at('2026-11-27T10:00:00.000Z');
    const rest = dangerSignNames.filter((sign) => sign !== 'tingling or cramps');
    const told = answers(unit, { signs: ['tingling or cramps'], notSigns: rest });
    for (const { kind, body } of aftercareLines(told, day(unit.today()))) unit.write('dana', kind, body);
    const tasks = () =>
      taskRows(unit.patient(), teaching, day(unit.today())).map(({ columns }) => String(columns['task']));
    expect(tasks()).toContain('pass on the red flag');
    // The sign itself holds every dose until somebody has looked into it.
    expect(tasks()).toContain('clear the symptom');
    const passedOn = {
      about: unit.newest('aftercare').first,
      to: 'Dr Finch',
      theyWill: 'calcium',
      personWasTold: 'come',
    };
    unit.write('dana', 'red-flag-passed-on', passedOn);
    expect(tasks()).not.toContain('pass on the red flag');
    expect(tasks()).toContain('clear the symptom');
  });

  test('what was felt becomes one reaction, as bad as its worst, as long as from the first to the last day', () => {
    const unit = dosed();
    const felt = [
      { ...fever, endedOn: '2026-11-28' },
      { what: 'headache', beganOn: '2026-11-27', severity: 'severe', endedOn: '2026-11-29' },
    ] as unknown as Asked['felt'];
    const reaction = (one: Asked['felt']) =>
      aftercareLines(answers(unit, { felt: one }), day('2026-11-30')).find(({ kind }) => kind === 'reaction')?.body;
    expect(reaction(felt)).toEqual({ what: 'fever or shivering and headache', days: 4, severity: 'severe' });
    expect(reaction([fever] as unknown as Asked['felt']), 'not over: no length').toEqual({
      what: 'fever or shivering',
      severity: 'moderate',
    });
    expect(reaction([])).toBeUndefined();
  });
});
