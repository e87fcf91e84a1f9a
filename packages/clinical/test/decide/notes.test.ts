/** Lines, corrections, withdrawals, registering and bringing in: what may be written, by whom, of when. Roles: practice section 7. */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type KindName,
  type PlainDate,
  type Role,
  day,
  entryKinds,
  factsOf,
  handWrittenKinds,
  kindNamed,
  refusalNames,
  rolesFor,
  standingOf,
  subjectsOf,
  teaching,
} from '@twelvemonth/clinical';
import { DayUnit, as } from './a-day-unit.ts';

const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const record = (kind: KindName, body: unknown, effectiveAt = '2026-11-24', amends?: string): Act => ({
  name: 'record',
  patient: 'p1',
  line: { kind, body, effectiveAt },
  ...(amends === undefined ? {} : { amends }),
});
const weight = (value: string, unit = 'kg') => ({ quantity: { comparator: '', value, unit }, method: 'measured' });
const known = (): DayUnit => new DayUnit().register();

describe('registering', () => {
  const act = (more: Partial<Extract<Act, { name: 'register' }>> = {}): Act => ({
    name: 'register',
    patient: 'p9',
    identity: { family: 'Moss', given: 'Ada', born: '1950-02-01', number: '999 000 0009' },
    referral: { from: 'family doctor', reason: 'T -3.0', unit: 'thornbeck', tier: 'routine' },
    on: '2026-11-24' as PlainDate,
    ...more,
  });
  test('gives a person a standing at once', () => {
    const unit = new DayUnit();
    unit.expect('bettina', act());
    expect(standingOf(unit.patient('p9'), teaching, day('2026-11-24')).standing).toBe('referral received');
  });
  test('twice is refused', () => {
    const unit = new DayUnit();
    unit.expect('bettina', act());
    expect(unit.refused('bettina', act())).toEqual(['already-registered']);
  });
  test('someone who looks like someone here: each must be looked at and said to be another (63)', () => {
    const unit = new DayUnit();
    unit.lookAlikes = [
      { patient: 'p1', says: 'Ada Moss, same birth date', why: 'same birth date' },
      { patient: 'p2', says: 'Ada Mosse, same birth date', why: 'same birth date' },
    ];
    expect(unit.refused('bettina', act())).toEqual(['looks-like-someone-here', 'looks-like-someone-here']);
    expect(unit.refused('bettina', act({ notTheSameAs: ['p1'] }))).toEqual(['looks-like-someone-here']);
    unit.expect('bettina', act({ notTheSameAs: ['p1', 'p2'] }));
  });
  test('every trouble is told at once, in the order of the list of names', () => {
    const refusals = new DayUnit().do(
      'bettina',
      act({
        referral: { from: 'x', reason: 'y', unit: 'nowhere', tier: 'routine' },
        on: '2026-11-25' as PlainDate,
        identity: { family: 'Moss', given: 'Ada', born: '2027-01-01', number: '1' },
      }),
    );
    const order = refusals.map(({ name }) => refusalNames.indexOf(name));
    expect(names(refusals)).toEqual(['unknown-unit', 'in-the-future', 'in-the-future', 'before-birth']);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });
});

describe('who may write what', () => {
  const roles: Role[] = [
    'nurse in charge',
    'nurse',
    'assistant',
    'prescriber',
    'pharmacist',
    'clerk',
    'service lead',
    'auditor',
    'administrator',
  ];
  test.each(handWrittenKinds)('%s: exactly the roles its kind names', (kind) => {
    const unit = known();
    const refused = roles.filter((role) =>
      names(unit.do(as(role), record(kind, kindNamed(kind).example))).includes('not-yours-to-do'),
    );
    expect(refused).toEqual(roles.filter((role) => !kindNamed(kind).writes.includes(role)));
  });
  test('auditors and administrators do nothing but what is theirs', () => {
    const unit = known();
    for (const act of [
      record('weight', weight('56')),
      { name: 'book', patient: 'p1', session: 'thornbeck-2026-11-26', place: 1 },
      { name: 'cancel session', session: 'thornbeck-2026-11-26', reason: 'x' },
    ] as Act[]) {
      expect(unit.refused(as('auditor'), act)).toContain('not-yours-to-do');
      expect(unit.refused(as('administrator'), act)).toContain('not-yours-to-do');
    }
  });
  test('no act is open to an auditor', () => {
    for (const act of [
      'register',
      'book',
      'decide',
      'second check',
      'start infusion',
      'sign protocol',
      'set unit',
      'take in',
    ] as const)
      expect(rolesFor(act)).not.toContain('auditor');
  });
  test('what an act of its own writes is not written as a line', () => {
    const unit = known();
    for (const kind of [
      'go-decision',
      'second-check',
      'infusion-started',
      'infusion-finished',
      'place-booked',
      'withdrawal',
      'session-planned',
      'unit-settings',
    ] as const) {
      const refusals = unit.do('imre', record(kind, kindNamed(kind).example));
      expect(refusals[0]).toMatchObject({ name: 'field-wrong', field: 'line.kind' });
    }
  });
});

