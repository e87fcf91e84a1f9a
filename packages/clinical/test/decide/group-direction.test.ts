/**
 * Nurses who record an order under a group direction. From memory, to be confirmed by a clinician and a pharmacist: the Human
 * Medicines Regulations 2012 (UK), regulation 229 and Schedule 16, ask that a patient group direction is signed by a doctor or
 * dentist and by a pharmacist, says who is excluded and when to turn to a doctor, and that whoever supplies under it is named
 * in writing. That anything unknown leads to a prescriber is the safety page's "nothing unknown counts as safe".
 */
import { describe, expect, test } from 'vitest';
import { type Act, type PlainDate, addDays, day, plainDate } from '@twelvemonth/clinical';
import { DayUnit, type Person, startInfusion } from './a-day-unit.ts';

const conditions = ['Earlier doses went without a severe reaction', 'Not under another bone service'] as const;

/** Written by the prescriber, signed by the pharmacist, naming Dana alone. */
function underDirection(unit = withoutOrder(), signed = true): DayUnit {
  write(unit);
  if (signed) sign(unit);
  return unit;
}
function withoutOrder(): DayUnit {
  const unit = new DayUnit().ready();
  unit.expect('halina', { name: 'withdraw', patient: 'p1', entry: unit.newest('prescription').id, reason: 'a test' });
  return unit;
}
const body = (unit: DayUnit) => ({
  name: 'Zoledronic acid at the day unit',
  version: '2',
  regimen: 'zoledronic-acid-yearly',
  validFrom: unit.today(),
  validUntil: plainDate(addDays(day(unit.today()), 200)),
  mayGive: ['dana'],
  conditions: [...conditions],
  orderLastsDays: 28,
});
const write = (unit: DayUnit, more: object = {}) =>
  unit.expect('halina', { name: 'write direction', unit: 'thornbeck', body: { ...body(unit), ...more } });
const written = (unit: DayUnit): string =>
  unit.entries('unit/thornbeck').findLast(({ kind }) => kind === 'group-direction')?.id ?? '';
const signing = (unit: DayUnit): Act => ({
  name: 'sign direction',
  unit: 'thornbeck',
  body: { direction: written(unit) },
});
const sign = (unit: DayUnit) => unit.expect('priya', signing(unit));

type Answer = 'yes' | 'no' | 'not known';
const ordering = (unit: DayUnit, answers: readonly (Answer | undefined)[] = ['yes', 'yes']): Act => ({
  name: 'order under direction',
  patient: 'p1',
  direction: written(unit),
  answers: conditions.flatMap((condition, index) => {
    const answer = answers[index];
    return answer === undefined ? [] : [{ condition, answer }];
  }),
});
const order = (unit: DayUnit, who: Person = 'dana', answers?: readonly (Answer | undefined)[]) =>
  unit.do(who, ordering(unit, answers)).map(({ name, says }) => `${name}: ${says}`);

