/** Hazards 63 and 79: one person in two records, and another patient's result filed. */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type ActNamed,
  courseOf,
  day,
  factsOf,
  projection,
  readiness,
  readInThese,
  recordTogether,
  standingOf,
  taskRows,
  teaching,
  verdictOn,
} from '@twelvemonth/clinical';
import { DayUnit, as, onTheDay } from './a-day-unit.ts';

type Pair = { patient: string; other: string };
const both: Pair = { patient: 'p1', other: 'p2' };
const agree: ActNamed<'say one person'>['agree'] = ['name', 'birth date'];
const sayOne = (more: Partial<ActNamed<'say one person'>> = {}): Act => ({
  name: 'say one person',
  ...both,
  agree,
  reason: 'asked her: she moved in 2024',
  ...more,
});
const confirm = (more: Partial<ActNamed<'confirm one person'>> = {}): Act => ({
  name: 'confirm one person',
  ...both,
  agree,
  reason: 'compared side by side',
  ...more,
});
const two = (more: Partial<ActNamed<'say two people'>> = {}): Act => ({
  name: 'say two people',
  ...both,
  differ: ['number', 'address'],
  reason: 'sisters-in-law',
  ...more,
});
const mayBe: Act = { name: 'may be one', ...both, reason: 'the same name and birth date' };
const apart: Act = { name: 'read apart', ...both, reason: 'she says the other one is her cousin' };

/** p1 is ready; p2 was begun a second time by a referral. */
const twice = (): DayUnit => {
  const unit = new DayUnit().ready('p1');
  return unit.register('p2', 'Arkwright-p1', '999 204 7799');
};
const joined = (): DayUnit => {
  const unit = twice();
  unit.expect('bettina', sayOne());
  unit.expect('imre', confirm());
  return unit;
};
const context = (unit: DayUnit) => {
  const { context } = unit.surroundings(as('nurse'));
  if (context === undefined) throw new Error('no protocol');
  return context;
};
function verdict(unit: DayUnit, patient = 'p1') {
  const today = day(unit.today());
  const answer = readiness(unit.patient(patient), context(unit), today, {});
  return verdictOn(answer, today);
}
const identityOf = (unit: DayUnit, patient = 'p1') => {
  const found = verdict(unit, patient).requirements.find(({ requirement }) => requirement === 'identity');
  return [found?.verdict, found?.cause];
};