describe('what is sent', () => {
  test('every wrong field is named with where it is and what to write', () => {
    const refusals = known().do(
      'dana',
      record('result', { analyte: 'creatinine', quantity: { comparator: '~', value: '7,9', unit: 'umol' } }),
    );
    expect(refusals.map(({ name, field }) => [name, field])).toEqual([
      ['field-wrong', 'line.body.quantity.comparator'],
      ['field-wrong', 'line.body.quantity.value'],
      ['field-wrong', 'line.body.quantity.unit'],
    ]);
    for (const { remedy } of refusals) expect(remedy?.length).toBeGreaterThan(5);
  });
  test.each([
    ['creatinine', 'mmol/L'],
    ['vitamin D', 'umol/L'],
    ['adjusted calcium', 'g/L'],
  ])('%s in %s is refused (9, 10, 11)', (analyte, unit) => {
    const [refusal] = known().do(
      'dana',
      record('result', { analyte, quantity: { comparator: '', value: '79', unit } }),
    );
    expect(refusal).toMatchObject({ name: 'field-wrong', field: 'line.body.quantity.unit' });
  });
  test('nothing of tomorrow, and nothing of later today', () => {
    const unit = known();
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-25'))).toEqual(['in-the-future']);
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-24T09:01:00+00:00'))).toEqual([
      'in-the-future',
    ]);
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-24T10:00:00+01:00'))).toEqual([]);
  });
  test('nothing before birth; with only a year known, nothing before that year', () => {
    const unit = known();
    expect(unit.refused('dana', record('weight', weight('56'), '1941-06-01'))).toEqual(['before-birth']);
    const identity = unit.newest('identity');
    unit.expect('bettina', record('identity', { ...identity.body, born: '1941' }, '2026-11-24', identity.id));
    expect(unit.refused('dana', record('weight', weight('56'), '1940-12-31'))).toEqual(['before-birth']);
    expect(unit.refused('dana', record('weight', weight('56'), '1941-01-01'))).toEqual([]);
  });
  test('someone nobody knows', () => {
    expect(new DayUnit().refused('dana', record('weight', weight('56')))).toContain('unknown-patient');
  });
  test('a prescription ends after it begins and names a regimen of the protocol', () => {
    const refusals = known().do(
      'halina',
      record('prescription', { regimen: 'monthly', validFrom: '2026-12-01', validUntil: '2026-11-01' }),
    );
    expect(refusals.map(({ field }) => field)).toEqual(['line.body.validUntil', 'line.body.regimen']);
  });
  test('the same dose told twice is one dose (80)', () => {
    const unit = known();
    const dose = { medicine: 'zoledronic acid 5 mg', setting: 'ward' };
    unit.expect('imre', record('dose', dose, '2026-01-10'));
    expect(unit.refused('dana', record('dose', { ...dose, setting: 'elsewhere' }, '2026-01-10'))).toEqual([
      'step-already-done',
    ]);
  });
  test('signatures and clearances point at entries of these notes, of their kind', () => {
    const unit = known();
    unit.expect('dana', record('weight', weight('56')));
    expect(unit.refused('imre', record('results-signed', { results: ['nothing'] }))).toEqual(['no-such-entry']);
    expect(unit.refused('imre', record('results-signed', { results: [unit.newest('weight').id] }))).toEqual([
      'entry-of-another-kind',
    ]);
    expect(
      unit.refused(
        'halina',
        record('prescriber-decision', { question: 'part dose counts', about: unit.newest('weight').id, reason: 'x' }),
      ),
    ).toEqual(['entry-of-another-kind']);
  });
  test('a fracture of another site names its bone', () => {
    const unit = known();
    const broken = { site: 'other', dateKnown: true };
    expect(unit.do('dana', record('fracture', broken))).toMatchObject([
      { name: 'field-wrong', field: 'line.body.bone' },
    ]);
    unit.expect('dana', record('fracture', { ...broken, bone: 'ankle' }));
  });
  test('lines sent together are all written or none', () => {
    const unit = known();
    const line = (kind: KindName, body: unknown) => ({ kind, body, effectiveAt: '2026-11-24' as PlainDate });
    expect(
      unit.refused('dana', {
        name: 'record together',
        patient: 'p1',
        lines: [line('weight', weight('56')), line('weight', weight('heavy'))],
      }),
    ).toEqual(['field-wrong']);
    expect(factsOf(unit.patient(), 'weight')).toEqual([]);
    unit.expect('dana', {
      name: 'record together',
      patient: 'p1',
      lines: [
        line('weight', weight('56')),
        line('height', { quantity: { comparator: '', value: '160', unit: 'cm' }, which: 'peak adult' }),
      ],
    });
  });
});

