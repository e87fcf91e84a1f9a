/** The drip from its start to its end, with pauses and part of a bag. */
import { describe, expect, test } from 'vitest';
import { day, factsOf, outcomeOf, visitOn } from '@twelvemonth/clinical';
import { DayUnit, onTheDay, people, resumeInfusion } from './a-day-unit.ts';
import { finish, start } from './visit-acts.ts';

describe('the drip', () => {
  test('who prescribed it does not give it (40)', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    expect(unit.refused({ staff: people.halina.staff, role: 'nurse' }, start())).toEqual(['prescriber-may-not-give']);
  });
  test('planned under 15 minutes is refused, 15 is not', () => {
    const prepared = (minutes: number): DayUnit => {
      const unit = onTheDay().go();
      unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
      unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
      expect(unit.line('dana', 'preparation', unit.pack({ minutes }))).toHaveLength(minutes < 15 ? 1 : 0);
      return unit;
    };
    expect(prepared(14).refused('dana', start(14))).toContain('under-the-minimum-minutes');
    const unit = prepared(15);
    unit.expect('imre', unit.check({ minutes: 15 }));
    unit.expect('dana', start(15));
  });
  test('it runs as it was prepared and checked: other minutes, shorter or longer, were read by nobody', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    for (const minutes of [15, 29, 31, 240]) {
      const [refused] = unit.do('dana', start(minutes));
      expect([refused?.name, refused?.field, refused?.says]).toEqual([
        'field-wrong',
        'plannedMinutes',
        'it was prepared and checked to run in 30 minutes',
      ]);
    }
    unit.expect('dana', start(30));
  });
  test('a fact that changed since the go stops the start: a result withdrawn, a symptom told', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    const creatinine = factsOf(unit.patient(), 'result').find(({ body }) => body.analyte === 'creatinine');
    unit.expect('imre', {
      name: 'withdraw',
      patient: 'p1',
      entry: creatinine?.id ?? '',
      reason: 'sample of another patient',
    });
    expect(unit.refused('dana', start())).toContain('cannot-say');
    const other = onTheDay().go().prepared();
    other.expect('imre', other.check());
    other.write('dana', 'symptom', { what: 'thigh, hip or groin pain' });
    expect(other.refused('dana', start())).toEqual(['not-ready']);
  });
  test('hazard 33: something with calcium in the line keeps it from starting, and it is asked each time', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
    const flush = { milliliters: 10, ranFreely: true, when: 'before' };
    expect(unit.line('dana', 'flush', flush)).toMatchObject([{ field: 'line.body.calciumInLine' }]);
    unit.write('dana', 'flush', { ...flush, calciumInLine: true });
    unit.write('dana', 'preparation', unit.pack());
    unit.expect('imre', unit.check());
    expect(unit.refused('dana', start())).toEqual(['step-out-of-order']);
    unit.write('dana', 'flush', { ...flush, calciumInLine: false });
    unit.expect('dana', start());
  });
  test('a flush that did not run freely keeps it from starting', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
    unit.write('dana', 'flush', { milliliters: 5, ranFreely: false, calciumInLine: false, when: 'before' });
    unit.write('dana', 'preparation', unit.pack());
    unit.expect('imre', unit.check());
    expect(unit.refused('dana', start())).toEqual(['step-out-of-order']);
  });
  test('all 100 mL under 15 minutes of running is refused, and says how long is left (29)', () => {
    const unit = onTheDay().running().wait(14);
    const [refusal] = unit.do('dana', finish());
    expect(refusal).toMatchObject({ name: 'too-early-to-finish' });
    expect(refusal?.says).toContain('1 min');
    unit.wait(1);
    unit.expect('dana', finish());
  });
  test('paused minutes do not count', () => {
    const unit = onTheDay().running().wait(10);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'swelling at the site' });
    unit.wait(20);
    expect(unit.refused('dana', finish())).toEqual(['too-early-to-finish']);
    unit.expect('dana', resumeInfusion);
    unit.wait(4);
    expect(unit.refused('dana', finish())).toEqual(['too-early-to-finish']);
    unit.wait(1);
    unit.expect('dana', finish());
    expect(unit.newest('infusion-finished').body.ranSeconds).toBe(15 * 60);
  });
  test('a wall clock put forward does not shorten it', () => {
    const unit = onTheDay().running();
    const started = unit.now;
    unit.wait(5);
    const bootedAt = Date.parse(unit.bootedAt);
    unit.at('2026-11-26T11:00:00.000Z');
    unit.bootedAt = new Date(bootedAt + Date.parse(unit.now) - Date.parse(started) - 5 * 60_000).toISOString();
    expect(unit.refused('dana', finish())).toEqual(['too-early-to-finish']);
  });
  test('when no clock survives a person times it, and it is kept', () => {
    const unit = onTheDay().running().wait(20);
    unit.boot = 'b2';
    unit.bootedAt = '2026-11-26T08:00:00.000Z';
    unit.at('2026-11-26T08:40:00.000Z');
    expect(unit.refused('dana', finish())).toContain('cannot-be-measured');
    unit.expect('dana', finish({ timedBy: 'Dana Whitlock, wall clock in the bay' }));
    expect(unit.newest('infusion-finished').body).toMatchObject({ timedBy: 'Dana Whitlock, wall clock in the bay' });
    expect(unit.newest('infusion-finished').body.ranSeconds).toBeUndefined();
    expect(unit.newest('dose').body.minutes).toBeUndefined();
  });
  test('stopped early: volume and reason, a part dose that a prescriber has to judge (31)', () => {
    const unit = onTheDay().running().wait(8);
    expect(unit.refused('dana', finish({ milliliters: 50 }))).toEqual(['field-wrong']);
    unit.expect('dana', finish({ milliliters: 50, stoppedBecause: 'swelling, cannula lost' }));
    expect(unit.newest('dose').body).toMatchObject({ partMilliliters: 50, batch: 'PA-2391' });
    expect(outcomeOf(visitOn(unit.patient(), day(unit.today())))).toBe('part given');
  });
  test('nothing given is no dose', () => {
    const unit = onTheDay().running();
    unit.expect('dana', finish({ milliliters: 0, stoppedBecause: 'cannula lost at once' }));
    expect(factsOf(unit.patient(), 'dose')).toEqual([]);
  });
  test('more than the bag holds is refused', () => {
    expect(
      onTheDay()
        .running()
        .wait(40)
        .refused('dana', finish({ milliliters: 101 })),
    ).toEqual(['more-than-the-dose']);
  });
  test('a cannula placed again during a pause is flushed before it runs again', () => {
    const unit = onTheDay().running().wait(5);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'swelling' });
    unit.write('dana', 'cannula-removed', { site: 'swollen' });
    unit.write('dana', 'cannula', { site: 'left forearm', gauge: '22', tries: 1, placed: true });
    expect(unit.refused('dana', resumeInfusion)).toEqual(['step-out-of-order']);
    unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
    unit.expect('dana', resumeInfusion);
  });
});
