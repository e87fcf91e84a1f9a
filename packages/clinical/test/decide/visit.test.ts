/**
 * The visit through `decide`: what may not happen at the chair. Rules: the safety page ("What nobody can make an exception
 * for", "The day"), practice section 3 hazards 23 to 31, 38 and 40 (numbers in the names), shortest time 15 minutes
 * (product text EU/UK 4.2, as the teaching protocol has it).
 */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type PlainDate,
  RULE_SET,
  day,
  factsOf,
  nextActs,
  outcomeOf,
  teaching,
  teachingSheet,
  visitOn,
  visitToday,
} from '@twelvemonth/clinical';
import { DayUnit, type Person, as, onTheDay, people, startInfusion, resumeInfusion } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

const decision = (
  which: 'go' | 'put off' | 'ask a prescriber',
  more: Partial<Extract<Act, { name: 'decide' }>> = {},
): Act => ({ name: 'decide', patient: 'p1', decision: which, ...more });
const start = (plannedMinutes = 30): Act => ({ ...startInfusion, plannedMinutes });
const finish = (more: Partial<Extract<Act, { name: 'finish infusion' }>> = {}): Act => ({
  name: 'finish infusion',
  patient: 'p1',
  milliliters: 100,
  ...more,
});
const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const steps = (unit: DayUnit): string =>
  (visitOn(unit.patient(), day(unit.today()))?.steps ?? []).map(({ step, state }) => `${step} ${state}`).join(', ');

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

describe('go needs ready', () => {
  test('an answer that holds is not ready; put off is always possible, with a reason', () => {
    const unit = onTheDay().arrive().observed().asked('p1', { thigh: 'yes' });
    expect(unit.refused('dana', decision('go'))).toEqual(['not-ready']);
    unit.expect('dana', putOff('thigh, hip or groin pain'));
    expect(unit.newest('go-decision').body.basis.verdict).toBe('not ready');
  });
  test('an answer left blank is named on its field, and the step waits', () => {
    const unit = onTheDay().arrive().observed();
    const questions = teachingSheet.dayQuestions;
    const answers = Object.fromEntries(
      questions.map(({ id, holdsOn }) => [id, { answer: holdsOn === 'yes' ? 'no' : 'yes' }]),
    );
    const [first, second, ...others] = questions.map(({ id }) => id);
    const rest = Object.fromEntries(others.map((id) => [id, answers[id]]));
    expect(unit.line('dana', 'checklist', { answers: rest }).map(({ name, field }) => [name, field])).toEqual(
      [first, second].map((id) => ['field-wrong', `line.body.answers.${id}`]),
    );
    expect(steps(unit)).toContain('checklist waiting');
    expect(unit.refused('dana', decision('go'))).toContain('step-out-of-order');
    expect(unit.line('dana', 'checklist', { answers })).toEqual([]);
  });
  test('observations of nothing are none', () => {
    const unit = onTheDay().arrive();
    const [refused] = unit.line('sunniva', 'observations', { when: 'before' });
    expect([refused?.name, refused?.says]).toEqual(['field-wrong', 'nothing was measured or seen']);
    expect(steps(unit)).toContain('observations waiting');
  });
  test('bloods out of date on the day (1): cannot say, whoever asks', () => {
    const unit = new DayUnit().booked();
    unit.plan('thornbeck-2027-02-02', '2027-02-02');
    unit.expect('imre', {
      name: 'move',
      patient: 'p1',
      from: 'thornbeck-2026-11-26',
      to: 'thornbeck-2027-02-02',
      place: 1,
      reason: 'holiday',
      askedBy: 'the patient',
      accepts: { causes: ['kidney-function', 'calcium'], reason: 'bloods will be taken again' },
    });
    unit.at('2027-02-02T08:45:00.000Z');
    unit.write('sunniva', 'arrived', { session: 'thornbeck-2027-02-02', identifiers: ['full name', 'birth date'] });
    unit.observed().asked();
    for (const who of ['imre', 'dana'] as const) expect(unit.refused(who, decision('go'))).toContain('cannot-say');
  });
  test('no protocol in force: cannot say', () => {
    const unit = onTheDay().arrive().observed().asked();
    unit.ledgers.delete('protocol/thornbeck');
    expect(unit.refused('dana', decision('go'))).toEqual(['cannot-say']);
  });
  test.each<Person>(['halina', 'priya', 'bettina', 'sunniva', 'margit', 'edwin'])(
    '%s does not decide at the chair',
    (who) => {
      expect(onTheDay().arrive().observed().asked().refused(who, putOff('unwell'))).toEqual(['not-yours-to-do']);
    },
  );
  test('a go can become a put-off until the medicine runs', () => {
    const unit = onTheDay().go();
    unit.expect('dana', putOff('no cannula'));
    expect(unit.refused('dana', decision('go'))).toContain('step-already-done');
    const late = onTheDay().running();
    expect(late.refused('dana', putOff('unwell'))).toContain('step-already-done');
  });
});

