/** The two units of Marlowe Vale as they describe themselves (docs/words.md, "The demo scenario"). */
import {
  type BodyOfKind,
  type Day,
  type PlainDate,
  addDays,
  civilFromDay,
  dayFromCivil,
  plainDate,
  weekday,
} from '@twelvemonth/clinical';
import type { UnitId } from './staff.ts';

type Settings = BodyOfKind<'unit-settings'>;

/** Days on which nothing happens: 25 and 26 December and 1 January, from one year to another. */
function closedDays(from: Day, until: Day): readonly PlainDate[] {
  const days: Day[] = [];
  for (let { year } = civilFromDay(from); year <= civilFromDay(until).year; year += 1) {
    days.push(dayFromCivil(year, 1, 1), dayFromCivil(year, 12, 25), dayFromCivil(year, 12, 26));
  }
  return days.filter((on) => on >= from && on <= until).map(plainDate);
}

const shared = {
  zone: 'Europe/London',
  opensAt: '08:30',
  closesAt: '17:00',
  bloodWeekdays: [1, 2, 3, 4, 5],
  adviceLine: { weekdays: [1, 2, 3, 4, 5], fromTime: '09:00', untilTime: '16:30' },
  demo: true,
} as const;

/** What planning needs of both; invented, as everything of the demo. */
const planning = {
  watchedPerNurse: 4,
  watchPlaces: 2,
  preparers: 1,
  secondCheckers: 1,
  minutes: {
    observations: 5,
    checklist: 10,
    cannula: 10,
    preparation: 10,
    secondCheck: 5,
    keeps: 30,
    removal: 5,
    leave: 5,
    injection: 5,
  },
  reservedPercent: 10,
  noticeDays: 3,
} as const;

export const unitIds: readonly UnitId[] = ['thornbeck', 'saltmere'];

export const settingsOf = (unit: UnitId, from: Day, until: Day): Settings =>
  unit === 'thornbeck'
    ? {
        ...shared,
        name: 'Thornbeck Day Unit',
        chairs: 6,
        sessionWeekdays: [2, 4],
        minutesBetweenArrivals: 20,
        telephone: '01632 960100',
        letters: { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-GB', answerWithinDays: 14 },
        emergencyNumber: '01632 960199',
        stock: { leadDays: 5, reservePacks: 12 },
        closedDays: closedDays(from, until),
        planning: { ...planning, nurses: 3, mostFirstVisits: 6 },
      }
    : {
        ...shared,
        name: 'Saltmere Day Unit',
        chairs: 4,
        sessionWeekdays: [3],
        minutesBetweenArrivals: 30,
        telephone: '01632 960200',
        letters: { postalAddress: '2 Quay Row, Saltmere', language: 'en-GB', answerWithinDays: 14 },
        emergencyNumber: '01632 960299',
        stock: { leadDays: 7, reservePacks: 8 },
        closedDays: closedDays(from, until),
        planning: { ...planning, nurses: 2, mostFirstVisits: 4 },
      };

/** Arrival times of a session: so many, so far apart, from a quarter of an hour after opening. */
export function arrivals(unit: UnitId): readonly string[] {
  const [count, apart, first] = unit === 'thornbeck' ? [14, 20, 8 * 60 + 40] : [10, 30, 8 * 60 + 50];
  return Array.from({ length: count }, (_, index) => {
    const minutes = first + index * apart;
    return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  });
}

const weekdays: Readonly<Record<UnitId, readonly number[]>> = { thornbeck: [2, 4], saltmere: [3] };

export function isUsualSessionDay(unit: UnitId, on: Day): boolean {
  const { month, dayOfMonth } = civilFromDay(on);
  const closed = (month === 1 && dayOfMonth === 1) || (month === 12 && (dayOfMonth === 25 || dayOfMonth === 26));
  return weekdays[unit].includes(weekday(on)) && !closed;
}

/** The first usual session day on or after a day. */
export function sessionDayFrom(unit: UnitId, from: Day): Day {
  let on = from;
  while (!isUsualSessionDay(unit, on)) on = addDays(on, 1);
  return on;
}

export const sessionId = (unit: UnitId, on: Day): string => `${unit}-${plainDate(on)}`;
