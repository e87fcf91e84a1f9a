/** Places on lists, sessions, and a protocol signed by two. Rules: design page (Booking; idea 8), practice section 3 hazards 54 and 60. */
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type PlainDate,
  bookingTrouble,
  day,
  emptyNumbers,
  factsOf,
  kindNamed,
  placeFrom,
  protocolState,
  protocolVersions,
  protocolsInForce,
  sessionOf,
  teachingSheet,
} from '@twelvemonth/clinical';
import { DayUnit, as, people } from './a-day-unit.ts';

const book = (
  session = 'thornbeck-2026-11-26',
  place = 1,
  accepts?: { causes: string[]; reason: string },
  patient = 'p1',
): Act => ({ name: 'book', patient, session, place, ...(accepts === undefined ? {} : { accepts }) });
const move = (to: string, place = 1, accepts?: { causes: string[]; reason: string }): Act => ({
  name: 'move',
  patient: 'p1',
  from: 'thornbeck-2026-11-26',
  to,
  place,
  reason: 'holiday',
  askedBy: 'the patient',
  ...(accepts === undefined ? {} : { accepts }),
});
const late = (): DayUnit => {
  const unit = new DayUnit().ready();
  unit.plan('thornbeck-2027-02-02', '2027-02-02');
  return unit;
};
const taken = (unit: DayUnit, session: string) => sessionOf(unit.record(`session/${session}`))?.taken;

describe('a unit described anew', () => {
  const settings = {
    name: 'Thornbeck Day Unit',
    zone: 'Europe/London',
    chairs: 6,
    opensAt: '08:30',
    closesAt: '17:00',
    sessionWeekdays: [2, 4],
    bloodWeekdays: [1, 2, 3, 4, 5],
    closedDays: [],
    minutesBetweenArrivals: 20,
    telephone: '01632 960100',
    demo: true,
  };
  test('in a zone nobody knows is no unit: no date of it could be told', () => {
    const read = kindNamed('unit-settings').body.safeParse({ ...settings, zone: 'Europe/Nowhere' });
    expect(read.error?.issues.map(({ path }) => path)).toEqual([['zone']]);
  });
  test('with hours that end before they begin is refused', () => {
    const body = { ...settings, opensAt: '17:00', closesAt: '08:30' };
    expect(new DayUnit().refused('margit', { name: 'set unit', unit: 'thornbeck', body })).toEqual(['field-wrong']);
  });
});

describe('booking', () => {
  test('writes the list and its mirror in one act', () => {
    const unit = new DayUnit().booked('p1', 2);
    expect(taken(unit, 'thornbeck-2026-11-26')?.get(2)).toBe('p1');
    expect(placeFrom(unit.patient(), day('2026-11-24'))).toMatchObject({
      session: 'thornbeck-2026-11-26',
      arriveAt: '09:00',
      place: 2,
    });
    expect(unit.entries('session/thornbeck-2026-11-26').at(-1)?.act).toBe(unit.newest('place-booked').act);
  });
  test.each<[string, Act, string]>([
    ['an unknown session', book('nowhere'), 'unknown-session'],
    ['a place the list does not have', book('thornbeck-2026-11-26', 4), 'no-such-place'],
  ])('%s', (_, act, name) => {
    expect(new DayUnit().ready().refused('bettina', act)).toEqual([name]);
  });
  test("a place that is someone else's, and a second place for one person", () => {
    const unit = new DayUnit().booked();
    unit.ready('p2');
    expect(unit.refused('bettina', book('thornbeck-2026-11-26', 1, undefined, 'p2'))).toEqual(['place-taken']);
    expect(unit.refused('bettina', book('thornbeck-2026-12-01', 1))).toEqual(['already-booked']);
  });
  test('a session that has been cancelled, or has been', () => {
    const unit = new DayUnit().ready();
    unit.expect('imre', { name: 'cancel session', session: 'thornbeck-2026-12-01', reason: 'no second nurse' });
    expect(unit.refused('bettina', book('thornbeck-2026-12-01'))).toEqual(['session-cancelled']);
    unit.at('2026-11-27T09:00:00.000Z');
    expect(unit.refused('bettina', book())).toEqual(['session-past']);
  });
  test('before the referral is accepted nobody has a place', () => {
    expect(
      new DayUnit()
        .register()
        .refused('imre', book('thornbeck-2026-11-26', 1, { causes: ['kidney-function'], reason: 'x' })),
    ).toContain('not-possible-from-here');
  });
});

