/**
 * Where a person is at the edges: what the decision of a day, the place of a dose and the order of writing make of it. The rules are
 * those of docs/readiness.md ("Clocks", R7) and of the standings' own page in the guide; common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { on } from './standing-on.ts';

const referred = `
person  female, born 1941-06-02
1 Sep 2026  referral from "fracture clinic", reason "wrist fracture", unit thornbeck, tier routine
`;
const inCare = `${referred}3 Sep 2026  triage outcome accepted
`;
const ordered = (regimen: string, more = '') =>
  `4 Sep 2026  prescription ${regimen} from 4 Sep 2026 to 3 Sep 2028${more}\n`;
const dose = (medicine: string, setting = 'this service', date = '14 Oct 2026') =>
  `${date}  dose ${medicine}, ${setting}\n`;
const where = (text: string, date: string) => on(text, date)[0];

describe('what a dose makes of a standing', () => {
  test.each([
    ['zoledronic acid 5 mg', 'this service', 'between doses'],
    ['zoledronic acid 5 mg', 'home', 'between doses'],
    ['zoledronic acid 5 mg', 'ward', 'referral received'],
    ['zoledronic acid 5 mg', 'elsewhere', 'referral received'],
    ['denosumab 60 mg', 'this service', 'in work-up'],
    ['zoledronic acid 4 mg', 'this service', 'referral received'],
  ])('%s, %s, given to someone only referred: %s', (medicine, setting, standing) =>
    expect(where(`${referred}${dose(medicine, setting)}`, '2026-10-15')).toBe(standing),
  );

  const onBreak = `${inCare}${dose('zoledronic acid 5 mg')}1 Nov 2026  course review planned break until 2029-11-01, triggers "a fracture", ok, by a specialist
`;
  test('a dose of ours ends a planned break; another bone medicine does not, nor a dose elsewhere', () => {
    expect(where(onBreak, '2027-11-15')).toBe('on planned break');
    expect(where(`${onBreak}${dose('zoledronic acid 5 mg', 'this service', '14 Nov 2027')}`, '2027-11-15')).not.toBe(
      'on planned break',
    );
    expect(where(`${onBreak}${dose('denosumab 60 mg', 'this service', '14 Nov 2027')}`, '2027-11-15')).toBe(
      'on planned break',
    );
    expect(where(`${onBreak}${dose('zoledronic acid 5 mg', 'ward', '14 Nov 2027')}`, '2027-11-15')).toBe(
      'on planned break',
    );
  });
});

describe('the day of a visit', () => {
  const basis = 'basis {on 20 Oct 2026, known seq 5, protocol version t, rule set 1, verdict ready}';
  const booked = `${inCare}10 Oct 2026  place 3 on 20 Oct 2026 at 10:40, unit thornbeck, session s1\n`;
  const came = `${booked}20 Oct 2026  arrived session s1, identifiers [full name, birth date]\n`;
  test('"go" puts nobody off', () => {
    const went = `${came}20 Oct 2026  go-decision decision go, ${basis}\n`;
    expect(where(went, '2026-10-20')).toBe('here today');
    expect(where(`${went}20 Oct 2026  left card given yes\n`, '2026-10-21')).toBe('in work-up');
  });
  test('gone home, the place of the day is no place to come', () => {
    const gone = `${came}20 Oct 2026  go-decision decision go, ${basis}
20 Oct 2026  dose zoledronic acid 5 mg, this service
20 Oct 2026  left card given yes
`;
    expect(where(booked, '2026-10-20')).toBe('booked');
    expect(where(gone, '2026-10-20')).toBe('between doses');
    const again = '20 Oct 2026  place 4 on 21 Oct 2026 at 11:00, unit thornbeck, session s2\n';
    expect(where(`${gone}${again}`, '2026-10-20')).toBe('booked');
  });
  test('the last call that named a day stands, also when a later call names none', () => {
    const called = (date: string, back: string) => `${date}  call telephone about recall, reached${back}\n`;
    const named = `${inCare}${called('5 Sep 2026', ', call back on 12 Sep 2026')}${called('7 Sep 2026', '')}`;
    expect(on(named, '2026-09-08')[3]).toBe('2026-09-12');
  });
});

describe('why a review is open', () => {
  test("three of three are a review's to decide, not the single dose of Paget's disease", () => {
    const yearly = `${inCare}${ordered('zoledronic-acid-yearly', ', planned doses 1')}${dose('zoledronic acid 5 mg')}`;
    expect(on(yearly, '2026-10-15')[1]).toBe('in review: 1 dose of 1 given: review before another');
    const single = `${inCare}${ordered('zoledronic-acid-pagets-disease')}${dose('zoledronic acid 5 mg')}`;
    expect(on(single, '2026-10-15')[1]).toContain('nobody is recalled');
  });
  test('a hip fracture before the planned doses of the other disease are given is what is said', () => {
    const two = `${inCare}${ordered('zoledronic-acid-pagets-disease', ', planned doses 2')}${dose('zoledronic acid 5 mg')}`;
    expect(on(`${two}20 Oct 2026  fracture hip, treatment repaired`, '2026-10-21')[1]).toBe(
      'in review: hip fracture on treatment, 20 Oct 2026',
    );
  });
  test('a daily medicine runs to its end; a hip fracture on it opens a review at once', () => {
    const begun = `${inCare}${ordered('teriparatide-daily', ', planned doses 2')}${dose('teriparatide')}`;
    expect(on(begun, '2026-10-15')[1]).toContain('between doses: teriparatide daily until 14 Oct 2028');
    expect(on(`${begun}20 Oct 2026  fracture hip, treatment repaired`, '2026-10-21')[1]).toContain(
      'in review: hip fracture on treatment, 20 Oct 2026',
    );
  });
  test('stopped by a review: the review says so', () => {
    const stopped = `${inCare}${dose('zoledronic acid 5 mg')}1 Nov 2026  course review stop, ok, by a specialist\n`;
    expect(on(stopped, '2026-11-02').slice(0, 3)).toEqual([
      'in review',
      'in review: a review on 1 Nov 2026 ended the treatment',
      'prescriber',
    ]);
  });
});

describe('who has handed whom over', () => {
  const out = (date: string, chase: string) => `${date}  transfer-out to "the unit of ${date}", chase on ${chase}\n`;
  test('a transfer to come is none yet', () =>
    expect(
      on(`${inCare}${out('1 Oct 2026', '20 Oct 2026')}${out('1 Nov 2026', '20 Nov 2026')}`, '2026-10-15').slice(1, 4),
    ).toEqual(['transferred out: the unit of 1 Oct 2026, not acknowledged', 'clerk', '2026-10-20']));
  test('an answer dated before a transfer, though written after it, answers the one before', () =>
    expect(
      on(
        `${inCare}${out('1 Oct 2026', '20 Oct 2026')}${out('10 Oct 2026', '30 Oct 2026')}9 Oct 2026  transfer-acknowledged by "their office"\n`,
        '2026-10-15',
      ).slice(1, 4),
    ).toEqual(['transferred out: the unit of 10 Oct 2026, not acknowledged', 'clerk', '2026-10-30']));
  test('of one day, an answer written before the transfer answers the one before', () =>
    expect(
      on(
        `${inCare}${out('1 Oct 2026', '20 Oct 2026')}10 Oct 2026  transfer-acknowledged by "their office"\n${out('10 Oct 2026', '30 Oct 2026')}`,
        '2026-10-15',
      ).slice(1, 4),
    ).toEqual(['transferred out: the unit of 10 Oct 2026, not acknowledged', 'clerk', '2026-10-30']));
});

describe('a clock that runs (denosumab)', () => {
  const denosumab = `${inCare}${ordered('denosumab-60-six-monthly')}${dose('denosumab 60 mg', 'this service', '15 Jan 2026')}`;
  test('stays with someone closed: the nurse in charge, by the clock', () => {
    const closed = `${denosumab}1 Nov 2026  closed reason "moved away"\n`;
    const [standing, says, owner, next] = on(closed, '2026-11-02');
    expect([standing, owner]).toEqual(['closed', 'nurse in charge']);
    expect(says).toMatch(/^closed: moved away; .*denosumab/);
    expect(next).toBeDefined();
    expect(on(closed, '2026-11-02', 'none').slice(0, 4)).toEqual(['closed', 'closed: moved away', 'nobody', undefined]);
  });
  test('the day of a plan stands before the clock', () => {
    const planned = `${denosumab}20 Jun 2026  course review other treatment "zoledronic acid" due 10 Jul 2026, ok, by a specialist
1 Jul 2026  closed reason "with the family doctor"
`;
    expect(on(planned, '2026-07-02')[3]).toBe('2026-07-10');
  });
  test('has nothing to say of someone whose transfer was acknowledged', () =>
    expect(
      on(
        `${denosumab}1 Oct 2026  transfer-out to "another unit", chase on 20 Oct 2026
2 Oct 2026  transfer-acknowledged by "their office"
`,
        '2026-10-15',
      ).slice(0, 4),
    ).toEqual(['transferred out', 'transferred out: another unit, acknowledged', 'nobody', undefined]));
});