describe('two notes that may be one person', () => {
  test('hold both people: cannot say, until somebody says that they are two', () => {
    const unit = twice();
    expect(identityOf(unit)[0]).toBe('ready');
    unit.expect('bettina', mayBe);
    expect(identityOf(unit)).toEqual(['cannot say', 'possible duplicate']);
    expect(identityOf(unit, 'p2')).toEqual(['cannot say', 'possible duplicate']);
    expect(verdict(unit).verdict).toBe('cannot say');
    unit.expect('bettina', two());
    expect(identityOf(unit)[0]).toBe('ready');
    expect(identityOf(unit, 'p2')[0]).toBe('ready');
  });
  test('the first of two people saying that they are one clears nothing', () => {
    const unit = twice();
    unit.expect('bettina', sayOne());
    expect(identityOf(unit)).toEqual(['cannot say', 'possible duplicate']);
  });
  test('no go at the chair while it is open', () => {
    const unit = onTheDay().arrive().observed().asked();
    unit.register('p2', 'Arkwright-p1', '999 204 7799');
    unit.expect('bettina', mayBe);
    expect(unit.refused('dana', { name: 'decide', patient: 'p1', decision: 'go' })).toEqual(['cannot-say']);
  });
  test('whoever is entered as another person although alike is kept as another, with what differs', () => {
    const unit = new DayUnit().register('p1');
    unit.lookAlikes = [{ patient: 'p1', says: 'Wilhelmina Arkwright-Poe', why: 'the same name' }];
    const act = (born: string, number: string): Act => ({
      name: 'register',
      patient: 'p2',
      identity: { family: 'Arkwright-Poe', given: 'Wilhelmina', born, number },
      referral: { from: 'surgery', reason: 'spine', unit: 'thornbeck', tier: 'routine' },
      on: unit.today(),
      notTheSameAs: ['p1'],
    });
    unit.expect('bettina', act('1941-02-06', '999 204 7713'));
    expect(unit.newest('same-person', 'p1').body).toMatchObject({ answer: 'two', other: 'p2', differ: ['birth date'] });
    expect(unit.newest('same-person', 'p2').body).toMatchObject({ answer: 'two', other: 'p1' });
  });
  test('nothing differs: entering them as another person leaves it open', () => {
    const unit = new DayUnit().register('p1');
    unit.expect('bettina', {
      name: 'register',
      patient: 'p2',
      identity: { family: 'Arkwright-Poe', given: 'Wilhelmina', born: '1941-06-02', number: '9992047713' },
      referral: { from: 'surgery', reason: 'spine', unit: 'thornbeck', tier: 'routine' },
      on: unit.today(),
      notTheSameAs: ['p1'],
    });
    expect(identityOf(unit, 'p2')).toEqual(['cannot say', 'possible duplicate']);
  });
  test('a corrected name that makes two people alike is noted in both at once', () => {
    const unit = twice();
    unit.lookAlikes = [{ patient: 'p1', says: 'Wilhelmina Arkwright-p1', why: 'the same number' }];
    unit.write(
      'bettina',
      'identity',
      { family: 'Arkwright-p1', given: 'Wilhelmina', born: '1941-06-02', number: '999 204 7701' },
      unit.today(),
      'p2',
    );
    expect(identityOf(unit)).toEqual(['cannot say', 'possible duplicate']);
    expect(identityOf(unit, 'p2')).toEqual(['cannot say', 'possible duplicate']);
  });
  test('what was told apart is not noted again', () => {
    const unit = twice();
    unit.expect('bettina', two());
    unit.lookAlikes = [{ patient: 'p1', says: 'x', why: 'the same number' }];
    const before = unit.entries('patient/p2').length;
    unit.write(
      'bettina',
      'identity',
      { family: 'Arkwright-p1', given: 'Wilhelmina', born: '1941-06-02', number: '999 204 7701' },
      unit.today(),
      'p2',
    );
    expect(unit.entries('patient/p2').length).toBe(before + 1);
  });
});

describe('saying that two notes are one person', () => {
  test('takes two people', () => {
    const unit = twice();
    expect(unit.refused('imre', confirm())).toEqual(['nobody-said-so-yet']);
    unit.expect('imre', sayOne());
    expect(unit.refused('imre', confirm())).toEqual(['second-person-needed']);
    expect(unit.refused('bettina', confirm())).toEqual(['not-yours-to-do']);
    expect(unit.refused('edwin', sayOne())).toEqual(['not-yours-to-do']);
    unit.expect('dana', confirm());
    expect(readInThese(unit.patient())).toEqual(['p2']);
  });
  test('takes two identifiers that really agree', () => {
    const unit = twice();
    expect(unit.refused('bettina', sayOne({ agree: ['name'] }))).toEqual(['field-wrong']);
    expect(unit.refused('bettina', sayOne({ agree: ['name', 'number'] }))).toEqual(['does-not-agree']);
    expect(unit.refused('bettina', sayOne({ agree: ['name', 'address'] }))).toEqual(['does-not-agree']);
  });
  test('waits until the notes that are joined hold no place: the list would name someone else', () => {
    const unit = new DayUnit().booked('p1');
    unit.register('p2', 'Arkwright-p1', '999 204 7799');
    expect(unit.refused('bettina', sayOne({ patient: 'p2', other: 'p1' }))).toEqual(['has-a-place']);
    unit.expect('bettina', sayOne());
  });
  test('the same notes twice, or notes that are read in others, are refused', () => {
    const unit = joined();
    expect(unit.refused('bettina', sayOne({ other: 'p1' }))).toContain('field-wrong');
    unit.register('p3', 'Moss', '999 000 0303');
    expect(unit.refused('bettina', sayOne({ patient: 'p3', other: 'p2' }))).toEqual(['read-in-other-notes']);
    expect(unit.refused('bettina', sayOne({ patient: 'p3', other: 'p1' }))).toContain('read-in-other-notes');
  });
});

