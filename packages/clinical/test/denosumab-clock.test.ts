/**
 * The denosumab clock: worked case 8 of docs/readiness.md, and the dates of the clinical fact sheet, section 8:
 * last denosumab 2026-01-15 -> due 2026-07-15, 4 weeks late 2026-08-12, 16 weeks late 2026-11-04.
 * Why it matters: more than 16 weeks late, vertebral fracture HR 3.91 (1.62-9.45), Ann Intern Med 2020;173:516.
 */
import { describe, expect, it } from 'vitest';
import { type ClockTier, day, clockOf, entriesFromDrafts, parseLedger, recordOf, teaching } from '../src/index.ts';

const person = 'person  female, born 1941-06-02\n';
function record(text: string) {
  const parsed = parseLedger(`${person}${text}`);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const entries = entriesFromDrafts(parsed.drafts, { start: '2026-01-01T09:00:00.000Z' });
  return recordOf(entries[0]?.subject ?? 'patient/x', entries);
}
const lastInJanuary = record('15 Jan 2026   dose denosumab 60 mg, elsewhere');
const tierOn = (on: string, windowFirst?: string): ClockTier | undefined =>
  clockOf(lastInJanuary, teaching, day(on), windowFirst === undefined ? undefined : day(windowFirst))?.tier;

describe('worked case 8: denosumab last on 15 Jan 2026, replacement planned, nothing since', () => {
  const clock = clockOf(lastInJanuary, teaching, day('2026-11-25'), day('2026-12-04'));
  it('is the highest alarm, since the dates the fact sheet gives', () => {
    expect(clock?.tier).toBe('highest alarm');
    expect(clock?.says).toContain('alarm since 12 Aug 2026 (28 days late), highest since 4 Nov 2026 (112 days late');
    expect(clock?.due).toBe(day('2026-07-15'));
  });
  it('asks back pain and height loss, and says prescriber today', () => {
    expect(clock?.ask).toEqual(['new back pain?', 'lost height?']);
    expect(clock?.prescriberToday).toMatch(/^prescriber today: bridge/);
  });
});

describe('each tier begins on its day and not a day before', () => {
  it.each([
    ['2026-05-14', 'running'],
    ['2026-05-15', 'on the worklist'],
    ['2026-06-14', 'on the worklist'],
    ['2026-06-15', 'first in line'],
    ['2026-07-15', 'first in line'],
    ['2026-08-11', 'first in line'],
    ['2026-08-12', 'alarm'],
    ['2026-11-03', 'alarm'],
    ['2026-11-04', 'highest alarm'],
  ] as const)('%s: %s', (on, tier) => expect(tierOn(on)).toBe(tier));
});

describe('a replacement', () => {
  it('that cannot be reached by month 7 means prescriber today, however early it is seen', () => {
    const early = clockOf(lastInJanuary, teaching, day('2026-05-20'), day('2026-08-16'));
    expect(early?.prescriberToday).toMatch(/prescriber today/);
    expect(clockOf(lastInJanuary, teaching, day('2026-05-20'), day('2026-08-15'))?.prescriberToday).toBeUndefined();
    expect(clockOf(lastInJanuary, teaching, day('2026-05-20'), undefined)?.prescriberToday).toMatch(/prescriber today/);
  });
  it('booked in time keeps the person on the worklist until the due date, then first in line whatever is booked', () => {
    const booked = record(
      '15 Jan 2026   dose denosumab 60 mg, elsewhere\n1 Jun 2026   place 1 on 14 Jul 2026 at 10:00, unit thornbeck, session thornbeck-2026-07-14',
    );
    expect(clockOf(booked, teaching, day('2026-06-20'), day('2026-07-14'))?.tier).toBe('on the worklist');
    expect(clockOf(booked, teaching, day('2026-07-15'), undefined)?.tier).toBe('first in line');
  });
  it('given ends the clock; a part dose of it does not', () => {
    const given = record(
      '15 Jan 2026   dose denosumab 60 mg, elsewhere\n10 Jul 2026   dose zoledronic acid 5 mg, this service',
    );
    expect(clockOf(given, teaching, day('2026-11-25'), undefined)).toBeUndefined();
    const part = record(
      '15 Jan 2026   dose denosumab 60 mg, elsewhere\n10 Jul 2026   dose zoledronic acid 5 mg, this service, part 40 mL',
    );
    expect(clockOf(part, teaching, day('2026-11-25'), undefined)?.tier).toBe('highest alarm');
  });
});