describe('an order under a group direction', () => {
  test('is recorded by a nurse whom it names, every condition answered yes; it lasts the days of the direction', () => {
    const unit = underDirection();
    expect(order(unit)).toEqual([]);
    expect(unit.newest('prescription')).toMatchObject({
      author: { staff: 'dana', role: 'nurse' },
      body: {
        orderedAs: 'group direction',
        groupDirection: 'Zoledronic acid at the day unit, version 2',
        underDirection: { direction: written(unit), conditionsMet: conditions },
        validFrom: '2026-11-24',
        validUntil: '2026-12-21',
      },
    });
  });
  test('is refused where a condition is not so, not known or not answered', () => {
    const unit = underDirection();
    expect(order(unit, 'dana', ['no', 'not known'])).toEqual([
      `not-under-the-direction: ${conditions[0]}: not so.`,
      `not-under-the-direction: ${conditions[1]}: not known.`,
    ]);
    expect(order(unit, 'dana', ['yes'])).toEqual([`not-under-the-direction: ${conditions[1]}: not answered.`]);
  });
  test('is refused to whoever is not named, and to roles that give nothing', () => {
    const unit = underDirection();
    expect(order(unit, 'imre')).toEqual([
      'not-under-the-direction: Zoledronic acid at the day unit, version 2 does not name you.',
    ]);
    expect(unit.refused('bettina', ordering(unit))).toEqual(['not-yours-to-do']);
  });
  test('is refused before a pharmacist has signed, outside its days, once it has ended, and once a later version has begun', () => {
    const unsigned = underDirection(withoutOrder(), false);
    expect(order(unsigned).join()).toContain('no pharmacist has signed it');
    const ended = underDirection();
    ended.expect('imre', {
      name: 'end direction',
      unit: 'thornbeck',
      body: { direction: written(ended), reason: 'a serious incident' },
    });
    expect(order(ended).join()).toContain('ended on 24 Nov 2026: a serious incident');
    const later = withoutOrder();
    write(later, { validFrom: '2026-12-01' });
    sign(later);
    expect(order(later).join()).toContain('in force from 1 Dec 2026');
    const replaced = underDirection();
    const old = ordering(replaced);
    write(replaced, { version: '3' });
    sign(replaced);
    expect(replaced.do('dana', old).map(({ says }) => says)).toEqual([
      'Zoledronic acid at the day unit, version 2 is not in force: replaced by a later version from 24 Nov 2026.',
    ]);
  });
  test('is refused where the protocol does not find the person plainly ready: that is a prescriber to decide', () => {
    const unit = underDirection();
    unit.write('dana', 'symptom', { what: 'thigh, hip or groin pain' });
    expect(order(unit).join()).toMatch(/^not-under-the-direction: (Cannot say|Not ready): /);
    const unknown = underDirection(new DayUnit().register());
    unknown.write('imre', 'triage', { outcome: 'accepted' });
    expect(order(unknown).length).toBeGreaterThan(3);
    expect(order(unknown).every((says) => says.startsWith('not-under-the-direction: '))).toBe(true);
  });
  test("is refused where only a prescriber's exception makes the person ready", () => {
    const unit = underDirection();
    unit.write('dana', 'dental', { answer: 'work pending' });
    expect(order(unit)).toHaveLength(1);
    unit.write('halina', 'prescriber-exception', {
      requirement: 'teeth and jaw',
      reason: 'a crown, no extraction',
      expiresOn: plainDate(addDays(day(unit.today()), 10)),
    });
    expect(order(unit).join()).toContain("A prescriber's exception passes something over");
  });
  test('does not pass over an order that stands', () => {
    const unit = underDirection(new DayUnit().ready());
    expect(unit.refused('dana', ordering(unit))).toEqual(['said-already']);
  });
  test('is taken back by the nurse who recorded it, and by nobody else who may not prescribe', () => {
    const unit = underDirection();
    order(unit);
    const back: Act = {
      name: 'withdraw',
      patient: 'p1',
      entry: unit.newest('prescription').id,
      reason: 'wrong person',
    };
    expect(unit.refused('imre', back)).toEqual(['not-yours-to-do']);
    expect(unit.refused('dana', back)).toEqual([]);
  });
  test('is never written by hand, not by a prescriber either', () => {
    const unit = underDirection();
    const byHand = { regimen: 'zoledronic-acid-yearly', validFrom: unit.today(), validUntil: unit.today() };
    const refused = (more: object) =>
      unit.line('halina', 'prescription', { ...byHand, ...more }).map(({ field }) => field);
    expect(refused({ orderedAs: 'group direction', groupDirection: 'PGD 14' })).toEqual(['line.body.orderedAs']);
    expect(refused({ underDirection: { direction: written(unit), conditionsMet: [] } })).toEqual([
      'line.body.orderedAs',
    ]);
    expect(refused({ orderedAs: 'patient-specific' })).toEqual([]);
  });
});

describe('a dose under a group direction', () => {
  const atTheNeedle = (): DayUnit => {
    const unit = underDirection();
    unit.expect('dana', ordering(unit));
    unit.expect('bettina', { name: 'book', patient: 'p1', session: 'thornbeck-2026-11-26', place: 1 });
    unit.at('2026-11-26T08:45:00.000Z').go().prepared();
    unit.expect('imre', unit.check());
    return unit;
  };
  test('is given by a nurse whom it names, also by the one who recorded the order', () => {
    const unit = atTheNeedle();
    expect(unit.refused('imre', startInfusion)).toEqual(['not-under-the-direction']);
    expect(unit.refused('dana', startInfusion)).toEqual([]);
  });
  test('does not start once the direction has ended, though the order still stands', () => {
    const unit = atTheNeedle();
    unit.expect('priya', {
      name: 'end direction',
      unit: 'thornbeck',
      body: { direction: written(unit), reason: 'recalled by the pharmacy' },
    });
    expect(unit.refused('dana', startInfusion)).toEqual(['not-under-the-direction']);
  });
});

describe('a group direction', () => {
  test('is written by a prescriber and signed by a pharmacist, once, and not by the one who wrote it', () => {
    const unit = withoutOrder();
    const by = (who: Person) => unit.refused(who, { name: 'write direction', unit: 'thornbeck', body: body(unit) });
    expect([by('priya'), by('dana')]).toEqual([['not-yours-to-do'], ['not-yours-to-do']]);
    write(unit);
    expect(unit.refused('halina', signing(unit))).toEqual(['not-yours-to-do']);
    const own = withoutOrder();
    write(own);
    expect(own.refused({ staff: 'halina', role: 'pharmacist' }, signing(own))).toEqual(['second-person-needed']);
    expect(own.refused('priya', signing(own))).toEqual([]);
    expect(own.refused('priya', signing(own))).toEqual(['said-already']);
  });
  test('a version is written once; a changed text is another version', () => {
    const unit = underDirection();
    const again: Act = { name: 'write direction', unit: 'thornbeck', body: body(unit) };
    expect(unit.refused('halina', again)).toEqual(['field-wrong']);
    const backwards = { ...body(unit), version: '4', validUntil: '2026-11-01' as PlainDate };
    expect(
      unit.do('halina', { name: 'write direction', unit: 'thornbeck', body: backwards }).map(({ field }) => field),
    ).toEqual(['body.validUntil']);
  });
});
