// The coming years read from notes: who waits and falls due, what became of those before, and how little is known of it.
import {
  type SubjectRecord,
  addDays,
  day,
  entriesFromDrafts,
  noFormulary,
  parseLedger,
  recordOf,
  teaching,
  usualPerson,
} from '@twelvemonth/clinical';
import type { SessionList, Unit } from '@twelvemonth/clinical';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Service,
  type UnitAhead,
  changedCase,
  lookAhead,
  needsFor,
  placesOfWeek,
  sessionHolds,
  spokenChange,
  unitAheadFromNotes,
} from '../src/index.ts';

const today = day('2026-11-26');

function notes(text: string): SubjectRecord {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2020-01-01T08:00:00.000Z' }));
}

const unit: Unit = {
  id: 'thornbeck',
  name: 'Thornbeck Day Unit',
  zone: 'Europe/London',
  chairs: 4,
  opensAt: '08:30',
  closesAt: '16:30',
  minutesBetweenArrivals: 20,
  telephone: '01632 960100',
  demo: true,
  calendar: { bloodWeekdays: [1, 2, 3, 4, 5], sessionWeekdays: [4], closedDays: [] },
  formulary: noFormulary,
  since: day('2020-01-01'),
};

const session = (on: number): SessionList => ({
  id: `session-${on}`,
  unit: unit.id,
  on: addDays(today, on),
  zone: unit.zone,
  opensAt: unit.opensAt,
  closesAt: unit.closesAt,
  arriveAt: ['08:30', '08:50', '09:10', '09:30', '09:50', '10:10'],
  cancelled: undefined,
  taken: new Map(),
});
const weekly = Array.from({ length: 13 }, (_, week) => session((week + 1) * 7));

const aheadOf = (records: readonly SubjectRecord[], sessions = weekly) =>
  unitAheadFromNotes({
    unit,
    context: { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: unit.calendar },
    today,
    sessions,
    records,
  });
function known(records: readonly SubjectRecord[], sessions = weekly): UnitAhead {
  const made = aheadOf(records, sessions);
  if (!made.ok) throw new Error(made.says);
  return made.ahead;
}

const referred = (on: string): string =>
  `${on}  referral from "fracture liaison", reason "wrist", unit thornbeck, tier routine\n${on}  triage outcome accepted\n`;
const gave = (on: string): string => `${on}  dose zoledronic acid 5 mg, this service\n`;
const one = (text: string): SubjectRecord => notes(`person female, born 1941-06-02\n${text}`);

describe('who asks for places', () => {
  it('is due a year after the last dose, waits when that has passed, and is worked up before the first', () => {
    const { demand } = known([
      one(referred('1 Oct 2025') + gave('26 Feb 2026')),
      one(referred('1 Oct 2023') + gave('1 Dec 2023') + gave('20 Nov 2024') + gave('1 Dec 2024')),
      one(referred('1 Oct 2023') + gave('1 Nov 2024')),
      one(referred('20 Nov 2026')),
    ]);
    // 26 Feb 2027 is 92 days ahead: week 13. The last was due on 1 Nov 2025. Work-up: a starting value of 4 weeks.
    expect(demand.due).toContainEqual({ week: 13, dose: 2, people: 1 });
    expect(demand.waiting).toEqual([0, 1, 0]);
    expect(demand.due.filter(({ dose }) => dose === 1)).toMatchObject([{ people: 1 }]);
    expect(demand).toMatchObject({ doses: 3, intervalWeeks: 52 });
  });

  it('is nobody who has died, said no or moved on; a planned break ends in its own week', () => {
    const { demand } = known([
      one(`${referred('1 Oct 2024')}${gave('1 Dec 2024')}1 Mar 2025  died source "family doctor"\n`),
      one(
        `${referred('1 Oct 2022')}${gave('1 Dec 2022')}1 Dec 2025  course-review outcome planned break, review on 4 Feb 2027, triggers "fracture", reason "hip better"\n`,
      ),
    ]);
    expect(demand.waiting).toEqual([0, 0, 0]);
    expect(demand.due).toEqual([]);
    expect(demand.pausesEnding).toEqual([{ week: 10, people: 1 }]);
  });

  it('after denosumab falls due by its own clock, and is counted apart from other referrals', () => {
    const leaver = `${referred('1 Oct 2026')}1 Aug 2026  dose denosumab 60 mg, elsewhere\n`;
    const { demand } = known([one(leaver), one(referred('1 Oct 2026'))]);
    expect(demand.counted).toMatchObject({ referrals: 1, leavers: 1 });
    // Six months from 1 August are 1 February: 67 days ahead.
    expect(demand.due).toContainEqual({ week: 9, dose: 1, people: 1 });
  });
});

