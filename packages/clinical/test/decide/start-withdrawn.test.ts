/**
 * A start that is withdrawn lets a whole bag be made ready again: "never over 5 mg in all" (the unit's safety rules) holds only
 * where nothing of the first ran in, and whoever withdraws it is asked.
 */
import type { Act } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const withdraw = (unit: DayUnit): Extract<Act, { name: 'withdraw' }> => ({
  name: 'withdraw',
  patient: 'p1',
  entry: unit.newest('infusion-started').id,
  reason: 'pressed at the wrong chair',
});

describe('the start of a drip', () => {
  test('is withdrawn only by somebody who says that nothing ran in', () => {
    const unit = onTheDay().running().wait(3);
    const [asked, ...others] = unit.do('dana', withdraw(unit));
    expect(others).toEqual([]);
    expect(asked?.name).toBe('is-it-right');
    expect(asked?.says).toMatch(/^By the notes this drip began to run at \d\d:\d\d: .*nothing of that bag has run/);
    expect(asked?.remedy).toMatch(/^if anything ran in, end the drip with its volume/);
    expect(unit.newest('infusion-started').kind).toBe('infusion-started');
    unit.expect('dana', { ...withdraw(unit), confirms: [asked?.says ?? ''] });
    expect(unit.patient().facts.get('infusion-started') ?? []).toEqual([]);
  });
  test('what was confirmed of one start is not confirmed of another', () => {
    const unit = onTheDay().running().wait(3);
    const refused = unit.do('dana', { ...withdraw(unit), confirms: ['that nothing ran in'] });
    expect(refused.map(({ name }) => name)).toEqual(['is-it-right']);
  });
});