describe('inside and outside the window', () => {
  test('every requirement is asked again for that date; outside the window each trouble is named', () => {
    const unit = late();
    const refusals = unit.do('bettina', book('thornbeck-2027-02-02'));
    expect(refusals.map(({ name, field }) => [name, field])).toEqual([
      ['outside-the-window', 'session'],
      ['trouble-not-accepted', 'kidney-function'],
      ['trouble-not-accepted', 'calcium'],
    ]);
  });
  test('a registered nurse takes each on by name, and it is kept; a clerk may not', () => {
    const unit = late();
    const accepts = { causes: ['kidney-function', 'calcium'], reason: 'bloods again in January' };
    expect(unit.refused('bettina', book('thornbeck-2027-02-02', 1, accepts))).toEqual(['not-yours-to-do']);
    expect(unit.refused('imre', book('thornbeck-2027-02-02', 1, { ...accepts, causes: ['calcium'] }))).toEqual([
      'outside-the-window',
      'trouble-not-accepted',
    ]);
    unit.expect('imre', book('thornbeck-2027-02-02', 1, accepts));
    expect(unit.newest('place-booked').body.accepted).toEqual(accepts);
  });
  test('inside a window that still depends on bloods a place can be had', () => {
    const unit = new DayUnit().ready();
    for (const id of factsOf(unit.patient(), 'result').map((one) => one.id))
      unit.expect('dana', { name: 'withdraw', patient: 'p1', entry: id, reason: "another person's sample" });
    unit.expect('bettina', book('thornbeck-2026-12-01'));
  });
  test('without a protocol in force nothing is known of any date', () => {
    const unit = new DayUnit().ready();
    expect(bookingTrouble(unit.patient(), undefined, day('2026-11-24'), day('2026-11-26'))).toMatchObject({
      verdict: 'cannot say',
      insideWindow: false,
      causes: [{ cause: 'no protocol in force' }],
    });
  });
});

describe('moving and giving up', () => {
  test('a move empties the one list and fills the other, or does neither', () => {
    const unit = new DayUnit().booked();
    unit.expect('bettina', move('thornbeck-2026-12-01', 3));
    expect(taken(unit, 'thornbeck-2026-11-26')?.size).toBe(0);
    expect(taken(unit, 'thornbeck-2026-12-01')?.get(3)).toBe('p1');
    expect(placeFrom(unit.patient(), day('2026-11-24'))?.session).toBe('thornbeck-2026-12-01');
    unit.ready('p2');
    unit.expect('bettina', book('thornbeck-2026-11-26', 1, undefined, 'p2'));
    const refused: Act = {
      name: 'move',
      patient: 'p2',
      from: 'thornbeck-2026-11-26',
      to: 'thornbeck-2026-12-01',
      place: 3,
      reason: 'x',
      askedBy: 'the unit',
    };
    expect(unit.refused('bettina', refused)).toEqual(['place-taken']);
  });
  test('moving re-runs every requirement for the new date (54)', () => {
    const unit = new DayUnit().booked();
    unit.plan('thornbeck-2027-02-02', '2027-02-02');
    expect(unit.refused('bettina', move('thornbeck-2027-02-02'))).toContain('outside-the-window');
  });
  test('within one list to another time', () => {
    const unit = new DayUnit().booked();
    expect(unit.refused('bettina', move('thornbeck-2026-11-26', 1))).toEqual(['already-booked']);
    unit.expect('bettina', move('thornbeck-2026-11-26', 3));
    expect([...(taken(unit, 'thornbeck-2026-11-26') ?? [])]).toEqual([[3, 'p1']]);
  });
  test('given up and taken again on the same day: the last word counts', () => {
    const unit = new DayUnit().booked();
    const giveUp: Act = {
      name: 'give up place',
      patient: 'p1',
      session: 'thornbeck-2026-11-26',
      reason: 'x',
      askedBy: 'the patient',
    };
    unit.expect('bettina', giveUp);
    expect(unit.refused('bettina', giveUp)).toEqual(['not-booked-there']);
    unit.expect('bettina', book());
    expect(placeFrom(unit.patient(), day('2026-11-24'))?.place).toBe(1);
    unit.expect('bettina', giveUp);
    expect(placeFrom(unit.patient(), day('2026-11-24'))).toBeUndefined();
  });
  test('someone who has arrived is put off, not moved', () => {
    const unit = new DayUnit().booked().at('2026-11-26T08:45:00.000Z').arrive();
    expect(
      unit.refused('bettina', {
        name: 'give up place',
        patient: 'p1',
        session: 'thornbeck-2026-11-26',
        reason: 'x',
        askedBy: 'the patient',
      }),
    ).toEqual(['already-here']);
  });
});