describe('the pack', () => {
  test.each([
    ['the 4 mg product (23)', { product: 'zoledronic acid 4 mg' as const }, 'wrong-product'],
    ['another product', { product: 'another product' as const }, 'wrong-product'],
    ['cloudy', { clearAndColourless: false }, 'wrong-product'],
    ['past its date (37)', { expiresOn: '2026-11-25' as PlainDate }, 'pack-expired'],
    ['under 15 minutes', { minutes: 14 }, 'under-the-minimum-minutes'],
  ])('%s is refused', (_, more, name) => {
    const unit = onTheDay().go();
    expect(names(unit.line('dana', 'preparation', unit.pack(more)))).toEqual([name]);
  });
  test('it may be used through its date, and over exactly 15 minutes', () => {
    const unit = onTheDay().go();
    expect(unit.line('dana', 'preparation', unit.pack({ expiresOn: '2026-11-26' as PlainDate, minutes: 15 }))).toEqual(
      [],
    );
  });
});

describe('the second check', () => {
  test('by the preparer under another role it is still the preparer (25)', () => {
    const unit = onTheDay().go().prepared();
    expect(unit.refused({ staff: people.dana.staff, role: 'nurse in charge' }, unit.check())).toEqual([
      'checker-is-preparer',
    ]);
  });
  test('not by an assistant or a clerk', () => {
    const unit = onTheDay().go().prepared();
    for (const who of ['sunniva', 'bettina'] as const)
      expect(unit.refused(who, unit.check())).toEqual(['not-yours-to-do']);
  });
  test.each([
    ['product', { product: 'zoledronic acid 4 mg' as const }],
    ['batch', { batchLastFour: '2392' }],
    ['expiry', { expiryMonth: '2028-05' }],
    ['minutes', { minutes: 15 }],
  ])('readings that differ in %s are kept, and the start is refused', (what, more) => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check(more));
    expect(unit.newest('second-check').body).toMatchObject({ agrees: false, differs: [what] });
    expect(unit.refused('dana', start())).toEqual(['checks-differ']);
  });
  test('the batch is read as printed, case and dashes aside', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check({ batchLastFour: ' 2391 '.trim() }));
    expect(unit.newest('second-check').body.agrees).toBe(true);
  });
  test('after a difference: the preparation is withdrawn with the reason, then prepared and checked anew', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check({ batchLastFour: '9999' }));
    unit.expect('dana', withdraw(unit.newest('preparation').id));
    unit.write('dana', 'preparation', unit.pack({ batch: 'PA-9999' }));
    expect(unit.refused('dana', start())).toEqual(['step-out-of-order']);
    unit.expect('imre', unit.check({ batchLastFour: '9999' }));
    unit.expect('dana', start());
  });
  test('a difference stays: neither is its check withdrawn, nor read again until it agrees, nor the first reading corrected', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check({ batchLastFour: '9999' }));
    const check = unit.newest('second-check').id;
    for (const who of ['imre', 'dana'] as const)
      expect(unit.do(who, withdraw(check))).toEqual([
        expect.objectContaining({
          name: 'part-of-a-finished-step',
          remedy: expect.stringContaining('withdraw the preparation'),
        }),
      ]);
    expect(unit.refused('imre', unit.check())).toEqual(['step-already-done']);
    unit.expect('dana', putOff('unwell'));
    expect(unit.refused('imre', unit.check())).toEqual(['step-already-done']);
    unit.expect('dana', withdraw(unit.newest('go-decision').id));
    expect(unit.refused('dana', start())).toEqual(['checks-differ']);
  });
  test('an agreeing check is withdrawn before its preparation', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    const preparation = unit.newest('preparation').id;
    expect(unit.refused('dana', withdraw(preparation))).toEqual(['part-of-a-finished-step']);
    unit.expect('imre', withdraw(unit.newest('second-check').id));
    unit.expect('dana', withdraw(preparation));
  });
  test('a check of another preparation is no check of this one', () => {
    const unit = onTheDay().go().prepared();
    expect(
      unit.refused('imre', { name: 'second check', patient: 'p1', preparation: 'something', reading: unit.reading() }),
    ).toEqual(['no-such-entry']);
  });
});

const withdraw = (entry: string): Act => ({ name: 'withdraw', patient: 'p1', entry, reason: 'misread' });

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