describe('what became of those before', () => {
  const returned = referred('1 Jan 2023') + gave('1 Mar 2023') + gave('5 Mar 2024');
  const lost = referred('1 Jan 2023') + gave('1 Mar 2023');
  const died = `${lost}1 Sep 2023  died source "family doctor"\n`;

  it('is a share drawn towards a starting value that weighs as much as 20 people', () => {
    const { demand } = known([one(returned), one(returned), one(returned), one(lost), one(died)]);
    // Three of four who were alive came (and none of these three for dose 3); 70 of 100 is the starting value: (3 + 14) / 24. One of five died: (1 + 2) / 25.
    expect(demand.returns[0]).toBeCloseTo(17 / 24, 10);
    expect(demand.diesAfterFirst).toBeCloseTo(3 / 25, 10);
    expect(demand.counted).toMatchObject({ returns: [24, 23], diesAfterFirst: 25 });
  });

  it('without any history is the starting value alone, and says so with its source', () => {
    const made = aheadOf([one(referred('20 Nov 2026'))]);
    expect(made.ok && made.ahead.demand).toMatchObject({ returns: [0.7, 0.8], diesAfterFirst: 0.1, startsAgain: 0.5 });
    const read = made.ok ? made.read.find(({ what }) => what.endsWith('dose 2')) : undefined;
    expect(read).toMatchObject({ is: '70 of 100', from: 'nothing counted here yet' });
    expect(read?.starting).toContain('Osteoporos Int 2012');
  });

  it('is not counted before the next dose can be called late, nor of who was taken over elsewhere', () => {
    const early = one(referred('1 Jan 2026') + gave('1 Feb 2026'));
    const elsewhere = one(`${lost}1 Jan 2024  transfer-out to "Fellside", chase on 1 Feb 2024\n`);
    expect(known([early, elsewhere]).demand.returns[0]).toBe(0.7);
  });

  it('little history makes wide ranges, much history narrow ones', () => {
    const many = known(Array.from({ length: 40 }, () => one(returned))).demand;
    const width = (counted: typeof many.counted): number => {
      const inputs = { ...many, counted, referrals: { perWeek: 20, lagWeeks: 4 } };
      const { demand } = lookAhead(
        inputs,
        { placesPerWeek: 100, bloods: { drawn: 'to fit the place', validWeeks: 8 } },
        { weeks: 104, runs: 200, seed: 1 },
      );
      return demand.high95[100]! - demand.low95[100]!;
    };
    const few = { ...many.counted!, referrals: 5, returns: [20, 20] };
    const lots = { ...many.counted!, referrals: 5_000, returns: [5_000, 5_000] };
    expect(width(few)).toBeGreaterThan(1.5 * width(lots));
    expect(width(lots)).toBeGreaterThanOrEqual(width(undefined) * 0.8);
  });
});

const service: Service = {
  sessionsPerWeek: 2,
  placesPerSession: 14,
  minutesOpen: 480,
  nurses: 2,
  chairs: 4,
  nurseMinutesPerVisit: 40,
  chairMinutesPerVisit: 60,
  watchedPerNurse: 4,
  infusionMinutes: 15,
  otherVisitsPerWeek: 0,
};

describe('what a unit holds in a week', () => {
  it('is the least of places told, nurse minutes and chair minutes', () => {
    expect(sessionHolds(service)).toMatchObject({ visits: 14, heldBy: 'places', by: { nurses: 24, chairs: 32 } });
    expect(sessionHolds({ ...service, nurses: 1 })).toMatchObject({ visits: 12, heldBy: 'nurses' });
    expect(sessionHolds({ ...service, chairs: 1 })).toMatchObject({ visits: 8, heldBy: 'chairs' });
    expect(placesOfWeek({ ...service, otherVisitsPerWeek: 3 })).toBe(25);
  });

  it('falls when the infusion is longer: the chair for all of it, the nurse for her share of an eye kept on it', () => {
    const base = known([one(referred('20 Nov 2026'))]);
    const { service: longer } = changedCase({ ...base, service }, { infusionMinutes: 30 });
    expect(longer).toMatchObject({ chairMinutesPerVisit: 75, nurseMinutesPerVisit: 43.75 });
  });

  it('needs so many sessions, nurses and chairs for so many places: enough, and one fewer would not be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 6 }), (places, sessions) => {
        const asked = { ...service, sessionsPerWeek: sessions };
        const needs = needsFor(asked, places)!;
        const holds = (one: Partial<Service>): number => placesOfWeek({ ...asked, ...one });
        const all = { placesPerSession: needs.placesPerSession, nurses: needs.nurses, chairs: needs.chairs };
        expect(holds(all)).toBeGreaterThanOrEqual(places);
        expect(holds({ ...all, nurses: needs.nurses - 1 })).toBeLessThan(places);
        expect(holds({ ...all, chairs: needs.chairs - 1 })).toBeLessThan(places);
        expect(holds({ sessionsPerWeek: needs.sessions })).toBeGreaterThanOrEqual(places);
        expect(holds({ sessionsPerWeek: needs.sessions - 1 })).toBeLessThan(places);
      }),
    );
  });
});

describe('what if', () => {
  const base = { ...known([one(referred('20 Nov 2026'))]), service };
  const placesAt = (text: string): number => changedCase(base, spokenChange(text)!).offer.placesPerWeek;

  it('is said in a short text', () => {
    expect(placesAt('sessions=3')).toBe(42);
    expect(placesAt('chairs=1')).toBe(16);
    expect(changedCase(base, spokenChange('return=80')!).inputs.returns).toEqual([0.8, 0.8]);
    expect(changedCase(base, spokenChange('burst=40@10')!).inputs.due).toContainEqual({
      week: 10,
      dose: 1,
      people: 40,
    });
    expect(changedCase(base, spokenChange('blood-weeks=12')!).offer.bloods).toEqual({
      drawn: 'at referral',
      validWeeks: 12,
    });
    const none = ['chairs', 'chairs=', 'chairs=x', 'moon=1', 'return=180', 'burst=4', 'nurses=-1'];
    expect(none.filter((text) => spokenChange(text) !== undefined)).toEqual([]);
  });

  it('changes nothing that it does not name', () => expect(changedCase(base, {}).inputs).toEqual(base.demand));
});

it('without a session ahead or a protocol, nothing is said and why', () => {
  expect(aheadOf([], [session(-7)])).toMatchObject({ ok: false });
  expect(aheadOf([], [])).toMatchObject({ says: expect.stringContaining('no session planned') });
});