describe('notes read as one', () => {
  test('everything in either counts, and who the person is the kept ones say', () => {
    const unit = twice();
    unit.write('dana', 'allergy', { answer: 'bisphosphonate', reaction: 'swollen face' }, unit.today(), 'p2');
    unit.expect('bettina', sayOne());
    unit.expect('imre', confirm());
    expect(verdict(unit).requirements.find(({ requirement }) => requirement === 'hypersensitivity')?.verdict).toBe(
      'not ready',
    );
    const identities = factsOf(unit.patient(), 'identity');
    expect(identities.map(({ body }) => body.number)).toEqual(['999 204 7701']);
    expect(unit.patient().together?.[0]?.identities[0]?.number).toBe('999 204 7799');
    expect(identityOf(unit)[0]).toBe('ready');
  });
  test('a dose in the other notes is a dose: no second one inside the interval', () => {
    const unit = twice();
    unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, '2026-06-01', 'p2');
    unit.expect('bettina', sayOne());
    unit.expect('imre', confirm());
    expect(verdict(unit).requirements.find(({ requirement }) => requirement === 'interval')?.verdict).toBe('not ready');
  });
  test('a dose told in both is one dose, and a difference between the two is listed', () => {
    const unit = twice();
    const dose = { medicine: 'zoledronic acid 5 mg', setting: 'ward' };
    unit.write('dana', 'dose', { ...dose, batch: 'PA-1111' }, '2025-06-01', 'p1');
    unit.write('dana', 'dose', { ...dose, batch: 'PA-2222' }, '2025-06-01', 'p2');
    unit.write('dana', 'dose', dose, '2024-05-20', 'p2');
    unit.expect('bettina', sayOne());
    unit.expect('imre', confirm());
    const record = unit.patient();
    expect(factsOf(record, 'dose').map(({ body }) => body.batch)).toEqual([undefined, 'PA-1111']);
    expect(courseOf(record, undefined, day(unit.today())).doses.length).toBe(2);
    expect(record.problems.map(({ says }) => says)).toEqual([
      'both notes tell of zoledronic acid 5 mg on 1 Jun 2025 and differ in: batch. It is counted once',
    ]);
  });
  test('closing the second notes as a duplicate ends nobody’s care', () => {
    const unit = twice();
    unit.write('imre', 'closed', { reason: 'entered twice' }, unit.today(), 'p2');
    unit.expect('bettina', sayOne());
    unit.expect('imre', confirm());
    expect(standingOf(unit.patient(), undefined, day(unit.today())).standing).not.toBe('closed');
  });
  test('nothing is written to the joined notes by themselves: it would be read by nobody', () => {
    const unit = joined();
    const weight = { quantity: { comparator: '', value: '56', unit: 'kg' }, method: 'measured' };
    expect(unit.line('dana', 'weight', weight, unit.today(), 'p2').map(({ name }) => name)).toEqual([
      'read-in-other-notes',
    ]);
  });
  test('an entry of the joined notes is corrected and withdrawn where it stands', () => {
    const unit = twice();
    unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, '2026-06-01', 'p2');
    const { id } = unit.newest('dose', 'p2');
    unit.expect('bettina', sayOne());
    unit.expect('imre', confirm());
    unit.expect('dana', { name: 'withdraw', patient: 'p1', entry: id, reason: 'tablet, not a drip' });
    expect(factsOf(unit.patient(), 'dose')).toEqual([]);
    expect(unit.entries('patient/p2').at(-1)?.kind).toBe('withdrawal');
  });
  test('lists keep the joined notes findable by number, and tell no standing of theirs', () => {
    const unit = joined();
    const tables = projection('patient/p2', unit.entries('patient/p2')).map(({ table }) => table);
    expect(tables).toEqual(['person']);
  });
  test('without the other notes at hand it is cannot say, not the half that is', () => {
    const unit = joined();
    const alone = recordTogether('patient/p1', unit.entries('patient/p1'), () => undefined);
    const today = day(unit.today());
    const answer = verdictOn(readiness(alone, context(unit), today, {}), today);
    expect(answer.requirements.find(({ requirement }) => requirement === 'identity')?.cause).toBe('possible duplicate');
  });
  test('what was known before they were joined is read apart', () => {
    const unit = joined();
    const entries = unit.entries('patient/p1');
    const before = entries.at(-3)?.recordedAt ?? '';
    const then = recordTogether('patient/p1', entries, (of) => unit.entries(of), { knownAt: before });
    expect(then.together).toBeUndefined();
  });
  test('taken back with a reason: read apart, and open again until somebody says two', () => {
    const unit = joined();
    expect(unit.refused('bettina', apart)).toEqual(['not-yours-to-do']);
    unit.expect('dana', apart);
    expect(unit.patient().together).toBeUndefined();
    expect(identityOf(unit)).toEqual(['cannot say', 'possible duplicate']);
    unit.expect('bettina', two());
    expect(identityOf(unit)[0]).toBe('ready');
    expect(unit.entries('patient/p1').filter(({ kind }) => kind === 'same-person').length).toBe(4);
  });
  test('two people cannot be said while they are read as one', () => {
    expect(joined().refused('bettina', two())).toEqual(['read-in-other-notes']);
  });
});

