/**
 * Where a person is in the course of care. The table is ours (docs/words.md); the tests hold it against the statements of
 * the vocabulary and the safety page: exactly one standing, an owner and a date, none without a lawful beginning.
 */
import { describe, expect, test } from 'vitest';
import {
  type Fact,
  type Held,
  type KindName,
  type StandingEvent,
  type SubjectRecord,
  addDays,
  byKind,
  day,
  entriesFromDrafts,
  heldStandings,
  parseLedger,
  recordOf,
  standingEvents,
  standingOf,
  standings,
  teaching,
  transitions,
  usualPerson,
  nothingKept,
} from '@twelvemonth/clinical';

function notes(text: string): SubjectRecord {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2020-01-01T08:00:00.000Z' }));
}
const on = (record: SubjectRecord, date: string) => standingOf(record, teaching, day(date));

const fact = <Kind extends KindName>(kind: Kind, body: Fact<Kind>['body'], date: string, seq: number): Fact => ({
  id: `e${seq}`,
  first: `e${seq}`,
  firstSeq: seq,
  act: `a${seq}`,
  seq,
  kind,
  on: day(date),
  at: undefined,
  body,
  author: { staff: 's', role: 'nurse' },
  recordedAt: '2026-01-01T00:00:00.000Z',
});
/** A ledger nobody's `decide` would have written. */
function unlawful(...facts: Fact[]): SubjectRecord {
  return {
    subject: usualPerson,
    lastSeq: facts.length,
    all: facts,
    facts: byKind(facts),
    problems: [],
    kept: nothingKept(),
  };
}

describe('the table of standings', () => {
  const cells = heldStandings.flatMap((held) =>
    standingEvents.map((event) => [held, event, transitions[event][held]] as const),
  );

  test('every cell leads to a standing that is in the table, or may not happen', () => {
    expect(cells).toHaveLength(heldStandings.length * standingEvents.length);
    for (const [, , to] of cells) expect(to === undefined || heldStandings.includes(to)).toBe(true);
  });
  test('nothing that happens makes a person unaccounted for', () => {
    expect(cells.filter(([, , to]) => to === 'not accounted for')).toEqual([]);
  });
  test('only a referral, a dose of a bone medicine or a death gives a standing to someone who had none', () => {
    const first = cells
      .filter(([held, , to]) => held === 'not accounted for' && to !== undefined)
      .map(([, event]) => event);
    expect(first.toSorted()).toEqual(['died', 'dose elsewhere', 'dose here', 'other medicine here', 'referral']);
  });
  test('death is the end: nothing leads out of it, and it can be reached from everywhere else', () => {
    expect(cells.filter(([held, , to]) => held === 'died' && to !== undefined && to !== 'died')).toEqual([]);
    expect(cells.filter(([held, event, to]) => event === 'died' && held !== 'died' && to !== 'died')).toEqual([]);
  });
  test('a closed person comes back only by a referral, by being reopened, or dies', () => {
    const out = cells
      .filter(([held, , to]) => held === 'closed' && to !== undefined && to !== 'closed')
      .map(([, event]) => event);
    expect(out.toSorted()).toEqual(['died', 'referral', 'reopened']);
  });
  test('a place is booked only for someone under care', () => {
    const may = cells.filter(([, event, to]) => event === 'place booked' && to !== undefined).map(([held]) => held);
    expect(may.toSorted()).toEqual(['in care', 'in review', 'put off', 'treated elsewhere']);
  });
  test.each<[Held, StandingEvent, Held]>([
    ['not accounted for', 'referral', 'referral received'],
    ['referral received', 'accepted', 'in care'],
    ['referral received', 'returned', 'returned to referrer'],
    ['returned to referrer', 'referral', 'referral received'],
    ['in care', 'put off', 'put off'],
    ['put off', 'dose here', 'in care'],
    ['in care', 'review: planned break', 'on planned break'],
    ['on planned break', 'reopened', 'in care'],
    ['in review', 'review: other treatment', 'moved to other treatment'],
    ['in care', 'refusal', 'said no'],
    ['said no', 'dose elsewhere', 'in care'],
    ['in care', 'cannot be reached', 'cannot be reached'],
    ['cannot be reached', 'transfer out', 'transferred out'],
    ['not accounted for', 'dose elsewhere', 'treated elsewhere'],
    ['referral received', 'other medicine here', 'in care'],
    ['moved to other treatment', 'other medicine here', 'moved to other treatment'],
    ['put off', 'other medicine here', 'in care'],
  ])('%s, then %s: %s', (held, event, to) => {
    expect(transitions[event][held]).toBe(to);
  });
});

