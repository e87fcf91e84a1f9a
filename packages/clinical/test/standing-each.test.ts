/**
 * Each standing in full: what is said, who owns the next move, on which day, since when. The days of "look again" are
 * the teaching protocol's; that each is the protocol's to decide: looked-at-again.test.ts.
 */
import { describe, expect, test } from 'vitest';
import { on } from './standing-on.ts';

const referred = `
person  female, born 1941-06-02
1 Sep 2026  referral from "fracture clinic", reason "wrist fracture", unit thornbeck, tier routine
`;
const inCare = `${referred}3 Sep 2026  triage outcome accepted
`;
const given = `${inCare}14 Oct 2026  dose zoledronic acid 5 mg, this service
`;

describe('before a first dose', () => {
  test('a referral is decided within seven days; returned, it is looked at after 28', () => {
    expect(on(referred, '2026-09-02')).toEqual([
      'referral received',
      'referral received',
      'nurse in charge',
      '2026-09-08',
      '2026-09-01',
    ]);
    expect(on(`${referred}3 Sep 2026  triage outcome returned, reason "under 18"`, '2026-09-04')).toEqual([
      'returned to referrer',
      'returned to referrer',
      'nurse in charge',
      '2026-10-01',
      '2026-09-03',
    ]);
  });
  test('in work-up: 28 days, or the day a call said to call back', () => {
    expect(on(inCare, '2026-09-04')).toEqual(['in work-up', 'in work-up', 'nurse', '2026-10-01', '2026-09-03']);
    const called = (date: string, back = ', call back on 12 Sep 2026') =>
      on(`${inCare}${date}  call telephone about recall, reached${back}`, '2026-09-06')[3];
    expect(called('3 Sep 2026'), 'on the first day').toBe('2026-09-12');
    expect(called('6 Sep 2026'), 'today').toBe('2026-09-12');
    expect(called('7 Sep 2026'), 'a call to come').toBe('2026-10-01');
    expect(called('2 Sep 2026'), 'before this standing').toBe('2026-10-01');
    expect(called('5 Sep 2026', ''), 'nothing named').toBe('2026-10-01');
  });
  test('waiting for a place: seven days from the latest of prescription, consent and triage', () => {
    const consent = (how: string) => `10 Sep 2026  consent ${how}\n`;
    const order = '12 Sep 2026  prescription zoledronic-acid-yearly from 12 Sep 2026 to 11 Sep 2027\n';
    expect(on(`${inCare}${consent('given spoken')}${order}`, '2026-09-12')).toEqual([
      'waiting for a place',
      'waiting for a place',
      'clerk',
      '2026-09-19',
      '2026-09-12',
    ]);
    expect(on(`${inCare}${consent('given spoken')}${order}`, '2027-09-11')[0], 'its last day').toBe(
      'waiting for a place',
    );
    expect(on(`${inCare}${consent('given spoken')}${order}`, '2026-09-11')[0], 'before it is written').toBe(
      'in work-up',
    );
    expect(on(`${inCare}${order}`, '2026-09-12')[0], 'nobody asked').toBe('in work-up');
    expect(on(`${inCare}${order}13 Sep 2026  consent given spoken`, '2026-09-12')[0]).toBe('in work-up');
    expect(on(`${inCare}${consent('not given')}${order}`, '2026-09-12')[0]).toBe('in work-up');
    const called = '13 Sep 2026  call telephone about recall, reached, call back on 30 Sep 2026\n';
    expect(on(`${inCare}${consent('given spoken')}${order}${called}`, '2026-09-14')[3]).toBe('2026-09-30');
  });
});