describe('corrections and withdrawals', () => {
  test('a correction stands in for what it corrects; both stay in the notes', () => {
    const unit = known();
    unit.expect('dana', record('weight', weight('65.2')));
    const wrong = unit.newest('weight');
    unit.expect('dana', record('weight', weight('56.2'), '2026-11-24', wrong.id));
    expect(factsOf(unit.patient(), 'weight').map(({ body }) => body.quantity.value)).toEqual(['56.2']);
    expect(unit.entries().filter(({ kind }) => kind === 'weight')).toHaveLength(2);
    expect(unit.refused('dana', record('weight', weight('57'), '2026-11-24', wrong.id))).toEqual(['no-such-entry']);
  });
  test('of another kind, or of nothing, is refused', () => {
    const unit = known();
    unit.expect('dana', record('weight', weight('65.2')));
    expect(
      unit.refused(
        'dana',
        record(
          'height',
          { quantity: { comparator: '', value: '160', unit: 'cm' }, which: 'peak adult' },
          '2026-11-24',
          unit.newest('weight').id,
        ),
      ),
    ).toEqual(['entry-of-another-kind']);
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-24', 'nothing'))).toEqual(['no-such-entry']);
  });
  test('withdrawn once, not twice; not by someone who may not write the kind', () => {
    const unit = known();
    unit.expect('dana', record('weight', weight('65.2')));
    const withdraw: Act = { name: 'withdraw', patient: 'p1', entry: unit.newest('weight').id, reason: 'wrong notes' };
    expect(unit.refused('bettina', withdraw)).toEqual(['not-yours-to-do']);
    unit.expect('dana', withdraw);
    expect(factsOf(unit.patient(), 'weight')).toEqual([]);
    expect(unit.refused('dana', withdraw)).toEqual(['already-withdrawn']);
  });
  test('a place is given up, not withdrawn: the list holds it too', () => {
    const unit = new DayUnit().booked();
    expect(
      unit.refused('bettina', { name: 'withdraw', patient: 'p1', entry: unit.newest('place-booked').id, reason: 'x' }),
    ).toEqual(['part-of-a-finished-step']);
  });
});

describe('when care has ended', () => {
  test('of the dead nothing new is written after the day; what happened before still can be', () => {
    const unit = known();
    unit.expect('bettina', record('died', { source: 'daughter' }, '2026-11-20'));
    expect(unit.refused('dana', record('weight', weight('56')))).toEqual(['has-died']);
    expect(unit.refused('bettina', record('referral', entryKinds.referral.example))).toEqual(['has-died']);
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-19'))).toEqual([]);
  });
  test('a death recorded for the wrong person is withdrawn and care goes on', () => {
    const unit = known();
    unit.expect('bettina', record('died', { source: 'daughter' }, '2026-11-20'));
    unit.expect('bettina', {
      name: 'withdraw',
      patient: 'p1',
      entry: unit.newest('died').id,
      reason: 'another patient of that name',
    });
    expect(unit.refused('dana', record('weight', weight('56')))).toEqual([]);
  });
  test('a closed person is reopened first, or referred again', () => {
    const unit = known();
    unit.expect('imre', record('triage', { outcome: 'accepted' }));
    unit.expect('imre', record('closed', { reason: 'on another treatment' }));
    unit.at('2026-11-25T09:00:00.000Z');
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-25'))).toEqual(['care-has-ended']);
    unit.expect('imre', record('reopened', { reason: 'rang us' }, '2026-11-25'));
    expect(unit.refused('dana', record('weight', weight('56'), '2026-11-25'))).toEqual([]);
  });
  test('their place goes to someone else', () => {
    const unit = new DayUnit().booked();
    unit.write('bettina', 'died', { source: 'ward' });
    unit.expect('bettina', {
      name: 'give up place',
      patient: 'p1',
      session: 'thornbeck-2026-11-26',
      reason: 'has died',
      askedBy: 'the unit',
    });
  });
});

describe('from where a person stands', () => {
  test.each<[string, KindName, unknown]>([
    ['a referral is decided once', 'triage', { outcome: 'accepted' }],
    ['nothing to reopen', 'reopened', { reason: 'x' }],
    ['no transfer to acknowledge', 'transfer-acknowledged', { by: 'x' }],
  ])('%s', (_, kind, body) => {
    const unit = known();
    unit.expect('imre', record('triage', { outcome: 'accepted' }));
    expect(unit.refused('imre', record(kind, body))).toEqual(['not-possible-from-here']);
  });
});

