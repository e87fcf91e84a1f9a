/**
 * The visit through `decide`: what may not happen at the chair. Rules: the safety page ("What nobody can make an exception
 * for", "The day"), practice section 3 hazards 23 to 31, 38 and 40 (numbers in the names), shortest time 15 minutes
 * (product text EU/UK 4.2, as the teaching protocol has it).
 */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  day,
  factsOf,
  nextActs,
  outcomeOf,
  RULE_SET,
  teaching,
  visitOn,
  visitToday,
} from '@twelvemonth/clinical';
import { as, DayUnit, onTheDay, resumeInfusion } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';
import { decision, finish, names, start, steps } from './visit-acts.ts';

describe('a visit from arrival to leaving', () => {
  test('every step in its order, and the dose with its batch at the end', () => {
    const unit = onTheDay().running().wait(31);
    unit.expect('dana', finish());
    unit.write('dana', 'cannula-removed', { site: 'looks well' });
    unit.write('sunniva', 'observed', { minutes: 30, well: true });
    unit.write('sunniva', 'left', { cardGiven: true });
    const visit = visitToday(unit.patient(), day(unit.today()));
    expect(visit?.steps.every(({ state }) => state === 'done')).toBe(true);
    expect(visit?.steps).toHaveLength(12);
    expect(visit?.dose?.body).toMatchObject({
      medicine: 'zoledronic acid 5 mg',
      setting: 'this service',
      batch: 'PA-2391',
      minutes: 31,
    });
    expect(outcomeOf(visit)).toBe('given');
  });
  test('the strip says whose turn it is', () => {
    const unit = onTheDay();
    expect(visitOn(unit.patient(), day(unit.today()))).toBeUndefined();
    unit.arrive();
    expect(steps(unit)).toMatch(/^arrive done, observations waiting, checklist to come/);
    unit.observed().asked();
    unit.expect('dana', decision('ask a prescriber', { note: 'which clearance decides?' }));
    expect(steps(unit)).toContain('decision running, cannula to come');
    unit.expect('dana', decision('go'));
    unit.prepared();
    expect(steps(unit)).toContain('preparation done, second check waiting, infusion to come');
    const visit = visitOn(unit.patient(), day(unit.today()));
    if (visit === undefined) throw new Error('no visit');
    expect(nextActs(visit, teaching, unit.clock())[0]).toMatchObject({ act: 'second check', notBy: 'dana' });
  });
  test('the decision keeps what it was based on', () => {
    const unit = onTheDay().go();
    const { basis } = unit.newest('go-decision').body;
    expect(basis).toEqual({
      on: '2026-11-26',
      knownSeq: unit.entries().length - 1,
      protocolVersion: 'thornbeck-1',
      ruleSet: RULE_SET,
      verdict: 'ready',
    });
  });
});

