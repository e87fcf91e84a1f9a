/** The drip ends before its time: what ran too fast is told, and who got nothing is not lost. Hazards 29, 31. */
import { type Act, day, outcomeOf, taskRows, teaching, visitOn } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

const stop = (milliliters: number, more: object = {}): Act => ({
  name: 'finish infusion',
  patient: 'p1',
  milliliters,
  stoppedBecause: 'felt unwell',
  ...more,
});
const visit = (unit: DayUnit) => visitOn(unit.patient(), day(unit.today()));

// EU product text 4.2: the whole of 100 mL in not under 15 minutes; of a part the same part of the minutes (computed).
describe('a part of the bag, timed by the clock', () => {
  test.each([
    [95, 1, ['ran-too-fast']],
    [60, 8, ['ran-too-fast']],
    [60, 9, []],
    [100, 14, ['too-early-to-finish']],
  ])('%d mL in %d minutes', (milliliters, minutes, names) =>
    expect(onTheDay().running().wait(minutes).refused('dana', stop(milliliters))).toEqual(names),
  );
  test('the pause does not count: 60 mL in 8 minutes, paused for ten', () => {
    const unit = onTheDay().running().wait(8);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'she asked' });
    expect(unit.wait(10).refused('dana', stop(60))).toEqual(['ran-too-fast']);
  });
  test('if so much has run it is written as an incident, and the nurse in charge looks at it', () => {
    const unit = onTheDay().running().wait(1);
    const [refused] = unit.do('dana', stop(95));
    expect([refused?.field, refused?.says]).toEqual([
      'incident',
      'By the clock 95 mL ran in 1 min; the whole bag takes at least 15 minutes.',
    ]);
    unit.expect('dana', stop(95, { incident: 'clamp open, told Imre' }));
    expect(unit.newest('dose').body).toMatchObject({
      partMilliliters: 95,
      minutes: 1,
      incident: 'clamp open, told Imre',
    });
    const tasks = taskRows(unit.patient(), teaching, day(unit.today())).map(({ columns }) => columns['task']);
    expect(tasks).toContain('look at the incident');
  });
});

describe('ended before anything ran in', () => {
  const ended = (): DayUnit => {
    const unit = onTheDay().running();
    unit.expect('dana', stop(0));
    unit.write('dana', 'cannula-removed', { site: 'looks well' });
    return unit;
  };
  test('they do not leave before somebody says why, what comes next and whose it is', () => {
    const unit = ended();
    unit.write('dana', 'observed', { minutes: 5, well: true });
    const [refused] = unit.line('dana', 'left', { cardGiven: true });
    expect([refused?.name, refused?.remedy]).toEqual([
      'step-out-of-order',
      'put the dose off with the reason, then they can leave',
    ]);
    unit.expect('dana', putOff('no cannula'));
    unit.write('dana', 'left', { cardGiven: true });
    expect(outcomeOf(visit(unit))).toBe('put off');
    const tasks = taskRows(unit.patient(), teaching, day(unit.today())).map(({ columns }) => [
      columns['task'],
      columns['owner'],
    ]);
    expect(tasks.filter(([, owner]) => owner === 'nurse').map(([task]) => task)).toContain('see to what was put off');
  });
  test('it is no dose, and nothing is started again: the end says so', () => {
    const [refused] = ended().do('dana', startInfusion);
    expect([refused?.name, refused?.says]).toEqual([
      'step-already-done',
      'The drip was ended today before anything ran in.',
    ]);
  });
  test('where something ran in, nothing is put off: a prescriber says whether it counts', () => {
    const unit = onTheDay().running().wait(9);
    unit.expect('dana', stop(50));
    expect(unit.refused('dana', putOff('no cannula'))).toEqual(['step-already-done']);
  });
  test('and while it runs it is not put off', () =>
    expect(onTheDay().running().refused('dana', putOff('no cannula'))).toEqual(['step-already-done']));
});
