/** Steps typed in later, from the day sheet after the network was down: both times are kept, and nothing is let off. */
import { describe, expect, test } from 'vitest';
import { type Act, day, taskRows, teaching } from '@twelvemonth/clinical';
import { DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';

const at = (time: string): string => `2026-11-26T${time}:00.000+00:00`;
const decide: Act = { name: 'decide', patient: 'p1', decision: 'go' };
/** The visit up to the questions, written at 08:45; it is 11:00 when the paper is typed in. */
const paper = (): DayUnit => onTheDay().arrive().observed().asked().at('2026-11-26T11:00:00.000Z');

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
    step('flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' }, '09:13');
    step('preparation', unit.pack(), '09:15');
    const check = unit.check();
    expect(unit.refused('imre', { ...check, happenedAt: at('09:14') } as Act)).toEqual(['step-out-of-order']);
    expect(unit.refused('dana', { ...check, happenedAt: at('09:16') } as Act)).toEqual(['checker-is-preparer']);
    unit.expect('imre', { ...check, happenedAt: at('09:16') } as Act);
    expect(unit.refused('dana', { ...startInfusion, happenedAt: at('09:15') })).toEqual(['step-out-of-order']);
    unit.expect('dana', { ...startInfusion, happenedAt: at('09:20') });
    const finish = { name: 'finish infusion', patient: 'p1', milliliters: 100 } as const;
    expect(unit.refused('dana', { ...finish, happenedAt: at('09:52') })).toEqual(['cannot-be-measured']);
    expect(unit.refused('dana', { ...finish, happenedAt: at('09:19'), timedBy: 'x' })).toContain('step-out-of-order');
    unit.expect('dana', { ...finish, happenedAt: at('09:52'), timedBy: 'Dana, wall clock of the bay, 32 minutes' });
    expect(unit.newest('dose').at).toBe(at('09:52'));
    expect(unit.newest('dose').recordedAt.slice(11, 16)).toBe('11:00');
    expect(unit.newest('infusion-finished').body.ranSeconds).toBeUndefined();
    expect(unit.newest('dose').body.minutes).toBe(32);
  });
  // EU product text 4.2: not under 15 minutes (the teaching protocol's number). That it happened is written, never passed over.
  describe('by its typed times it ran too fast', () => {
    const started = (): DayUnit => {
      const unit = onTheDay().go().prepared();
      unit.expect('imre', unit.check());
      unit.at('2026-11-26T11:00:00.000Z').expect('dana', { ...startInfusion, happenedAt: at('10:00') });
      return unit;
    };
    const ended = (time: string, more: object = {}): Act => ({
      name: 'finish infusion',
      patient: 'p1',
      milliliters: 100,
      timedBy: 'Dana, wall clock of the bay',
      happenedAt: at(time),
      ...more,
    });
    test('it is asked about, a second short of the least minutes as well', () => {
      expect(started().refused('dana', ended('10:05'))).toEqual(['ran-too-fast']);
      expect(
        started().refused('dana', { ...ended('10:14'), happenedAt: '2026-11-26T10:14:59.000+00:00' } as Act),
      ).toEqual(['ran-too-fast']);
      expect(started().refused('dana', ended('10:15'))).toEqual([]);
    });
    test('of a part of the bag the same part of the minutes: 60 mL take 9 of 15', () => {
      const part = { milliliters: 60, stoppedBecause: 'swelling' };
      expect(started().refused('dana', ended('10:08', part))).toEqual(['ran-too-fast']);
      expect(started().refused('dana', ended('10:09', part))).toEqual([]);
    });
    test('if the times are right it is written as an incident, with its minutes, and the nurse in charge looks at it', () => {
      const unit = started();
      unit.expect('dana', ended('10:05', { incident: 'clamp open, told Imre and the prescriber' }));
      const dose = unit.newest('dose');
      expect(dose.body).toMatchObject({ minutes: 5, incident: 'clamp open, told Imre and the prescriber' });
      const tasks = () =>
        taskRows(unit.patient(), teaching, day('2026-11-26')).map(({ columns }) => [columns['task'], columns['owner']]);
      expect(tasks()).toContainEqual(['look at the incident', 'nurse in charge']);
      unit.write('imre', 'looked-again', { about: dose.id, finding: 'creatinine repeated on day 3: unchanged' });
      expect(tasks()).not.toContainEqual(['look at the incident', 'nurse in charge']);
    });
    test('a start typed in later and a finish now are told apart by the wall clock', () => {
      const now: Act = { name: 'finish infusion', patient: 'p1', milliliters: 100, timedBy: 'x' };
      const unit = onTheDay().go().prepared();
      unit.expect('imre', unit.check());
      unit.wait(10).expect('dana', { ...startInfusion, happenedAt: at('08:50') });
      expect(unit.now.slice(11, 16) < '09:05').toBe(true);
      expect(unit.refused('dana', now)).toEqual(['ran-too-fast']);
      unit.wait(15).expect('dana', now);
    });
    test('a whole dose written by hand with too few minutes is asked about in the same words', () => {
      const unit = new DayUnit().ready();
      const dose = { medicine: 'zoledronic acid 5 mg', setting: 'ward', minutes: 14 };
      const names = (more: object) => unit.line('dana', 'dose', { ...dose, ...more }).map(({ name }) => name);
      expect(names({})).toEqual(['ran-too-fast']);
      expect(names({ incident: 'told by the ward, they have reported it' })).toEqual([]);
    });
  });
  describe('the second signature stands on paper', () => {
    /** Prepared by Dana at 09:15; she types in what happened at 11:00. */
    const prepared = (): DayUnit => {
      const unit = onTheDay().go().prepared();
      return unit.at('2026-11-26T11:00:00.000Z');
    };
    const onPaper = (unit: DayUnit, who: string, more: object = {}): Act =>
      ({ ...unit.check(), signedOnPaperBy: who, happenedAt: at('10:00'), ...more }) as Act;
    test('it is typed in by who gave the dose, and is theirs who signed', () => {
      const unit = prepared();
      unit.expect('dana', onPaper(unit, 'imre'));
      const check = unit.newest('second-check');
      expect([check.author.staff, check.body.signedOnPaperBy]).toEqual(['dana', 'imre']);
      expect(check.body.agrees).toBe(true);
      unit.expect('dana', { ...startInfusion, happenedAt: at('10:05') });
    });
    test.each(['dana'])('%s, who prepared it, signed both: refused', (who) => {
      const unit = prepared();
      expect(unit.refused('imre', onPaper(unit, who))).toEqual(['checker-is-preparer']);
    });
    test('it needs the time that stands on the sheet', () => {
      const unit = prepared();
      expect(unit.refused('dana', onPaper(unit, 'imre', { happenedAt: undefined }))).toEqual(['field-wrong']);
    });
    test('no infusion starts now on it: nobody has proven who checked', () => {
      const unit = prepared();
      unit.expect('dana', onPaper(unit, 'imre'));
      expect(unit.refused('dana', startInfusion)).toContain('check-on-paper-only');
    });
    test('the nurse in charge sees the sheet and says so', () => {
      const unit = prepared();
      unit.expect('dana', onPaper(unit, 'imre'));
      const tasks = () => taskRows(unit.patient(), undefined, day('2026-11-26')).map(({ columns }) => columns['task']);
      expect(tasks()).toContain('see the signature on paper');
      const { id } = unit.newest('second-check');
      unit.write('imre', 'looked-again', { about: id, finding: 'both signatures are on the sheet of bay 2' });
      expect(tasks()).not.toContain('see the signature on paper');
    });
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
    unit.expect('dana', { ...startInfusion, happenedAt: at('08:50') });
    expect(unit.refused('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 })).toEqual([
      'cannot-be-measured',
    ]);
  });
});