describe('between doses and after', () => {
  test('next due a year on; from the recall the due date is the next day to look', () => {
    expect(on(given, '2026-10-15')).toEqual([
      'between doses',
      'between doses: next due 14 Oct 2027',
      'clerk',
      '2027-08-05',
      '2026-10-14',
    ]);
    expect(on(given, '2027-08-05')[3]).toBe('2027-10-14');
    expect(on(given, '2027-08-04')[3]).toBe('2027-08-05');
  });
  test('without a protocol no due date can be told', () =>
    expect(on(given, '2026-10-15', 'none')).toEqual([
      'between doses',
      'between doses: the due date cannot be told without a protocol in force',
      'nurse in charge',
      '2026-10-14',
      '2026-10-14',
    ]));
  test('overdue from the 43rd day after, looked at a week later', () => {
    expect(on(given, '2027-11-25')[0]).toBe('between doses');
    expect(on(given, '2027-11-26')).toEqual([
      'overdue',
      'overdue: since 14 Oct 2027',
      'nurse in charge',
      '2027-12-03',
      '2027-11-26',
    ]);
  });
  test('a planned break has its end on it, and is in review from that day', () => {
    const paused = `${given}15 Oct 2026  course review planned break until 14 Oct 2028, triggers "a fracture", "five years"\n`;
    expect(on(paused, '2026-10-16')).toEqual([
      'on planned break',
      'on planned break: review on 14 Oct 2028',
      'nurse in charge',
      '2028-10-14',
      '2026-10-15',
    ]);
    expect(on(paused, '2028-10-14')).toEqual([
      'in review',
      'in review: the planned break ended on 14 Oct 2028',
      'prescriber',
      '2028-11-11',
      '2028-10-14',
    ]);
    expect(on(`${paused}1 Feb 2027  fracture hip`, '2027-02-02')[0]).toBe('in review');
  });
});

describe('under other regimens', () => {
  const ordered = (regimen: string) => `${inCare}4 Sep 2026  prescription ${regimen} from 4 Sep 2026 to 3 Sep 2030\n`;
  test('a daily medicine runs to its recorded last day, that day included, and then asks what follows', () => {
    const taken = `${ordered('teriparatide-daily')}10 Sep 2026  dose teriparatide, home, until 1 Mar 2028\n`;
    expect(on(taken, '2028-03-01').slice(0, 2)).toEqual([
      'between doses',
      expect.stringMatching(/^between doses: teriparatide daily until 1 Mar 2028; /),
    ]);
    expect(on(taken, '2028-03-02').slice(0, 2)).toEqual([
      'in review',
      expect.stringMatching(/^in review: teriparatide ended on 1 Mar 2028: what follows it; /),
    ]);
  });
  test('a referral whose denosumab runs says so after a colon', () =>
    expect(on(`${referred}1 Feb 2026  dose denosumab 60 mg, elsewhere`, '2026-09-02')[1]).toMatch(
      /^referral received: denosumab last on 1 Feb 2026/,
    ));
  test('where no next dose is called for, none is due', () =>
    expect(on(`${ordered('denosumab-120')}10 Sep 2026  dose denosumab 120 mg, this service`, '2026-09-11')[1]).toMatch(
      /^between doses: no next dose is called for here/,
    ));
});

