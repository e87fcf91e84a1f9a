/** A booking goes with a place the person has; what is cancelled or moved is a booking that stands. */
import { day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';

export function checkSupport(
  record: SubjectRecord,
  { body }: Fact<'support-booking'>,
  path: string,
): readonly Refusal[] {
  const ofBooking = (id: string, field: string): readonly Refusal[] =>
    factsOf(record, 'support-booking').some((fact) => fact.id === id && fact.body.answer === 'booked')
      ? []
      : [fieldWrong(`${path}.${field}`, 'no such booking in these notes', 'choose one that stands')];
  if (body.answer === 'cancelled') return ofBooking(body.booking, 'booking');
  const place = placesOf(record).find(({ session }) => session === body.session);
  const refusals =
    place === undefined || (body.answer === 'booked' && (place.on !== day(body.on) || place.arriveAt !== body.arriveAt))
      ? [fieldWrong(`${path}.session`, 'they have no such place', 'look at the place they have now, and book for that')]
      : [];
  return body.answer === 'booked' && body.inPlaceOf !== undefined
    ? [...refusals, ...ofBooking(body.inPlaceOf, 'inPlaceOf')]
    : refusals;
}
