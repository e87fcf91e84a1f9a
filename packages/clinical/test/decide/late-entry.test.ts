/** Steps typed in later, from the day sheet after the network was down: both times are kept, and nothing is let off. */
import { describe, expect, test } from 'vitest';
import type { Act } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const at = (time: string): string => `2026-11-26T${time}:00.000+00:00`;
const decide: Act = { name: 'decide', patient: 'p1', decision: 'go' };
/** The visit up to the questions, written at 08:45; it is 11:00 when the paper is typed in. */
const paper = (): DayUnit => onTheDay().arrive().observed().asked().at('2026-11-26T11:00:00.000Z');
const start: Act = { name: 'start infusion', patient: 'p1', plannedMinutes: 30 };

describe('a step typed in later', () => {
  test('the decision: when it happened and when it was written', () => {
    const unit = paper();
    unit.expect('dana', { ...decide, happenedAt: at('09:10') });
    const fact = unit.newest('go-decision');
    expect([fact.at, fact.recordedAt]).toEqual([at('09:10'), '2026-11-26T11:00:00.000Z']);
    expect(fact.body.basis.verdict).toBe('ready');
  });
  test.each([['of the time to come', '11:01', 'in-the-future']])('%s is refused', (_, time, name) => {
    expect(paper().refused('dana', { ...decide, happenedAt: at(time) })).toEqual([name]);
  });
  test('the whole dose: check, start and finish at their times, in their order, timed by a person', () => {
    const unit = paper();
    unit.expect('dana', { ...decide, happenedAt: at('09:10') });
    const step = (kind: 'cannula' | 'flush' | 'preparation', body: unknown, time: string): void =>
      unit.write('dana', kind, body, at(time));
    step('cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true }, '09:12');
    step('flush', { milliliters: 10, ranFreely: true, when: 'before' }, '09:13');
    step('preparation', unit.pack(), '09:15');
    const check = unit.check();
    expect(unit.refused('imre', { ...check, happenedAt: at('09:14') } as Act)).toEqual(['step-out-of-order']);
    expect(unit.refused('dana', { ...check, happenedAt: at('09:16') } as Act)).toEqual(['checker-is-preparer']);
    unit.expect('imre', { ...check, happenedAt: at('09:16') } as Act);
    expect(unit.refused('dana', { ...start, happenedAt: at('09:15') })).toEqual(['step-out-of-order']);
    unit.expect('dana', { ...start, happenedAt: at('09:20') });
    const finish = { name: 'finish infusion', patient: 'p1', milliliters: 100 } as const;
    expect(unit.refused('dana', { ...finish, happenedAt: at('09:52') })).toEqual(['cannot-be-measured']);
    expect(unit.refused('dana', { ...finish, happenedAt: at('09:19'), timedBy: 'x' })).toContain('step-out-of-order');
    unit.expect('dana', { ...finish, happenedAt: at('09:52'), timedBy: 'Dana, wall clock of the bay, 32 minutes' });
    expect(unit.newest('dose').at).toBe(at('09:52'));
    expect(unit.newest('dose').recordedAt.slice(11, 16)).toBe('11:00');
    expect(unit.newest('infusion-finished').body.ranSeconds).toBeUndefined();
  });
  test('typed in the next day: it belongs to the day on which it happened', () => {
    const unit = paper().at('2026-11-27T08:00:00.000Z');
    expect(unit.refused('dana', decide)).toEqual(['not-here']);
    unit.expect('dana', { ...decide, happenedAt: at('09:10') });
    expect(unit.newest('go-decision').body.basis.on).toBe('2026-11-26');
  });
  test('a start typed in later is never timed by our clocks, however soon it is finished', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    unit.wait(40);
    unit.expect('dana', { ...start, happenedAt: at('08:50') });
    expect(unit.refused('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 })).toEqual([
      'cannot-be-measured',
    ]);
  });
});
