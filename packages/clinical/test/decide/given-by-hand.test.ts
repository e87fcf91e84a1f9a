/**
 * A drip of this visit is what its steps made. In one line it would pass over what nobody can make an exception for: the go, the
 * pack, "no second check by another person", "under 15 minutes" (the unit's safety rules).
 */
import { type Act, factsOf } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

const dose = { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' };
const byHand = (unit: DayUnit, more: object = {}) => unit.line('dana', 'dose', { ...dose, ...more });
const finish: Act = { name: 'finish infusion', patient: 'p1', milliliters: 100 };

describe('a drip written by hand', () => {
  test.each<[string, () => DayUnit]>([
    ['arrived, and nothing else', () => onTheDay().arrive()],
    ['decided to go, and nothing prepared', () => onTheDay().go()],
    ['prepared, and not checked', () => onTheDay().go().prepared()],
    ['running', () => onTheDay().running()],
  ])('%s: refused, and nothing is written', (_, come) => {
    const unit = come();
    const [refused] = byHand(unit);
    expect([refused?.name, refused?.remedy]).toEqual([
      'step-out-of-order',
      'go on with the visit; what ran on paper is typed in there, with its times',
    ]);
    expect(factsOf(unit.patient(), 'dose')).toEqual([]);
  });
  test('nor after they were put off and have left, on that day or told later', () => {
    const unit = onTheDay().arrive();
    unit.expect('dana', putOff('unwell'));
    unit.write('dana', 'left', { cardGiven: true });
    for (const at of [unit.now, '2026-11-27T09:00:00.000Z']) {
      const [refused] = unit.at(at).line('dana', 'dose', dose, '2026-11-26');
      expect([refused?.name, refused?.remedy?.slice(0, 32)]).toEqual([
        'step-out-of-order',
        'withdraw “left” with the reason,',
      ]);
    }
  });
  test('one whose end was withdrawn is finished once more, not written in one line', () => {
    const unit = onTheDay().running().wait(31);
    unit.expect('dana', finish);
    unit.expect('dana', { name: 'withdraw', patient: 'p1', entry: unit.newest('dose').id, reason: 'it still runs' });
    expect(byHand(unit).map(({ name }) => name)).toEqual(['step-out-of-order']);
    unit.expect('dana', finish);
    expect(factsOf(unit.patient(), 'dose')).toHaveLength(1);
  });
  test('what was given elsewhere, or when nobody was here, is history', () => {
    expect(byHand(onTheDay().arrive(), { setting: 'elsewhere', batch: undefined })).toEqual([]);
    expect(onTheDay().line('dana', 'dose', dose, '2025-11-20')).toEqual([]);
  });
});
