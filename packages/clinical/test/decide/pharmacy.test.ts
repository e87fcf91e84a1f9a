/**
 * A pharmacist and a prescription (the safety page: "Pharmacy: verification"; common practice, no source: in hospitals a
 * pharmacist reads an order before it is made up, asks the prescriber where something is unclear, and an order that was
 * changed is read again).
 */
import { describe, expect, test } from 'vitest';
import {
  type Fact,
  type ProtocolSheet,
  day,
  orderAtPharmacy,
  protocolFrom,
  readSheet,
  shortDate,
  pharmacySays,
  taskRows,
  teachingSheet,
} from '@twelvemonth/clinical';
import { DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';

const wanted = { ...teachingSheet, pharmacyVerification: 'before preparation' } as const;
const where = (unit: DayUnit) => orderAtPharmacy(unit.patient(), day(unit.today()));
const says = (unit: DayUnit): string => {
  const order = where(unit);
  return order === undefined ? '' : pharmacySays(order, shortDate);
};
const check = (unit: DayUnit, body: object, prescription = unit.newest('prescription').id) =>
  unit.line('priya', 'pharmacy-check', { prescription, ...body }).map(({ name }) => name);
const tasks = (unit: DayUnit, of: ProtocolSheet = wanted): string[] => {
  const made = protocolFrom(of);
  return taskRows(unit.patient(), 'protocol' in made ? made.protocol : undefined, day(unit.today())).flatMap(
    ({ columns: { task, owner } }) => (/pharmac|prescription/.test(String(task)) ? [`${task}: ${owner}`] : []),
  );
};
const prepare = (unit: DayUnit) => {
  unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
  unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
  return unit.line('dana', 'preparation', unit.pack()).map(({ name }) => name);
};
/** The prescriber corrects the prescription that stands. */
const changed = (unit: DayUnit, more: Partial<Fact<'prescription'>['body']>): void => {
  const { body, id } = unit.newest('prescription');
  unit.expect('halina', {
    name: 'record',
    patient: 'p1',
    line: { kind: 'prescription', body: { ...body, ...more }, effectiveAt: unit.today() },
    amends: id,
  });
};

describe('where the protocol wants a pharmacist before anything is prepared', () => {
  test('a pack is prepared once the prescription is verified, and not before', () => {
    const unit = onTheDay(new DayUnit(wanted)).go();
    expect(tasks(unit)).toEqual(['verify the prescription: pharmacist']);
    expect(prepare(unit)).toEqual(['prescription-not-verified']);
    expect(check(unit, { outcome: 'verified' })).toEqual([]);
    expect(says(unit)).toBe('verified by the pharmacist on 26 Nov 2026');
    expect(tasks(unit)).toEqual([]);
    unit.write('dana', 'preparation', unit.pack());
  });
  test('one that is changed after it was verified is unverified again, also once the pack is checked', () => {
    const unit = onTheDay(new DayUnit(wanted)).go();
    check(unit, { outcome: 'verified' });
    unit.prepared();
    unit.expect('imre', unit.check());
    changed(unit, { conditions: 'over 45 minutes' });
    expect(says(unit)).toBe('changed since it was verified on 26 Nov 2026: not verified');
    expect(unit.refused('dana', startInfusion)).toEqual(['prescription-not-verified']);
    expect(check(unit, { outcome: 'verified' })).toEqual([]);
    unit.expect('dana', startInfusion);
  });
  test('a newer prescription is one nobody has verified', () => {
    const unit = onTheDay(new DayUnit(wanted));
    check(unit, { outcome: 'verified' });
    const { body } = unit.newest('prescription');
    unit.write('halina', 'prescription', body);
    expect(says(unit)).toBe('not verified by a pharmacist');
  });
  test('what was verified no longer stands: the word about it is refused, not kept for the new text', () => {
    const unit = onTheDay(new DayUnit(wanted));
    const before = unit.newest('prescription').id;
    changed(unit, { plannedDoses: 2 });
    expect(check(unit, { outcome: 'verified' }, before)).toEqual(['no-such-entry']);
  });
  test('once a dose was given since, the prescription waits for nobody', () => {
    const unit = onTheDay(new DayUnit(wanted)).go();
    check(unit, { outcome: 'verified' });
    unit.prepared();
    unit.expect('imre', unit.check());
    unit.expect('dana', startInfusion);
    unit.wait(31);
    unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
    changed(unit, { conditions: 'x' });
    expect(tasks(unit)).toEqual([]);
  });
  test('what was prepared on paper is written as it was, but nothing runs on it now', () => {
    const unit = onTheDay(new DayUnit(wanted)).go();
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
    unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
    unit.write('dana', 'preparation', unit.pack({ typedBecause: 'typed in later' }));
    unit.expect('imre', unit.check());
    expect(unit.refused('dana', startInfusion)).toEqual(['prescription-not-verified']);
  });
});

describe('where the protocol does not ask for it', () => {
  test('an old sheet says nothing of it, and nothing waits', () => {
    const { pharmacyVerification: _, ...older } = teachingSheet;
    const read = readSheet(older);
    expect('sheet' in read && [read.sheet.pharmacyVerification, read.added]).toEqual(['not asked for', []]);
    const unit = onTheDay().go();
    expect(tasks(unit, teachingSheet)).toEqual([]);
    expect(prepare(unit)).toEqual([]);
  });
  test('a question holds all the same until the prescriber has answered and the pharmacist has looked again', () => {
    const unit = onTheDay().go();
    expect(check(unit, { outcome: 'asked', question: 'on ciclosporin: is that known?' })).toEqual([]);
    expect(tasks(unit, teachingSheet)).toEqual(['answer the pharmacist: prescriber']);
    expect(prepare(unit)).toEqual(['prescription-not-verified']);
    unit.write('halina', 'pharmacy-answer', { check: unit.newest('pharmacy-check').id, answer: 'yes, clearance 60' });
    expect(tasks(unit, teachingSheet)).toEqual(['verify the prescription: pharmacist']);
    expect(unit.line('dana', 'preparation', unit.pack()).map(({ name }) => name)).toEqual([
      'prescription-not-verified',
    ]);
    expect(check(unit, { outcome: 'verified' })).toEqual([]);
    unit.write('dana', 'preparation', unit.pack());
  });
  test('a refusal is heard at the go already: no cannula is placed for what nobody may prepare', () => {
    const unit = onTheDay().arrive().observed().asked();
    check(unit, { outcome: 'refused', reason: 'two bisphosphonates' });
    const go = { name: 'decide', patient: 'p1', decision: 'go' } as const;
    expect(unit.refused('dana', go)).toEqual(['prescription-not-verified']);
    unit.write('halina', 'prescription', unit.newest('prescription').body);
    expect(unit.refused('dana', go)).toEqual([]);
  });
  test('one that was refused is prepared only once it is another', () => {
    const unit = onTheDay().go();
    expect(check(unit, { outcome: 'refused', reason: 'clearance 28 mL/min by our formula' })).toEqual([]);
    expect(tasks(unit, teachingSheet)).toEqual(['change the refused prescription: prescriber']);
    expect(prepare(unit)).toEqual(['prescription-not-verified']);
    changed(unit, { conditions: 'weighed anew' });
    expect(tasks(unit, teachingSheet)).toEqual([]);
    unit.write('dana', 'preparation', unit.pack());
  });
});

describe('whose word it is', () => {
  test('only a pharmacist’s, and not about a prescription of their own', () => {
    const unit = onTheDay(new DayUnit(wanted));
    const body = { outcome: 'verified', prescription: unit.newest('prescription').id };
    for (const who of ['dana', 'halina', 'imre'] as const)
      expect(unit.line(who, 'pharmacy-check', body)[0]?.name).toBe('not-yours-to-do');
    expect(unit.line({ staff: 'halina', role: 'pharmacist' }, 'pharmacy-check', body).map(({ name }) => name)).toEqual([
      'second-person-needed',
    ]);
  });
  test('a question and a refusal say what about; an answer is about a question', () => {
    const unit = onTheDay(new DayUnit(wanted));
    expect(check(unit, { outcome: 'asked' })).toEqual(['field-wrong']);
    expect(check(unit, { outcome: 'refused' })).toEqual(['field-wrong']);
    check(unit, { outcome: 'verified' });
    const answer = { check: unit.newest('pharmacy-check').id, answer: 'x' };
    expect(unit.line('halina', 'pharmacy-answer', answer).map(({ name }) => name)).toEqual(['no-such-entry']);
    expect(unit.line('dana', 'pharmacy-answer', answer).map(({ name }) => name)).toContain('not-yours-to-do');
  });
});

describe('an order that is still to be looked at', () => {
  const given = (): DayUnit => {
    const unit = onTheDay(new DayUnit(wanted)).go();
    check(unit, { outcome: 'verified' });
    unit.prepared();
    unit.expect('imre', unit.check());
    unit.expect('dana', startInfusion);
    unit.wait(31).expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
    return unit;
  };
  test('after the dose nobody is asked about the order it was given under', () => {
    const unit = given();
    expect(tasks(unit)).toEqual([]);
  });
  test('corrected after the dose, with a place for the next: it held the preparation, and nobody was asked', () => {
    const unit = given().wait(1);
    changed(unit, { conditions: 'over 45 minutes' });
    expect(tasks(unit)).toEqual([]);
    unit.at('2026-11-27T09:00:00.000Z').expect('imre', {
      name: 'book',
      patient: 'p1',
      session: 'thornbeck-2026-12-01',
      place: 1,
      accepts: { causes: ['interval: next due 26 Nov 2027'], reason: 'to be moved' },
    });
    expect(tasks(unit)).toEqual(['verify the prescription: pharmacist']);
  });
  test('written on the day of the dose for the next one, too', () => {
    const unit = given().wait(1);
    const body = { regimen: 'zoledronic-acid-yearly', validFrom: '2026-11-26', validUntil: '2027-12-31' };
    unit.write('halina', 'prescription', body);
    expect(tasks(unit)).toEqual(['verify the prescription: pharmacist']);
  });
});

describe('days of a prescription that may be slips', () => {
  const asked = (unit: DayUnit, validFrom: string, validUntil: string, confirms: readonly string[] = []) =>
    unit.do('halina', {
      name: 'record',
      patient: 'p1',
      line: {
        kind: 'prescription',
        body: { regimen: 'zoledronic-acid-yearly', validFrom, validUntil },
        effectiveAt: unit.today(),
      },
      confirms: [...confirms],
    });
  test.each([
    ['over before it is written', '2024-11-26', '2025-11-25', /It is over/],
    ['valid for decades', '2026-11-26', '2062-11-25', /more than 24 months/],
    ['next year’s, while this year’s stands', '2027-11-01', '2028-10-31', /until then no dose can be given/],
  ])('%s: asked about, and written once confirmed', (_, from, until, says) => {
    const unit = onTheDay();
    const [first] = asked(unit, from, until);
    expect(first).toMatchObject({ name: 'is-it-right', field: 'line.body.validUntil' });
    expect(first?.says).toMatch(says);
    expect(asked(unit, from, until, [first?.says ?? ''])).toEqual([]);
  });
  test('a year from today is written unasked', () => expect(asked(onTheDay(), '2026-11-26', '2027-11-25')).toEqual([]));
  test('a name of a group direction is not written by hand', () => {
    const body = {
      regimen: 'zoledronic-acid-yearly',
      groupDirection: 'Zoledronic acid, version 2',
      validFrom: '2026-11-26',
      validUntil: '2027-11-25',
    };
    const [refused] = onTheDay().line('halina', 'prescription', body);
    expect(refused).toMatchObject({ name: 'field-wrong', field: 'line.body.orderedAs' });
  });
});