describe('sessions', () => {
  const planned = (more: Partial<Extract<Act, { name: 'plan session' }>['body']> = {}): Act => ({
    name: 'plan session',
    session: 'thornbeck-2026-12-03',
    body: {
      unit: 'thornbeck',
      on: '2026-12-03' as PlainDate,
      zone: 'Europe/London',
      arriveAt: ['08:40', '09:00'],
      opensAt: '08:30',
      closesAt: '17:00',
      ...more,
    },
  });
  test('times lie inside the opening and in order', () => {
    expect(
      new DayUnit().do('imre', planned({ arriveAt: ['09:00', '08:00', '17:00'] })).map(({ field }) => field),
    ).toEqual(['body.arriveAt.1', 'body.arriveAt.1', 'body.arriveAt.2']);
  });
  test('not in the past, not for a unit nobody has described', () => {
    expect(new DayUnit().refused('imre', planned({ on: '2026-11-23' as PlainDate, unit: 'nowhere' }))).toEqual([
      'unknown-unit',
      'session-past',
    ]);
  });
  test('with people on it a session is not cancelled, and their times are not changed under them', () => {
    const unit = new DayUnit().booked('p1', 2);
    expect(unit.refused('imre', { name: 'cancel session', session: 'thornbeck-2026-11-26', reason: 'snow' })).toEqual([
      'place-taken',
    ]);
    const replan = (arriveAt: string[]): Act => ({
      name: 'plan session',
      session: 'thornbeck-2026-11-26',
      body: {
        unit: 'thornbeck',
        on: '2026-11-26' as PlainDate,
        zone: 'Europe/London',
        arriveAt,
        opensAt: '08:30',
        closesAt: '17:00',
      },
    });
    expect(unit.refused('imre', replan(['08:40', '09:10', '09:20']))).toEqual(['place-taken']);
    expect(unit.refused('imre', replan(['08:40', '09:00', '09:40', '10:00']))).toEqual([]);
  });
  test('a clerk does not cancel', () => {
    expect(
      new DayUnit().refused('bettina', { name: 'cancel session', session: 'thornbeck-2026-12-01', reason: 'x' }),
    ).toEqual(['not-yours-to-do']);
  });
});