describe('bringing in a row of a register', () => {
  const line = (kind: KindName, body: unknown, effectiveAt = '2026-11-24') => ({
    kind,
    body,
    effectiveAt: effectiveAt as PlainDate,
  });
  const identity = line('identity', { family: 'Moss', given: 'Ada', born: '1950-02-01', number: '999 000 0009' });
  const takeIn = (lines: ReturnType<typeof line>[], isNew = true): Act => ({
    name: 'take in',
    patient: 'p9',
    isNew,
    lines,
  });
  test('as a whole: name, referral and doses of years ago', () => {
    const unit = new DayUnit();
    unit.expect(
      'bettina',
      takeIn([
        identity,
        line('referral', entryKinds.referral.example),
        line('triage', { outcome: 'accepted' }),
        line('dose', { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' }, '2025-03-14'),
      ]),
    );
    expect(standingOf(unit.patient('p9'), teaching, day('2026-01-01')).standing).toBe('between doses');
  });
  test('or not at all, with every line that is wrong', () => {
    const refusals = new DayUnit().do(
      'bettina',
      takeIn([
        identity,
        line('dose', { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' }, '1949-03-14'),
        line('weight', { quantity: 'heavy' }),
      ]),
    );
    expect(refusals.map(({ name, field }) => [name, field])).toEqual([
      ['field-wrong', 'lines.2.body.quantity'],
      ['field-wrong', 'lines.2.body.method'],
      ['before-birth', 'lines.1.effectiveAt'],
    ]);
  });
  test('a person without a reason to be ours is not taken in', () => {
    expect(new DayUnit().refused('bettina', takeIn([identity]))).toEqual(['not-possible-from-here']);
  });
  test.each<KindName>(['consent', 'prescription', 'results-signed', 'go-decision', 'prescriber-exception'])(
    '%s is decided here, not brought in',
    (kind) => {
      expect(
        new DayUnit().refused(
          'imre',
          takeIn([identity, line('referral', entryKinds.referral.example), line(kind, kindNamed(kind).example)]),
        ),
      ).toEqual(['field-wrong']);
    },
  );
  test('results brought in wait for a signature', () => {
    const unit = new DayUnit();
    unit.expect(
      'bettina',
      takeIn([
        identity,
        line('referral', entryKinds.referral.example),
        line('result', entryKinds.result.example, '2026-11-20'),
      ]),
    );
    expect(factsOf(unit.patient('p9'), 'results-signed')).toEqual([]);
  });
  test('new and known are told apart', () => {
    const unit = known();
    expect(unit.refused('bettina', { name: 'take in', patient: 'p1', isNew: true, lines: [identity] })).toContain(
      'already-registered',
    );
    expect(unit.refused('bettina', takeIn([identity], false))).toContain('unknown-patient');
  });
  test('rows that wait are settled once', () => {
    const unit = new DayUnit();
    const waiting = {
      fingerprint: 'f',
      row: 17,
      cells: { Born: '31.02.1944' },
      problems: [{ column: 'Born', problem: 'impossible-date', says: 'not a date', remedy: 'look it up' }],
    };
    const run = { file: 'register.csv', fingerprint: 'f', mapping: '{}', rows: 20, taken: 19, waiting: 1, known: 0 };
    expect(unit.refused('bettina', { name: 'note import', register: 'imports', run, waiting: [] })).toEqual([
      'field-wrong',
    ]);
    unit.expect('bettina', { name: 'note import', register: 'imports', run, waiting: [waiting] });
    const settle = (row: number, reason?: string): Act => ({
      name: 'settle row',
      register: 'imports',
      body: { fingerprint: 'f', row, outcome: 'left out', ...(reason === undefined ? {} : { reason }) },
    });
    expect(unit.refused('bettina', settle(18, 'not ours'))).toEqual(['row-unknown']);
    expect(unit.refused('bettina', settle(17))).toEqual(['field-wrong']);
    unit.expect('bettina', settle(17, 'not ours'));
    expect(unit.refused('bettina', settle(17, 'not ours'))).toEqual(['row-already-settled']);
  });
});

test('an act names the ledgers it reads, in ascending order, each once', () => {
  expect(
    subjectsOf({ name: 'move', patient: 'p1', from: 's2', to: 's1', place: 1, reason: 'x', askedBy: 'the unit' }),
  ).toEqual(['patient/p1', 'session/s1', 'session/s2']);
  expect(
    subjectsOf({ name: 'move', patient: 'p1', from: 's1', to: 's1', place: 1, reason: 'x', askedBy: 'the unit' }),
  ).toEqual(['patient/p1', 'session/s1']);
  expect(subjectsOf(record('arrived', { session: 's1' }))).toEqual(['patient/p1', 'session/s1']);
  expect(subjectsOf(record('arrived', { session: '../x' }))).toEqual(['patient/p1']);
});
