/** Hazard 71: lymph nodes removed, a fistula, a stroke. The arm is recorded with its reason and is not used without one. */
import { describe, expect, test } from 'vitest';
import { entryText } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const ready = (contact: object): DayUnit => {
  const unit = onTheDay();
  unit.write('dana', 'contact', contact);
  return unit.go();
};
const cannula = (site: string, more: object = {}) => ({ site, gauge: '22', tries: 1, placed: true, ...more });
const left = { armToAvoid: 'left', armToAvoidBecause: 'lymph nodes removed' };

describe('the arm to avoid', () => {
  test.each(['left forearm', 'left hand', 'left elbow'])('%s is refused without a reason', (site) => {
    const [refused, ...more] = ready(left).line('dana', 'cannula', cannula(site));
    expect(more).toEqual([]);
    expect(refused?.name).toBe('arm-to-avoid');
    expect(refused?.says).toBe('The left arm is to be avoided (lymph nodes removed).');
    expect(refused?.field).toBe('line.body.armToAvoidUsedBecause');
  });
  test('the other arm is free, and without an arm to avoid either is', () => {
    expect(ready(left).line('dana', 'cannula', cannula('right forearm'))).toEqual([]);
    expect(ready({}).line('dana', 'cannula', cannula('left forearm'))).toEqual([]);
  });
  test('with a reason it is used, and the notes say why', () => {
    const unit = ready(left);
    unit.write(
      'dana',
      'cannula',
      cannula('left hand', { armToAvoidUsedBecause: 'right arm in plaster; Dr Vale agreed' }),
    );
    expect(entryText(unit.newest('cannula'))).toContain('in the arm to avoid: right arm in plaster; Dr Vale agreed');
    expect(entryText(unit.newest('contact'))).toContain('not the left arm: lymph nodes removed');
  });
});
