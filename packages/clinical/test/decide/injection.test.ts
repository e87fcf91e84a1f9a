/**
 * An injection in a visit: prepared, checked by another person who has not seen the first reading, and given after the person
 * was asked once more who they are. Product texts (clinical fact sheet, section 8, read): two injections of 105 mg make one dose
 * of romosozumab; ibandronate goes into a vein, never into an artery or beside the vein. Who checks: local policies differ.
 */
import { describe, expect, test } from 'vitest';
import { type Act, day, factsOf, regimenSchema, teachingSheet, usualRegimens, visitOn } from '@twelvemonth/clinical';
import { DayUnit, onTheDay } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

type Give = Extract<Act, { name: 'give injection' }>;
const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const order = (unit: DayUnit, regimen = 'denosumab-60-six-monthly'): DayUnit => {
  unit.write('halina', 'prescription', { regimen, validFrom: unit.today(), validUntil: '2028-01-01' });
  return unit;
};
const syringe = (more: object = {}) => ({
  product: 'denosumab 60 mg',
  batch: 'PA-7711',
  expiresOn: '2028-04-30',
  identifiers: ['full name', 'birth date'],
  clearAndColourless: true,
  ...more,
});
const prepared = (unit: DayUnit, more: object = {}): DayUnit => {
  unit.write('dana', 'preparation', syringe(more));
  return unit;
};
const read = (unit: DayUnit, more: object = {}): Extract<Act, { name: 'second check' }> => ({
  name: 'second check',
  patient: 'p1',
  preparation: visitOn(unit.patient(), day(unit.today()))?.preparation?.id ?? '',
  reading: {
    product: 'denosumab 60 mg',
    batchLastFour: '7711',
    expiryMonth: '2028-04',
    identifiers: ['full name', 'number'],
    ...more,
  },
});
const checked = (unit: DayUnit): DayUnit => {
  unit.expect('imre', read(unit));
  return unit;
};
const give = (more: Partial<Give> = {}): Give => ({
  name: 'give injection',
  patient: 'p1',
  injectedInto: 'left thigh',
  injections: 1,
  identifiers: ['full name', 'birth date'],
  ...more,
});
const steps = (unit: DayUnit): string[] =>
  (visitOn(unit.patient(), day(unit.today()))?.steps ?? []).map(({ step, state }) => `${step} ${state}`);
const toGive = (): DayUnit => checked(prepared(order(onTheDay()).go()));

