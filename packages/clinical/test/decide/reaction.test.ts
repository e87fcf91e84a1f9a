/**
 * A reaction at the chair: graded in the common terminology criteria (the texts are checked in formulas/reaction-grade.test.ts;
 * mild, moderate, severe for 1, 2 and 3: their general scale, read), with what became of the infusion and what was done.
 */
import { describe, expect, test } from 'vitest';
import { day, entryText, readiness, visitOn } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay, resumeInfusion } from './a-day-unit.ts';

const seen = (more: object = {}) => ({
  what: 'flushed, short of breath',
  severity: 'moderate',
  term: 'infusion-related reaction',
  grade: 2,
  gradeVersion: '5.0',
  infusion: 'was paused',
  actions: ['infusion stopped', 'oxygen'],
  outcome: 'settled',
  ...more,
});
const stopped = (): DayUnit => {
  const unit = onTheDay().running().wait(4);
  unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'a reaction', because: 'a reaction' });
  return unit;
};
const refusedFields = (unit: DayUnit, more: object) =>
  unit.line('dana', 'reaction', seen(more)).map(({ field }) => field);

test('it reads as one line: grade with its version, the infusion, what was done, how it ended', () => {
  const unit = stopped();
  unit.write('dana', 'reaction', seen());
  expect(entryText(unit.newest('reaction'))).toBe(
    'reaction: flushed, short of breath, moderate; infusion-related reaction grade 2 (CTCAE 5.0); the infusion was paused; infusion stopped and oxygen; settled',
  );
  expect(visitOn(unit.patient(), day(unit.today()))?.reactions).toHaveLength(1);
});
test('what they felt at home is none at the chair', () => {
  const unit = onTheDay().running();
  unit.write('dana', 'reaction', { what: 'aching', severity: 'mild', days: 2 });
  expect(visitOn(unit.patient(), day(unit.today()))?.reactions).toEqual([]);
});

describe('a grade', () => {
  test.each([
    ['without its version', { gradeVersion: undefined }, 'line.body.gradeVersion'],
    ['of nothing', { term: undefined }, 'line.body.term'],
    ['that the term does not have', { term: 'flu-like symptoms', grade: 4, severity: 'severe' }, 'line.body.grade'],
    ['3 called moderate', { grade: 3 }, 'line.body.severity'],
    ['4 called mild', { grade: 4, severity: 'mild' }, 'line.body.severity'],
  ])('%s is refused', (_, more, field) => expect(refusedFields(stopped(), more)).toEqual([field]));
});

test('nobody writes that it was stopped while the screen lets it run', () => {
  const unit = onTheDay().running().wait(4);
  expect(unit.line('dana', 'reaction', seen()).map(({ name }) => name)).toEqual(['step-out-of-order']);
  expect(unit.line('dana', 'reaction', seen({ infusion: 'went on', actions: [] }))).toEqual([]);
});

test('grade 3 holds every later dose until a prescriber has decided about that entry', () => {
  const unit = stopped();
  unit.write('dana', 'reaction', seen({ grade: 3, severity: 'severe', outcome: 'a prescriber took over' }));
  const held = () => {
    const context = unit.surroundings({ staff: 'dana', role: 'nurse' }).context;
    if (context === undefined) throw new Error('no protocol');
    return JSON.stringify(readiness(unit.patient(), context, day(unit.today())));
  };
  expect(held()).toContain('severe reaction');
  const again = resumeInfusion;
  expect(unit.refused('dana', again)).toEqual(['cannot-say']);
  unit.write('halina', 'prescriber-decision', {
    question: 'severe reaction looked into',
    about: unit.newest('reaction').id,
    reason: 'vasovagal, may be given again lying down',
  });
  expect(held()).not.toContain('not decided');
  expect(unit.refused('dana', again)).toEqual([]);
});
