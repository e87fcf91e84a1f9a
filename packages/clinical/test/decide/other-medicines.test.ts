/**
 * Other medicines through `decide`: the drip of this unit runs for no other order, what is given by hand needs its own go, and
 * denosumab is not stopped without a replacement and its date (the safety page, "Interval, course, other bone drugs";
 * practice section 3, hazards 21 and 24).
 */
import { describe, expect, test } from 'vitest';
import { day, visitOn } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';

const ordered = (unit: DayUnit, regimen: string): DayUnit => {
  unit.write('halina', 'prescription', { regimen, validFrom: unit.today(), validUntil: '2028-01-01' });
  return unit;
};
const injection = (more: object = {}) => ({
  medicine: 'denosumab 60 mg',
  setting: 'this service',
  batch: 'PA-7711',
  ...more,
});
const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const checked = (unit: DayUnit): DayUnit => {
  unit.go().prepared();
  unit.expect('imre', unit.check());
  return unit;
};

describe('the drip of zoledronic acid 5 mg runs for no other order', () => {
  test('a go by the rules of denosumab prepares no bag', () => {
    const unit = ordered(onTheDay(), 'denosumab-60-six-monthly').go();
    expect(names(unit.line('dana', 'preparation', unit.pack()))).toEqual(['wrong-product']);
  });
  test('nor does an order changed after the second check start one', () => {
    const unit = checked(onTheDay());
    ordered(unit, 'denosumab-60-six-monthly');
    expect(unit.refused('dana', startInfusion)).toContain('wrong-product');
  });
  test("every regimen of zoledronic acid 5 mg may: also the single dose for Paget's disease", () => {
    const unit = checked(ordered(onTheDay(), 'zoledronic-acid-pagets-disease'));
    expect(unit.refused('dana', startInfusion)).toEqual([]);
  });
});

describe('what neither drips nor is injected by the steps of a visit (pamidronate)', () => {
  const byHand = (more: object = {}) => injection({ medicine: 'pamidronate', ...more });
  test('needs the go, the medicine that is ordered, and another hand than the prescriber’s', () => {
    const unit = ordered(onTheDay(), 'pamidronate-three-monthly').arrive();
    expect(names(unit.line('dana', 'dose', byHand()))).toEqual(['step-out-of-order']);
    unit.observed().asked();
    unit.expect('dana', { name: 'decide', patient: 'p1', decision: 'go' });
    expect(names(unit.line('dana', 'dose', byHand({ medicine: 'ibandronate 3 mg' })))).toEqual(['wrong-product']);
    expect(names(unit.line('halina', 'dose', byHand()))).toEqual(['prescriber-may-not-give']);
    expect(names(unit.line('dana', 'dose', byHand()))).toEqual([]);
  });
  test('then the drip has no steps, and they can be watched and leave', () => {
    const unit = ordered(onTheDay(), 'pamidronate-three-monthly').go();
    unit.write('dana', 'dose', byHand());
    const steps = () =>
      (visitOn(unit.patient(), day(unit.today()))?.steps ?? []).map(({ step, state }) => `${step} ${state}`);
    expect(steps().slice(4)).toEqual(['observe waiting', 'leave to come']);
    unit.write('sunniva', 'observed', { minutes: 30, well: true });
    unit.write('sunniva', 'left', { cardGiven: true });
    expect(steps().every((step) => step.endsWith('done'))).toBe(true);
  });
  test('one of the past, or given elsewhere, is history and asks for no go', () => {
    const unit = onTheDay().arrive();
    unit.write('dana', 'dose', injection({ setting: 'elsewhere' }));
    unit.write('dana', 'dose', byHand(), '2026-01-15');
  });
});

describe('denosumab is not stopped without a replacement and its date', () => {
  const review = (outcome: object) => ({ capacity: 'specialist', reason: 'x', ...outcome });
  test.each([
    ['stop', { outcome: 'stop' }],
    ['planned break', { outcome: 'planned break', reviewOn: '2027-06-01', triggers: 'a fracture' }],
  ])('%s is refused while its clock runs', (_, outcome) => {
    const unit = ordered(onTheDay(), 'denosumab-60-six-monthly');
    unit.write('dana', 'dose', injection({ setting: 'elsewhere' }), '2026-08-01');
    expect(names(unit.line('halina', 'course-review', review(outcome)))).toEqual(['needs-what-follows']);
  });
  test('another treatment with its date is how it ends', () => {
    const unit = ordered(onTheDay(), 'denosumab-60-six-monthly');
    unit.write('dana', 'dose', injection({ setting: 'elsewhere' }), '2026-08-01');
    unit.write(
      'halina',
      'course-review',
      review({ outcome: 'other treatment', to: 'zoledronic acid', dueOn: '2027-02-01' }),
    );
  });
  test('after the replacement was given it may stop', () => {
    const unit = onTheDay();
    unit.write('dana', 'dose', injection({ setting: 'elsewhere' }), '2026-01-15');
    unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, '2026-07-20');
    unit.write('halina', 'course-review', review({ outcome: 'stop' }));
  });
});