// safety.md: "a promise with a date"; MHRA August 2020: not stopped without what follows. A plan on paper holds no bone.
describe('it stops at what was given or begun, not at what was meant', () => {
  const dose = '15 Jan 2026   dose denosumab 60 mg, elsewhere\n';
  const clock = (more: string, on = '2026-11-25') => clockOf(record(dose + more), teaching, day(on), undefined);
  const meant = '1 Jun 2026   course review other treatment "alendronic acid" due 15 Jul 2026, ok\n';
  it('a review that chose another treatment: the clock runs on, and says what was meant', () => {
    expect(clock(meant)?.tier).toBe('highest alarm');
    expect(clock(meant)?.says).toContain('alendronic acid decided, due 15 Jul 2026, not recorded as given or begun');
    expect(clock(meant, '2026-07-15')?.tier).toBe('first in line');
  });
  it('no prescriber is called while the plan is in time; from the day after, one is', () => {
    expect(clock(meant, '2026-07-15')?.prescriberToday).toBeUndefined();
    expect(clock(meant, '2026-07-16')?.prescriberToday).toMatch(/^prescriber today/);
    const late = meant.replace('15 Jul 2026', '16 Aug 2026');
    expect(clock(late, '2026-06-20')?.prescriberToday).toMatch(/^prescriber today/);
  });
  const begun = (text: string) => `${meant}10 Jul 2026   medicine name "alendronic acid", sort ${text}\n`;
  it('a bone tablet or another bone medicine begun after the dose ends it', () => {
    expect(clock(begun('bisphosphonate tablet'))).toBeUndefined();
    expect(clock(begun('other bone medicine'))).toBeUndefined();
    expect(clock(begun('steroid'))?.tier).toBe('highest alarm');
    expect(clock(begun('bisphosphonate tablet'), '2026-07-09')?.tier).toBe('first in line');
  });
  it('one that was taken before the dose, or that is denosumab itself, does not', () => {
    expect(clock('')?.tier).toBe('highest alarm');
    const before = record(`10 Jan 2026   medicine name "alendronic acid", sort bisphosphonate tablet\n${dose}`);
    expect(clockOf(before, teaching, day('2026-11-25'), undefined)?.tier).toBe('highest alarm');
    expect(clock('10 Jul 2026   medicine name "Denosumab at the surgery", sort other bone medicine')?.tier).toBe(
      'highest alarm',
    );
  });
  // Osteoporosis Canada 2023 (Morin, CMAJ 195:E1333): a bisphosphonate for a year, then reassess.
  it.each([
    ['stopped on 2026-08-01', 'highest alarm'],
    ['stopped on 2026-12-01', undefined],
  ])('begun on 10 July and %s, asked on 25 November: %s', (stopped, tier) =>
    expect(clock(begun(`bisphosphonate tablet, ${stopped}`))?.tier).toBe(tier),
  );
  it.each([
    ['2027-07-09', 'highest alarm'],
    ['2027-07-10', undefined],
  ])('taken from 10 July 2026 to %s, a year later: %s', (stopped, tier) =>
    expect(clock(begun(`bisphosphonate tablet, stopped on ${stopped}`), '2027-09-01')?.tier).toBe(tier),
  );
  it('told again without a stop between it goes on; with one it begins anew', () => {
    const again = (first: string) =>
      `${begun(`bisphosphonate tablet${first}`)}10 Jan 2027   medicine name "Alendronic  acid", sort bisphosphonate tablet, stopped on 2027-07-10`;
    expect(clock(again(''), '2027-09-01')).toBeUndefined();
    expect(clock(again(', stopped on 2026-09-01'), '2027-09-01')?.tier).toBe('highest alarm');
  });
});

describe('the clock', () => {
  it('runs for the 120 mg oncology product as well', () => {
    expect(
      clockOf(record('15 Jan 2026   dose denosumab 120 mg, elsewhere'), teaching, day('2026-11-25'), undefined)?.tier,
    ).toBe('highest alarm');
  });
  it('stops with a death', () => {
    expect(
      clockOf(
        record('15 Jan 2026   dose denosumab 60 mg, elsewhere\n2 Sep 2026   died source "family doctor"'),
        teaching,
        day('2026-11-25'),
        undefined,
      ),
    ).toBeUndefined();
  });
  it('is not there for someone who never had it', () => {
    expect(
      clockOf(record('15 Jan 2026   dose zoledronic acid 5 mg, this service'), teaching, day('2026-11-25'), undefined),
    ).toBeUndefined();
  });
});
