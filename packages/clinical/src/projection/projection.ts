/**
 * The compact rows kept beside a ledger so that lists are quick, made anew from the whole ledger at every write. Nothing
 * here depends on today: what the day changes (booked or here, waiting, overdue) readers recompute with `standingOf`.
 */
import { type Day, day } from '../calendar/day.ts';
import { type Entry, localDate } from '../ledger/entry.ts';
import { type Subject, isSubjectOf } from '../ledger/subject.ts';
import { recordOfEntries } from '../record/folded.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { readIn } from '../record/same-person.ts';
import { standingOf } from '../standing/standing.ts';
import { placesOf } from '../visit/place.ts';
import { sessionOf } from '../visit/session-list.ts';
import { personRow } from './person-row.ts';
import type { Row } from './row.ts';
import { taskRows } from './task-rows.ts';

export function projection(subject: Subject, entries: readonly Entry[]): readonly Row[] {
  if (entries.length === 0) return [];
  if (isSubjectOf('patient', subject)) return patientRows(recordOfEntries(subject, entries), entries);
  if (isSubjectOf('session', subject)) return sessionRows(recordOfEntries(subject, entries));
  return [];
}

function patientRows(record: SubjectRecord, entries: readonly Entry[]): readonly Row[] {
  const asOf = dayOfLast(entries);
  const person = personRow(record, formerFamilies(entries));
  const found = [
    ...(person === undefined ? [] : [person]),
    ...factsOf(record, 'dose').map(({ first, on, body }): Row => ({
      table: 'dose',
      key: first,
      columns: { medicine: body.medicine, on_day: on, batch: body.batch ?? null, setting: body.setting },
    })),
  ];
  // Notes read in others are still found by their number and batch; where the person stands, the others say.
  return readIn(record) === undefined
    ? [...found, standingRow(record, asOf), ...placeRows(record), ...taskRows(record, undefined, asOf)]
    : found;
}

/** The standing as of the last entry, told without a protocol. */
function standingRow(record: SubjectRecord, asOf: Day): Row {
  const now = standingOf(record, undefined, asOf);
  return {
    table: 'standing',
    key: '',
    columns: {
      standing: now.standing,
      owner: now.owner,
      unit: now.unit,
      on_day: now.on ?? null,
      since_day: now.since,
      detail: now.says,
    },
  };
}

/** Two bookings of one session that both count cannot be; of several visits to one session the newest is kept. */
const placeRows = (record: SubjectRecord): readonly Row[] => [
  ...new Map(
    placesOf(record).map((place): [string, Row] => [
      place.session,
      {
        table: 'place',
        key: place.session,
        columns: {
          session: place.session,
          unit: place.unit,
          on_day: place.on,
          arrive_at: place.arriveAt,
          place: place.place,
        },
      },
    ]),
  ).values(),
];

function sessionRows(record: SubjectRecord): readonly Row[] {
  const session = sessionOf(record);
  if (session === undefined) return [];
  return [
    {
      table: 'session',
      key: '',
      columns: {
        unit: session.unit,
        on_day: session.on,
        opens_at: session.opensAt,
        closes_at: session.closesAt,
        places: session.arriveAt.length,
        taken: session.taken.size,
        cancelled: session.cancelled === undefined ? 0 : 1,
        detail: session.cancelled?.reason ?? null,
      },
    },
  ];
}

/** The day on which the newest of the ledger was true or was written, whichever is later. */
function dayOfLast(entries: readonly Entry[]): Day {
  const last = entries[entries.length - 1];
  if (last === undefined) throw new RangeError('an empty ledger has no last day');
  return Math.max(day(last.recordedAt.slice(0, 10)), day(localDate(last.effectiveAt))) as Day;
}

/** Family names the person was entered under before: a corrected name is still a way to find them. */
const formerFamilies = (entries: readonly Entry[]): readonly string[] =>
  entries.flatMap((entry) => {
    const family = entry.kind === 'identity' ? (entry.body as { family?: unknown }).family : undefined;
    return typeof family === 'string' ? [family] : [];
  });
