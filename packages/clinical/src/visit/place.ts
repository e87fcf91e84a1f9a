/** A patient's places, read from their own notes: the mirror of the sessions' lists. */
import { type Day, day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import { asWritten } from '../record/newest-written.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type Place = {
  readonly session: string;
  readonly unit: string;
  readonly on: Day;
  /** HH:MM */
  readonly arriveAt: string;
  readonly place: number;
  /** The entry that booked it, and the day it was booked. */
  readonly entry: Uuid;
  readonly bookedOn: Day;
};

/** Every place booked and not given up since, by date. Order of writing decides: a place can be given up and taken again. */
export function placesOf(record: SubjectRecord): readonly Place[] {
  const given = factsOf(record, 'place-given-up');
  const booked = asWritten(record, 'place-booked').filter(
    (booking) => !given.some((gone) => gone.body.session === booking.body.session && gone.seq > booking.seq),
  );
  return booked
    .map(({ id, on, body }) => ({
      session: body.session,
      unit: body.unit,
      on: day(body.on),
      arriveAt: body.arriveAt,
      place: body.place,
      entry: id,
      bookedOn: on,
    }))
    .toSorted((a, b) => a.on - b.on);
}

/** The first place on or after a day. */
export const placeFrom = (record: SubjectRecord, from: Day): Place | undefined =>
  placesOf(record).find((place) => place.on >= from);
