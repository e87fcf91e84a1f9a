/** What must hold before the medicine runs: a person who is ready, the pack, the second check. Hazards 23 to 25. */
import { describe, expect, test } from 'vitest';
import { type PlainDate, teachingSheet } from '@twelvemonth/clinical';
import { DayUnit, onTheDay, people, type Person } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';
import { decision, names, start, steps, withdraw } from './visit-acts.ts';

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