/** Regimens of other medicines: docs/readiness.md R0 and "Clocks"; regimens and numbers of the teaching protocol. */
describe('the standing under other regimens', () => {
  const asked = `
person  female, born 1941-06-02
1 Sep 2026  referral from "fracture clinic", reason "denosumab stopped", unit thornbeck, tier routine
`;
  const ordered = (regimen: string) => `3 Sep 2026  triage outcome accepted
4 Sep 2026  prescription ${regimen} from 4 Sep 2026 to 3 Sep 2030
`;
  test('someone whose denosumab was given here and is to be replaced is in work-up, and the clock is said with it', () => {
    const record = notes(
      `${asked}10 May 2026  dose denosumab 60 mg, this service\n20 May 2026  adjusted calcium 2.34 mmol/L signed`,
    );
    expect(on(record, '2026-09-05')).toMatchObject({ standing: 'in work-up', on: day('2026-06-07') });
    expect(on(record, '2026-09-11').says).toContain('denosumab last on 10 May 2026, due 10 Nov 2026');
  });
  test('given elsewhere: a referral to decide, and no later than the clock says', () => {
    const record = notes(`${asked}1 Feb 2026  dose denosumab 60 mg, elsewhere`);
    expect(on(record, '2026-09-02')).toMatchObject({ standing: 'referral received', on: day('2026-09-02') });
  });
  test('six-monthly denosumab here: between doses, overdue 28 days after the due date and not 42', () => {
    const record = notes(
      `${asked}${ordered('denosumab-60-six-monthly')}10 Sep 2026  dose denosumab 60 mg, this service
20 Sep 2026  adjusted calcium 2.34 mmol/L signed`,
    );
    // Nobody knows the kidneys: a calcium is due within two weeks, and until it is there the next look is no later.
    expect(on(record, '2026-09-11')).toMatchObject({ standing: 'between doses', on: day('2026-09-24') });
    expect(on(record, '2026-09-21')).toMatchObject({ standing: 'between doses', on: day('2026-12-30') });
    expect(on(record, '2027-04-07').standing).toBe('between doses');
    expect(on(record, '2027-04-08')).toMatchObject({ standing: 'overdue', on: day('2027-04-08') });
    expect(on(record, '2027-03-01'), 'first in line from month 5').toMatchObject({ on: day('2027-03-01') });
  });
  test("a single dose for Paget's disease is not recalled: its effect is looked at, then the person is closed", () => {
    const record = notes(
      `${asked}${ordered('zoledronic-acid-pagets-disease')}10 Sep 2026  dose zoledronic acid 5 mg, this service`,
    );
    const now = on(record, '2026-09-11');
    expect(now).toMatchObject({ standing: 'in review', owner: 'prescriber', on: day('2027-09-10') });
    expect(now.says).toContain('nobody is recalled');
    expect(on(record, '2030-01-01').standing).toBe('in review');
  });
  test('teriparatide: between doses while it is taken, in review for what follows when it ends', () => {
    const record = notes(`${asked}${ordered('teriparatide-daily')}10 Sep 2026  dose teriparatide, home`);
    expect(on(record, '2026-09-11')).toMatchObject({ standing: 'between doses', on: day('2028-06-10') });
    expect(on(record, '2026-09-11').says).toContain('daily until 10 Sep 2028');
    expect(on(record, '2028-09-11')).toMatchObject({
      standing: 'in review',
      owner: 'prescriber',
      on: day('2028-09-11'),
    });
  });
});