describe('a protocol is adopted by two people', () => {
  const sheet = { ...teachingSheet, version: 'thornbeck-2', teachingOnly: false };
  const write = (more: Partial<typeof sheet> = {}): Act => ({
    name: 'write protocol',
    unit: 'thornbeck',
    sheet: { ...sheet, ...more },
    contentHash: 'h2',
  });
  const sign = (as: 'clinician' | 'pharmacist', more: Partial<Extract<Act, { name: 'sign protocol' }>> = {}): Act => ({
    name: 'sign protocol',
    unit: 'thornbeck',
    version: 'thornbeck-2',
    contentHash: 'h2',
    as,
    inForceFrom: '2026-12-01' as PlainDate,
    ...more,
  });
  const state = (unit: DayUnit, on = '2026-11-24') =>
    protocolState(unit.record('protocol/thornbeck'), 'thornbeck-2', day(on));
  const written = (more: Partial<typeof sheet> = {}): DayUnit => {
    const unit = new DayUnit();
    unit.expect('imre', write(more));
    return unit;
  };

  test('written, signed by one, adopted, in force; the one before it is replaced', () => {
    const unit = written();
    expect(state(unit)).toBe('written');
    unit.expect('halina', sign('clinician'));
    expect(state(unit)).toBe('signed by one');
    unit.expect('priya', sign('pharmacist'));
    expect([state(unit), state(unit, '2026-12-01')]).toEqual(['adopted, not yet in force', 'in force']);
    expect(protocolState(unit.record('protocol/thornbeck'), 'thornbeck-1', day('2026-12-01'))).toBe('replaced');
    expect(protocolsInForce(unit.record('protocol/thornbeck')).map(({ protocol }) => protocol.version)).toEqual([
      'thornbeck-1',
      'thornbeck-2',
    ]);
    expect(unit.refused('halina', sign('clinician'))).toContain('already-in-force');
  });
  test('a question whose answer holds until it is cleared is kept by every later version: told then, it is not forgotten', () => {
    const without = sheet.dayQuestions.filter(({ id }) => id !== 'thigh');
    const changed = (more: Partial<(typeof sheet.dayQuestions)[number]>) =>
      sheet.dayQuestions.map((question) => (question.id === 'thigh' ? { ...question, ...more } : question));
    const unit = new DayUnit();
    for (const dayQuestions of [without, changed({ holdsOn: 'no' }), changed({ staysUntilCleared: false })])
      expect(unit.refused('imre', write({ dayQuestions }))).toEqual(['field-wrong']);
    unit.expect('imre', write({ dayQuestions: changed({ asks: 'Any new pain in hip, groin or thigh?' }) }));
    const asked = sheet.dayQuestions.filter(({ id }) => id !== 'drunk-enough');
    unit.expect('imre', write({ version: 'thornbeck-3', dayQuestions: asked }));
    const regimens = sheet.regimens.map((regimen) => ({ ...regimen, dayQuestions: [] }));
    expect(unit.refused('imre', write({ version: 'thornbeck-4', regimens }))).toEqual(['field-wrong']);
  });
  test('one person is not two, whatever roles they hold', () => {
    const unit = written();
    unit.expect('halina', sign('clinician'));
    expect(unit.refused({ staff: people.halina.staff, role: 'pharmacist' }, sign('pharmacist'))).toEqual([
      'already-signed-by-you',
    ]);
    expect(unit.refused('halina', sign('clinician'))).toEqual(['already-signed-by-you']);
  });
  test('a nurse, a clerk or a pharmacist does not sign as the clinician', () => {
    const unit = written();
    for (const who of [people.imre, people.bettina, people.priya, as('service lead')])
      expect(unit.refused(who, sign('clinician'))).toEqual(['not-yours-to-do']);
  });
  test('both sign the same text and the same first day, which has not passed', () => {
    const unit = written();
    expect(unit.refused('halina', sign('clinician', { contentHash: 'other' }))).toEqual(['content-differs']);
    expect(unit.refused('halina', sign('clinician', { inForceFrom: '2026-11-23' as PlainDate }))).toEqual([
      'field-wrong',
    ]);
    unit.expect('halina', sign('clinician'));
    expect(unit.refused('priya', sign('pharmacist', { inForceFrom: '2026-12-02' as PlainDate }))).toEqual([
      'content-differs',
    ]);
  });
  test('teaching sheets and sheets with an empty number are refused, the empty ones by name', () => {
    expect(written({ teachingOnly: true }).refused('halina', sign('clinician'))).toEqual(['teaching-only']);
    const numbers = {
      ...teachingSheet.numbers,
      vitaminDFloor: { value: null, suggestion: '50', source: 'silent', status: 'read' as const },
    };
    expect(emptyNumbers({ ...sheet, numbers })).toHaveLength(1);
    const [refusal] = written({ numbers }).do('halina', sign('clinician'));
    expect(refusal).toMatchObject({ name: 'empty-numbers' });
    expect(refusal?.says).toContain('vitaminDFloor');
  });
  test('a version keeps its text for ever', () => {
    const unit = written();
    expect(unit.refused('imre', write({ title: 'other' }))).toEqual(['field-wrong']);
    expect(protocolVersions(unit.record('protocol/thornbeck')).map(({ version }) => version)).toEqual([
      'thornbeck-1',
      'thornbeck-2',
    ]);
  });
  test('a version nobody has written cannot be signed', () => {
    expect(new DayUnit().refused('halina', sign('clinician'))).toEqual(['no-such-entry']);
  });
});