describe('out of our hands', () => {
  test('said no: to this dose 84 days, to this medicine a prescriber after 28, to all contact a year; or the day they named', () => {
    expect(on(`${inCare}1 Oct 2026  said no to this dose, "no"`, '2026-10-02')).toEqual([
      'said no',
      'said no: to this dose; ask again on 24 Dec 2026',
      'nurse in charge',
      '2026-12-24',
      '2026-10-01',
    ]);
    expect(on(`${inCare}1 Oct 2026  said no to this medicine, "no"`, '2026-10-02').slice(2, 4)).toEqual([
      'prescriber',
      '2026-10-29',
    ]);
    expect(on(`${inCare}1 Oct 2026  said no to this dose, "no", ask again on 5 Nov 2026`, '2026-10-02')[3]).toBe(
      '2026-11-05',
    );
  });
  test('cannot be reached: the day named', () =>
    expect(
      on(`${inCare}1 Oct 2026  cannot-be-reached tried "three calls", look again on 1 Dec 2026`, '2026-10-02'),
    ).toEqual([
      'cannot be reached',
      'cannot be reached: look again on 1 Dec 2026',
      'nurse in charge',
      '2026-12-01',
      '2026-10-01',
    ]));
  test('transferred out: chased by the clerk until it is acknowledged', () => {
    const out = `${inCare}1 Oct 2026  transfer-out to "another bone unit", chase on 20 Oct 2026\n`;
    expect(on(out, '2026-10-01')).toEqual([
      'transferred out',
      'transferred out: another bone unit, not acknowledged',
      'clerk',
      '2026-10-20',
      '2026-10-01',
    ]);
    const answered = `${out}1 Oct 2026  transfer-acknowledged by "their office"\n`;
    expect(on(answered, '2026-10-01').slice(1, 4)).toEqual([
      'transferred out: another bone unit, acknowledged',
      'nobody',
      undefined,
    ]);
    const again = `${answered}9 Oct 2026  transfer-out to "a third unit", chase on 30 Oct 2026\n`;
    expect(on(again, '2026-10-10').slice(1, 4), 'an answer to the first is none to the second').toEqual([
      'transferred out: a third unit, not acknowledged',
      'clerk',
      '2026-10-30',
    ]);
    expect(on(`${out}5 Oct 2026  transfer-acknowledged by "their office"`, '2026-10-04')[2], 'not yet').toBe('clerk');
  });
  test('another treatment: its name and its day', () =>
    expect(
      on(
        `${given}15 Oct 2026  course review other treatment romosozumab due 1 Dec 2026, "new spine fracture"`,
        '2026-10-16',
      ),
    ).toEqual([
      'moved to other treatment',
      'moved to other treatment: romosozumab, due 1 Dec 2026',
      'nurse in charge',
      '2026-12-01',
      '2026-10-15',
    ]));
  test('closed says why and has no next day; so has death', () => {
    expect(on(`${inCare}1 Oct 2026  closed reason "with the family doctor"`, '2026-10-02')).toEqual([
      'closed',
      'closed: with the family doctor',
      'nobody',
      undefined,
      '2026-10-01',
    ]);
    expect(on(`${inCare}1 Oct 2026  died source "family doctor"`, '2026-10-02')).toEqual([
      'died',
      'died',
      'nobody',
      undefined,
      '2026-10-01',
    ]);
  });
  test('nobody brought them into care: today, the nurse in charge', () =>
    expect(on('person  female, born 1941-06-02', '2026-10-02').slice(0, 4)).toEqual([
      'not accounted for',
      'not accounted for: no referral and no dose',
      'nurse in charge',
      '2026-10-02',
    ]));
});

describe('booked, here, put off', () => {
  const booked = `${inCare}1 Oct 2026  place 1 on 20 Oct 2026 at 09:30, unit thornbeck, session s1\n`;
  test('booked: its day and hour, from the day it was booked', () => {
    expect(on(booked, '2026-10-02')).toEqual([
      'booked',
      'booked: 20 Oct 2026, 09:30',
      'nurse in charge',
      '2026-10-20',
      '2026-10-01',
    ]);
    expect(on(booked, '2026-10-20')[0], 'on the day').toBe('booked');
    expect(on(booked, '2026-10-21')[0], 'the day after').toBe('in work-up');
  });
  const came = `${booked}20 Oct 2026  arrived session s1, identifiers [full name, birth date]\n`;
  test('here today, until they leave', () =>
    expect(on(came, '2026-10-20')).toEqual([
      'here today',
      'here today',
      'nurse in charge',
      '2026-10-20',
      '2026-10-20',
    ]));
  const away = `${came}20 Oct 2026  go-decision decision put off, reason code unwell, basis {on 20 Oct 2026, known seq 5, protocol version t, rule set 1, verdict not ready}\n`;
  test('put off, and not gone home yet', () =>
    expect(on(away, '2026-10-20').slice(0, 2)).toEqual(['here today', 'here today: put off, not gone home yet']));
  test('put off: looked at after a week, with the reason, or on the day a call named', () => {
    const left = `${away}20 Oct 2026  left card given yes\n`;
    expect(on(left, '2026-10-21')).toEqual([
      'put off',
      'put off: unwell; look again on 27 Oct 2026',
      'nurse in charge',
      '2026-10-27',
      '2026-10-20',
    ]);
    const called = `${left}21 Oct 2026  call telephone about recall, reached, call back on 2 Nov 2026\n`;
    expect(on(called, '2026-10-22')[3]).toBe('2026-11-02');
  });
});
