/** A place as a calendar knows it: one event from the first booking through every move to the visit, or to its end. */
import type { Day } from '../calendar/day.ts';
import { day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import { asWritten } from '../record/newest-written.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { placeFrom } from './place.ts';

export type CalendarPlaceNow = {
  /** The first booking since the last visit: the same through every move. */
  readonly first: Uuid;
  /** Rises with every booking and every place given up. */
  readonly sequence: number;
  readonly on: Day;
  /** HH:MM */
  readonly arriveAt: string;
  /** The place was given up and there is no other. */
  readonly cancelled: boolean;
};

/** Undefined: nothing was booked since the last visit, or it is past. */
export function calendarPlaceOf(record: SubjectRecord, today: Day): CalendarPlaceNow | undefined {
  const visited = Math.max(0, ...factsOf(record, 'arrived').map(({ seq }) => seq));
  const booked = asWritten(record, 'place-booked').filter(({ seq }) => seq > visited);
  const last = booked.at(-1);
  const [first] = booked;
  if (first === undefined || last === undefined || day(last.body.on) < today) return undefined;
  const givenUp = factsOf(record, 'place-given-up').filter(({ seq }) => seq > visited);
  const place = placeFrom(record, today);
  return {
    first: first.id,
    sequence: booked.length + givenUp.length - 1,
    on: place?.on ?? day(last.body.on),
    arriveAt: place?.arriveAt ?? last.body.arriveAt,
    cancelled: place === undefined,
  };
}