describe('steps out of order or twice', () => {
  test.each<[string, (unit: DayUnit) => readonly { name: string }[], string]>([
    [
      'nobody arrives without a place that day',
      (unit) =>
        unit.line('sunniva', 'arrived', { session: 'thornbeck-2026-12-01', identifiers: ['full name', 'number'] }),
      'not-booked-there',
    ],
    [
      'nobody arrives at a session that does not exist',
      (unit) => unit.line('sunniva', 'arrived', { session: 'nowhere', identifiers: ['full name', 'number'] }),
      'unknown-session',
    ],
    [
      'one identifier is not two (24)',
      (unit) => unit.line('sunniva', 'arrived', { session: 'thornbeck-2026-11-26', identifiers: ['full name'] }),
      'field-wrong',
    ],
    [
      'nobody arrives twice',
      (unit) =>
        unit
          .arrive()
          .line('sunniva', 'arrived', { session: 'thornbeck-2026-11-26', identifiers: ['full name', 'number'] }),
      'already-here',
    ],
    [
      'observations of someone who is not here',
      (unit) => unit.line('sunniva', 'observations', { when: 'before' }),
      'not-here',
    ],
    [
      'the checklist before observations',
      (unit) => unit.arrive().line('dana', 'checklist', { answers: {} }),
      'step-out-of-order',
    ],
    [
      'the checklist twice',
      (unit) => unit.arrive().observed().asked().line('dana', 'checklist', { answers: {} }),
      'step-already-done',
    ],
    ['go before the questions', (unit) => unit.arrive().observed().do('dana', decision('go')), 'step-out-of-order'],
    [
      'a cannula before go',
      (unit) =>
        unit
          .arrive()
          .observed()
          .asked()
          .line('dana', 'cannula', { site: 'left hand', gauge: '22', tries: 1, placed: true }),
      'step-out-of-order',
    ],
    [
      'a pack before go',
      (unit) => unit.arrive().observed().asked().line('dana', 'preparation', unit.pack()),
      'step-out-of-order',
    ],
    [
      'a flush without a cannula',
      (unit) =>
        unit.go().line('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' }),
      'step-out-of-order',
    ],
    [
      'a second preparation',
      (unit) => unit.go().prepared().line('dana', 'preparation', unit.pack()),
      'step-already-done',
    ],
    ['a start without a second check', (unit) => unit.go().prepared().do('dana', start()), 'step-out-of-order'],
    ['a start twice', (unit) => unit.running().do('dana', start()), 'already-running'],
    [
      'removing the cannula while it runs',
      (unit) => unit.running().line('dana', 'cannula-removed', { site: 'looks well' }),
      'step-out-of-order',
    ],
    [
      'watching before the end',
      (unit) => unit.running().line('dana', 'observed', { minutes: 5, well: true }),
      'step-out-of-order',
    ],
    [
      'leaving with the drip running',
      (unit) => unit.running().line('dana', 'left', { cardGiven: true }),
      'step-out-of-order',
    ],
    ['leaving undecided', (unit) => unit.arrive().line('dana', 'left', { cardGiven: true }), 'step-out-of-order'],
    ['resuming what runs', (unit) => unit.running().do('dana', resumeInfusion), 'already-running'],
    [
      'pausing what does not',
      (unit) => unit.go().do('dana', { name: 'pause infusion', patient: 'p1', reason: 'x' }),
      'not-running',
    ],
    ['finishing what does not run', (unit) => unit.go().do('dana', finish()), 'not-running'],
  ])('%s', (_, act, name) => {
    expect(names(act(onTheDay()))).toContain(name);
  });
  test('leaving with the cannula in', () => {
    const unit = onTheDay().running().wait(31);
    unit.expect('dana', finish());
    const refusals = unit.line('dana', 'left', { cardGiven: true });
    expect(refusals.map(({ says }) => says)).toEqual(['The cannula is still in.']);
  });
  test('after leaving the visit is over', () => {
    const unit = onTheDay().arrive();
    unit.expect('dana', putOff('unwell'));
    unit.write('dana', 'left', { cardGiven: true });
    expect(names(unit.line('dana', 'observations', { pulsePerMinute: 70, when: 'before' }))).toEqual(['visit-over']);
    expect(unit.refused('dana', decision('go'))).toContain('visit-over');
  });
});

describe('corrections at the chair', () => {
  test('what a decision was based on is not changed under it', () => {
    const unit = onTheDay().go();
    const checklist = unit.newest('checklist');
    const amend: Act = {
      name: 'record',
      patient: 'p1',
      amends: checklist.id,
      line: { kind: 'checklist', body: checklist.body, effectiveAt: unit.today() },
    };
    expect(unit.refused('dana', amend)).toEqual(['part-of-a-finished-step']);
    unit.expect('dana', {
      name: 'withdraw',
      patient: 'p1',
      entry: unit.newest('go-decision').id,
      reason: 'asked again',
    });
    unit.expect('dana', amend);
  });
  test('withdrawing a dose withdraws the end of the infusion with it, and the reverse', () => {
    for (const kind of ['dose', 'infusion-finished'] as const) {
      const unit = onTheDay().running().wait(31);
      unit.expect('dana', finish());
      unit.expect('dana', {
        name: 'withdraw',
        patient: 'p1',
        entry: unit.newest(kind).id,
        reason: 'written in the wrong notes',
      });
      expect(factsOf(unit.patient(), 'dose')).toEqual([]);
      expect(visitOn(unit.patient(), day(unit.today()))?.infusion?.finished).toBeUndefined();
    }
  });
  test('the batch of a dose can be corrected later', () => {
    const unit = onTheDay().running().wait(31);
    unit.expect('dana', finish());
    const dose = unit.newest('dose');
    unit.expect('dana', {
      name: 'record',
      patient: 'p1',
      amends: dose.id,
      line: { kind: 'dose', body: { ...dose.body, batch: 'PA-2392' }, effectiveAt: unit.today() },
    });
    expect(visitOn(unit.patient(), day(unit.today()))?.dose?.body.batch).toBe('PA-2392');
  });
  test('students and auditors write nothing at the chair', () => {
    const unit = onTheDay();
    for (const role of ['auditor', 'administrator', 'service lead'] as const) {
      expect(
        names(
          unit.line(as(role), 'arrived', { session: 'thornbeck-2026-11-26', identifiers: ['full name', 'birth date'] }),
        ),
      ).toContain('not-yours-to-do');
    }
  });
});