describe('the standing on a day', () => {
  const inCare = `
person  female, born 1941-06-02
1 Sep 2026  referral from "fracture clinic", reason "wrist fracture", unit thornbeck, tier routine
3 Sep 2026  triage outcome accepted
`;
  test("a referral waits for the nurse in charge; accepted, the work-up is a nurse's", () => {
    const record = notes(inCare);
    expect(on(record, '2026-09-02')).toMatchObject({
      standing: 'referral received',
      owner: 'nurse in charge',
      unit: 'thornbeck',
    });
    expect(on(record, '2026-09-03')).toMatchObject({ standing: 'in work-up', owner: 'nurse' });
  });
  test('prescribed and consented to, a place is what is missing', () => {
    const record = notes(`${inCare}
10 Sep 2026  consent given spoken
10 Sep 2026  prescription zoledronic-acid-yearly from 10 Sep 2026 to 9 Sep 2027
`);
    expect(on(record, '2026-09-10')).toMatchObject({ standing: 'waiting for a place', owner: 'clerk' });
    expect(on(record, '2027-09-10').standing, 'the prescription has run out').toBe('in work-up');
  });
  test('between doses until 42 days past the due date (the teaching protocol), then overdue', () => {
    const record = notes(`${inCare}\n14 Oct 2026  dose zoledronic acid 5 mg, this service`);
    expect(on(record, '2026-10-15')).toMatchObject({ standing: 'between doses', on: addDays(day('2027-10-14'), -70) });
    expect(on(record, '2027-11-25').standing).toBe('between doses');
    expect(on(record, '2027-11-26')).toMatchObject({ standing: 'overdue', since: day('2027-11-26') });
  });
  test('after the planned doses in review, not due', () => {
    const record = notes(`${inCare}
14 Oct 2024  dose zoledronic acid 5 mg, ward
14 Oct 2025  dose zoledronic acid 5 mg, ward
14 Oct 2026  dose zoledronic acid 5 mg, this service
`);
    expect(on(record, '2026-10-15')).toMatchObject({ standing: 'in review', owner: 'prescriber' });
  });
  test('a planned break is over on its day', () => {
    const record = notes(`${inCare}
14 Oct 2026  dose zoledronic acid 5 mg, this service
15 Oct 2026  course review planned break until 14 Oct 2028, triggers "a fracture", "five years of treatment"
`);
    expect(on(record, '2028-10-13')).toMatchObject({ standing: 'on planned break', on: day('2028-10-14') });
    expect(on(record, '2028-10-14').standing).toBe('in review');
  });
  test('three ways of saying no have three next dates and two owners', () => {
    const said = (to: string) => on(notes(`${inCare}\n1 Oct 2026  said no to ${to}, "no"`), '2026-10-02');
    expect(said('this dose').on).toBe(addDays(day('2026-10-01'), 84));
    expect(said('this medicine')).toMatchObject({ owner: 'prescriber', on: addDays(day('2026-10-01'), 28) });
    expect(said('all contact').on).toBe(addDays(day('2026-10-01'), 365));
  });
  test('a transfer stays ours until it is acknowledged', () => {
    const out = `${inCare}\n1 Oct 2026  transfer-out to "another bone unit", chase on 20 Oct 2026`;
    expect(on(notes(out), '2026-10-02')).toMatchObject({
      standing: 'transferred out',
      owner: 'clerk',
      on: day('2026-10-20'),
    });
    expect(on(notes(`${out}\n9 Oct 2026  transfer-acknowledged by "their office"`), '2026-10-10')).toMatchObject({
      owner: 'nobody',
      on: undefined,
    });
  });
  test('a new hip fracture on treatment opens a review at once (safety page)', () => {
    const record = notes(`${inCare}
14 Oct 2026  dose zoledronic acid 5 mg, this service
1 Feb 2027  fracture hip
`);
    expect(on(record, '2027-01-31').standing).toBe('between doses');
    expect(on(record, '2027-02-01')).toMatchObject({ standing: 'in review', owner: 'prescriber' });
  });
});

describe('a ledger without a lawful standing is said to be unaccounted for', () => {
  test.each<[string, SubjectRecord]>([
    [
      'nothing but a name',
      unlawful(
        fact('identity', { family: 'Moss', given: 'Ada', born: '1950-01-01', number: '999 000 0001' }, '2026-01-01', 1),
      ),
    ],
    [
      'a weight and no referral',
      unlawful(
        fact('weight', { quantity: { comparator: '', value: '60', unit: 'kg' }, method: 'measured' }, '2026-01-01', 1),
      ),
    ],
    ['accepted without a referral', unlawful(fact('triage', { outcome: 'accepted' }, '2026-01-01', 1))],
    [
      'a denosumab injection elsewhere and nobody who asked us',
      unlawful(fact('dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' }, '2026-01-01', 1)),
    ],
  ])('%s', (_, record) => {
    expect(standingOf(record, teaching, day('2026-06-01')).standing).toBe('not accounted for');
  });

  test('every standing has a name of the list', () => {
    expect(standings).toContain(standingOf(unlawful(), teaching, day('2026-06-01')).standing);
  });
});