describe('an injection, step by step', () => {
  test('after the go: preparation, second check, injection, watch; no cannula and no drip', () => {
    const unit = order(onTheDay()).go();
    expect(steps(unit).slice(4)).toEqual([
      'preparation waiting',
      'second check to come',
      'injection to come',
      'observe to come',
      'leave to come',
    ]);
    checked(prepared(unit));
    expect(steps(unit)).toContain('injection waiting');
    unit.expect('dana', give());
    expect(factsOf(unit.patient(), 'dose').at(-1)?.body).toEqual({
      medicine: 'denosumab 60 mg',
      setting: 'this service',
      batch: 'PA-7711',
      injectedInto: 'left thigh',
      injections: 1,
      identifiers: ['full name', 'birth date'],
    });
    unit.write('sunniva', 'observed', { minutes: 30, well: true });
    unit.write('sunniva', 'left', { cardGiven: true });
    expect(steps(unit).every((step) => step.endsWith('done'))).toBe(true);
  });

  test('the drip keeps its steps', () => {
    expect(steps(onTheDay().go()).slice(4)).toEqual([
      'cannula waiting',
      'flush to come',
      'preparation to come',
      'second check to come',
      'infusion to come',
      'removal to come',
      'observe to come',
      'leave to come',
    ]);
  });

  test('nothing is given that was not prepared and checked, nor written by hand past both', () => {
    const unit = order(onTheDay()).go();
    expect(unit.refused('dana', give())).toContain('step-out-of-order');
    expect(names(unit.line('dana', 'dose', { medicine: 'denosumab 60 mg', setting: 'this service' }))).toEqual([
      'step-out-of-order',
    ]);
    prepared(unit);
    expect(unit.refused('dana', give())).toEqual(['step-out-of-order']);
  });

  test('the checker is another person, and a reading that differs stops it', () => {
    const unit = prepared(order(onTheDay()).go());
    expect(unit.refused('dana', read(unit))).toContain('checker-is-preparer');
    unit.expect('imre', read(unit, { batchLastFour: '7712' }));
    expect(unit.refused('dana', give())).toEqual(['checks-differ']);
  });

  test.each([
    ['another strength', { product: 'denosumab 120 mg' }, 'wrong-product'],
    ['the bag of the drip', { product: 'zoledronic acid 5 mg in 100 mL' }, 'wrong-product'],
    ['past its date', { expiresOn: '2026-01-31' }, 'pack-expired'],
    ['cloudy', { clearAndColourless: false }, 'wrong-product'],
  ])('a pack that is not right (%s) is refused when it is read', (_, more, name) => {
    expect(names(order(onTheDay()).go().line('dana', 'preparation', syringe(more)))).toEqual([name]);
  });

  test('an order changed after the go is not given by the old go', () => {
    const unit = order(toGive(), 'romosozumab-monthly');
    expect(unit.refused('dana', give())).toContain('wrong-product');
  });

  test('the prescriber does not give it', () => {
    expect(toGive().refused('halina', give())).toContain('not-yours-to-do');
    const unit = onTheDay();
    unit.write('halina', 'prescription', {
      regimen: 'denosumab-60-six-monthly',
      validFrom: unit.today(),
      validUntil: '2028-01-01',
    });
    checked(prepared(unit.go()));
    expect(unit.refused({ staff: 'halina', role: 'nurse' }, give())).toContain('prescriber-may-not-give');
  });

  test('it goes where this medicine goes, and not into an arm to avoid', () => {
    const unit = toGive();
    expect(unit.refused('dana', give({ injectedInto: 'left arm vein' }))).toEqual(['field-wrong']);
    unit.write('dana', 'contact', { armToAvoid: 'left', armToAvoidBecause: 'lymph nodes taken out' });
    expect(unit.refused('dana', give({ injectedInto: 'left upper arm' }))).toEqual(['arm-to-avoid']);
    expect(unit.refused('dana', give({ injectedInto: 'left thigh' }))).toEqual([]);
  });

  test('two of 105 mg make one dose of romosozumab; ibandronate goes into a vein', () => {
    const builder = order(onTheDay(), 'romosozumab-monthly').go();
    prepared(builder, { product: 'romosozumab 105 mg' });
    builder.expect('imre', read(builder, { product: 'romosozumab 105 mg' }));
    expect(builder.refused('dana', give())).toEqual(['field-wrong']);
    builder.expect('dana', give({ injections: 2 }));
    const push = order(onTheDay(), 'ibandronate-three-monthly').go();
    prepared(push, { product: 'ibandronic acid 3 mg' });
    push.expect('imre', read(push, { product: 'ibandronic acid 3 mg' }));
    expect(push.refused('dana', give())).toEqual(['field-wrong']);
    push.expect('dana', give({ injectedInto: 'right arm vein' }));
  });

  test('given once, and not put off afterwards', () => {
    const unit = toGive();
    unit.expect('dana', give());
    expect(unit.refused('dana', give())).toContain('step-already-done');
    expect(unit.refused('imre', putOff('unwell'))).toEqual(['step-already-done']);
  });

  test('the check and the preparation it rests on are not withdrawn from under it', () => {
    const unit = toGive();
    unit.expect('dana', give());
    const visit = visitOn(unit.patient(), day(unit.today()));
    for (const fact of [visit?.preparation, visit?.check])
      expect(
        unit.refused('imre', { name: 'withdraw', patient: 'p1', entry: fact?.id ?? '', reason: 'typed wrong' }),
      ).toEqual(['part-of-a-finished-step']);
  });

  test('a batch stopped since it was prepared is not given', () => {
    const unit = toGive();
    unit.expect('dana', {
      name: 'stop batch',
      body: { batch: 'PA-7711', why: 'quarantine', reason: 'fridge was warm' },
    });
    expect(unit.refused('dana', give())).toContain('batch-stopped');
  });
});

describe('whether another person checks it is the unit’s to decide', () => {
  const injected = usualRegimens.filter(({ given }) => given === 'injection');
  test('every starter asks for another person, and where nothing is said it is asked for', () => {
    expect(injected.length).toBeGreaterThan(3);
    for (const { secondCheck } of injected) expect(secondCheck).toBe('another person');
    const unit = new DayUnit({
      ...teachingSheet,
      regimens: teachingSheet.regimens.map((regimen) => ({ ...regimen, secondCheck: undefined })),
    });
    expect(steps(order(onTheDay(unit)).go())).toContain('second check to come');
  });
  test('the drip is never given without one', () => {
    for (const regimen of usualRegimens)
      expect([regimen.id, regimenSchema.safeParse({ ...regimen, secondCheck: 'not asked for' }).success]).toEqual([
        regimen.id,
        regimen.given === 'injection',
      ]);
  });
  test('where the protocol does not ask for it, it is given once prepared', () => {
    const unit = new DayUnit({
      ...teachingSheet,
      regimens: teachingSheet.regimens.map((regimen) =>
        regimen.given === 'injection' ? { ...regimen, secondCheck: 'not asked for' as const } : regimen,
      ),
    });
    prepared(order(onTheDay(unit)).go());
    expect(steps(unit)).not.toContain('second check to come');
    unit.expect('dana', give());
  });
});
