/** Nobody put off is lost: what has to be said, and how long the next step stands in somebody's work. */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type Day,
  type PlainDate,
  day,
  plainDate,
  standingOf,
  taskRows,
  teaching,
} from '@twelvemonth/clinical';
import { type DayUnit, onTheDay } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

const fieldsNamed = (unit: DayUnit, act: Act): string[] => unit.do('dana', act).flatMap(({ field }) => field ?? []);
const tasks = (unit: DayUnit) =>
  taskRows(unit.patient(), teaching, day(unit.today())).map(({ columns: { task, owner, due_day: due, detail } }) => ({
    task,
    owner,
    by: plainDate(Number(due) as Day),
    detail,
  }));
const here = (): DayUnit => onTheDay().arrive().observed().asked();
const withReason = (more: Partial<Extract<Act, { name: 'decide' }>> = {}) =>
  putOff('bloods', { nextBy: '2026-11-30' as PlainDate, nextOwner: 'clerk', ...more });

describe('what has to be said', () => {
  test('every question that is open is named on its field, and nothing is written', () => {
    const unit = here();
    expect(fieldsNamed(unit, { name: 'decide', patient: 'p1', decision: 'put off' })).toEqual([
      'reasonCode',
      'couldHaveBeenSeen',
      'nextStep',
      'nextBy',
      'nextOwner',
      'tellsThePatient',
    ]);
    expect(unit.patient().all.map(({ kind }) => kind)).not.toContain('go-decision');
  });
  test('what comes next is not for a day that is over', () => {
    expect(fieldsNamed(here(), withReason({ nextBy: '2026-11-25' as PlainDate }))).toEqual(['nextBy']);
  });
  test('a prescriber is asked something', () => {
    expect(fieldsNamed(here(), { name: 'decide', patient: 'p1', decision: 'ask a prescriber' })).toEqual(['note']);
  });
});

describe('whose it is until it is seen to', () => {
  test('the next step stands with its owner and its day, and who tells the patient', () => {
    const unit = here();
    unit.expect('dana', withReason());
    expect(tasks(unit)).toContainEqual({
      task: 'see to what was put off',
      owner: 'clerk',
      by: '2026-11-30',
      detail: 'put off (bloods): ring them, then another place; who tells the patient: told at the chair',
    });
    unit.write('dana', 'left', { cardGiven: true });
    const { standing, owner, on } = standingOf(unit.patient(), teaching, day(unit.today()));
    expect([standing, owner, on]).toEqual(['put off', 'clerk', day('2026-11-30')]);
  });
  test('another place does not end it; somebody who says that it was seen to does', () => {
    const unit = here();
    unit.expect('dana', withReason());
    const { id } = unit.newest('go-decision');
    unit.write('dana', 'looked-again', { about: id, finding: 'bloods are booked for Monday, she knows' });
    expect(tasks(unit).map(({ task }) => task)).not.toContain('see to what was put off');
  });
  test('a day named far off is looked at by the protocol’s days', () => {
    const unit = here();
    unit.expect('dana', withReason({ nextBy: '2036-11-30' as PlainDate }));
    unit.write('dana', 'left', { cardGiven: true });
    const { on } = standingOf(unit.patient(), teaching, day(unit.today()));
    expect(on).toBe(day(unit.today()) + teaching.number.lookAgainPutOffDays);
  });
  test('a prescriber who was asked has it in their work until it is decided', () => {
    const unit = here();
    unit.expect('dana', { name: 'decide', patient: 'p1', decision: 'ask a prescriber', note: 'which weight decides?' });
    expect(tasks(unit)).toContainEqual(
      expect.objectContaining({
        task: 'answer what was asked at the chair',
        owner: 'prescriber',
        detail: 'which weight decides?',
      }),
    );
    unit.expect('dana', { name: 'decide', patient: 'p1', decision: 'go' });
    expect(tasks(unit).map(({ task }) => task)).not.toContain('answer what was asked at the chair');
  });
});
