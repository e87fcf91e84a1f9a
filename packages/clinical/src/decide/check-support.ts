/** A booking goes with a place the person has; what is cancelled or moved is a booking that stands. */
import { day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';
import { standingSupports } from '../visit/supports.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';

export function checkSupport(
  record: SubjectRecord,
  { body }: Fact<'support-booking'>,
  path: string,
): readonly Refusal[] {
  const ofBooking = (id: string, field: string, what?: string): readonly Refusal[] => {
    const booking = standingSupports(record).find((one) => one.id === id);
    if (booking === undefined)
      return factsOf(record, 'support-booking').some((fact) => fact.id === id && fact.body.answer === 'booked')
        ? [fieldWrong(`${path}.${field}`, 'that booking was moved or cancelled already', 'look at what stands now')]
        : [fieldWrong(`${path}.${field}`, 'no such booking in these notes', 'choose one that stands')];
    return what === undefined || booking.body.what === what
      ? []
      : [fieldWrong(`${path}.${field}`, `that booking is of a ${booking.body.what}`, 'choose one of the same sort')];
  };
  if (body.answer === 'cancelled') return ofBooking(body.booking, 'booking');
  const place = placesOf(record).find(({ session }) => session === body.session);
  const refusals =
    place === undefined || (body.answer === 'booked' && (place.on !== day(body.on) || place.arriveAt !== body.arriveAt))
      ? [fieldWrong(`${path}.session`, 'they have no such place', 'look at the place they have now, and book for that')]
      : [];
  return body.answer === 'booked' && body.inPlaceOf !== undefined
    ? [...refusals, ...ofBooking(body.inPlaceOf, 'inPlaceOf', body.what)]
    : refusals;
}