describe('an entry in the wrong person’s notes', () => {
  const move = (entry: string, more: Partial<ActNamed<'move entry'>> = {}): Act => ({
    name: 'move entry',
    patient: 'p1',
    to: 'p2',
    entry,
    reason: 'two of one name at one surgery',
    ...more,
  });
  test('is withdrawn there and written here by one act, and a result wants a signature of its own', () => {
    const unit = new DayUnit().ready('p1').ready('p2');
    unit.bloods('2026-11-20', 'p1');
    const wrong = factsOf(unit.patient(), 'result').find(({ body }) => body.analyte === 'creatinine');
    unit.expect('dana', move(wrong?.id ?? ''));
    expect(factsOf(unit.patient('p1'), 'result').some(({ id }) => id === wrong?.id)).toBe(false);
    const here = unit.newest('result', 'p2');
    expect([here.on, here.body, here.id === wrong?.id]).toEqual([wrong?.on, wrong?.body, false]);
    expect(factsOf(unit.patient('p2'), 'results-signed').some(({ body }) => body.results.includes(here.id))).toBe(
      false,
    );
    expect(unit.newest('moved-here', 'p2').act).toBe(unit.newest('withdrawal', 'p1').act);
    expect(unit.newest('withdrawal', 'p1').body.movedTo).toBe('p2');
  });
  test('decisions made while it stood are listed, and looked at again by name', () => {
    const unit = onTheDay().go();
    const used = factsOf(unit.patient(), 'result').find(({ body }) => body.analyte === 'creatinine');
    unit.register('p2', 'Moss', '999 204 7799');
    unit.expect('dana', move(used?.id ?? ''));
    const withdrawal = unit.newest('withdrawal');
    expect(withdrawal.body.usedBy).toEqual([unit.newest('prescription').id, unit.newest('go-decision').id]);
    const tasks = () =>
      taskRows(unit.patient(), teaching, day(unit.today())).filter(
        ({ columns }) => columns['task'] === 'look at a decision again',
      );
    expect(tasks().length).toBe(1);
    unit.write('imre', 'looked-again', { about: withdrawal.id, finding: 'stopped: redraw first' });
    expect(tasks()).toEqual([]);
    expect(verdict(unit).verdict).not.toBe('ready');
  });
  test('steps of a visit, decisions and signatures are not moved', () => {
    const unit = onTheDay().go();
    unit.register('p2', 'Moss', '999 204 7799');
    expect(unit.refused('dana', move(unit.newest('checklist').id))).toContain('part-of-a-finished-step');
    expect(unit.refused('dana', move(unit.newest('weight').id, { to: 'p1' }))).toContain('field-wrong');
    expect(unit.refused('dana', move('nothing'))).toEqual(['no-such-entry']);
    expect(unit.refused('bettina', move(unit.newest('weight').id))).toEqual(['not-yours-to-do']);
  });
});
