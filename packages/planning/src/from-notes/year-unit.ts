/** A unit of the notes as a year of sessions: its places, minutes and blood rules, and how many doses it is asked for. */
import {
  type Protocol,
  type Day as CalendarDay,
  type SessionList,
  type SubjectRecord,
  type Unit,
  addDays,
  courseOf,
  factsOf,
  shortDate,
  standingOf,
} from '@twelvemonth/clinical';
import type { Day } from '../day/day.ts';
import { readUnitDay } from '../day/unit-format.ts';
import { minuteOf } from '../day/format-problem.ts';
import { yearDays } from '../year/year-measures.ts';
import type { UnitOfYear } from '../year/compare-ways.ts';
import { yearAssumptions } from '../year/assumptions.ts';
import { gridMinutes, planningOf, visitKindsOf, visitMinutesOf, writtenStaff } from './planning-settings.ts';

export type YearUnitFromNotes =
  | { readonly ok: true; readonly unit: UnitOfYear; readonly hasUsualSettings: boolean }
  | { readonly ok: false; readonly says: string };

const weeksPerYear = 52;

/** A session of this unit with one first and one later visit: what every session of the year is made of. */
function templateOf(
  unit: Unit,
  protocol: Protocol,
  { opensAt, closesAt }: SessionList,
): ReturnType<typeof readUnitDay> {
  const { infusion, watchFirst, watchLater } = visitMinutesOf(protocol);
  return readUnitDay({
    id: unit.name,
    opens: opensAt,
    closes: closesAt,
    gridMinutes,
    ...writtenStaff(unit, watchFirst),
    visits: [
      { name: 'first', kind: 'first infusion', infusionMinutes: infusion, watchMinutes: watchFirst },
      { name: 'later', kind: 'later infusion', infusionMinutes: infusion, watchMinutes: watchLater },
    ],
  });
}

/** Referrals of the past year, and doses that fall due in the coming one. */
function askedFor(records: readonly SubjectRecord[], protocol: Protocol, today: CalendarDay) {
  const [before, after] = [addDays(today, -yearDays), addDays(today, yearDays)];
  const referred = records.flatMap((record) =>
    factsOf(record, 'referral').filter(({ on }) => on > before && on <= today),
  );
  const due = records.filter((record) => {
    if (standingOf(record, protocol, today).standing === 'died') return false;
    const day = courseOf(record, protocol, today).due;
    return day !== undefined && day >= today && day < after;
  });
  return { referralsPerWeek: referred.length / weeksPerYear, laterPerWeek: due.length / weeksPerYear };
}

export function yearUnitFromNotes(from: {
  readonly unit: Unit;
  readonly protocol: Protocol;
  readonly today: CalendarDay;
  readonly sessions: readonly SessionList[];
  readonly records: readonly SubjectRecord[];
}): YearUnitFromNotes {
  const { unit, protocol, today, sessions, records } = from;
  const usual = sessions.filter(({ cancelled }) => cancelled === undefined).toSorted((a, b) => b.on - a.on)[0];
  if (usual === undefined)
    return { ok: false, says: `${unit.name} has never planned a session: its places are not known.` };
  const read = templateOf(unit, protocol, usual);
  if (!read.ok)
    return {
      ok: false,
      says: `${unit.name}, ${shortDate(usual.on)}: ${read.problems.map(({ says }) => says).join('; ')}`,
    };
  const settings = planningOf(unit);
  const [first, later] = visitKindsOf(settings, visitMinutesOf(protocol));
  const minutes = minuteOf(usual.closesAt) - minuteOf(usual.opensAt);
  const day: Day = read.day;
  return {
    ok: true,
    hasUsualSettings: unit.planning === undefined,
    unit: {
      day,
      arriveAt: usual.arriveAt.map((time) => Math.floor((minuteOf(time) - minuteOf(usual.opensAt)) / gridMinutes)),
      demand: askedFor(records, protocol, today),
      year: {
        name: unit.name,
        calendar: unit.calendar,
        begins: today,
        places: usual.arriveAt.length,
        noticeDays: settings.noticeDays,
        samples: {
          validDays: protocol.number.bloodsValidDays,
          resultDays: protocol.number.resultDays,
          given: yearAssumptions,
        },
        nurseMinutes: settings.nurses * minutes,
        chairMinutes: unit.chairs * minutes,
        mostFirstVisits: settings.mostFirstVisits,
        reservedPercent: settings.reservedPercent,
        kinds: [first!, later!],
      },
    },
  };
}
