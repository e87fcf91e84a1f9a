/** A person's place as a calendar file, to hand over or to send: neither medicine nor reason stands in it. */
import { type Instant, calendarPlaceOf, plainDate } from '@twelvemonth/clinical';
import { calendarFile } from '@twelvemonth/exchange';
import { minutesOfVisit } from '@twelvemonth/letters';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';

export function calendarFileOf(person: Person, now: Instant): string | Refused {
  const { record, today, unit, course, standing } = person;
  const place = standing.standing === 'died' ? undefined : calendarPlaceOf(record, today);
  if (place === undefined || unit?.protocol === undefined)
    return new Refused(409, 'no-place', 'No place is booked: there is nothing to put into a calendar.');
  const { name, telephone, zone, letters } = unit.unit;
  const { number } = unit.protocol;
  return calendarFile({
    uid: `${place.first}@twelvemonth`,
    sequence: place.sequence,
    madeAt: now,
    cancelled: place.cancelled,
    on: plainDate(place.on),
    at: place.arriveAt,
    minutes: minutesOfVisit({
      drip: number.runningMinutesUsual,
      watch: course.firstTimer ? number.observeFirstMinutes : number.observeLaterMinutes,
    }),
    zone,
    summary: `Visit, ${name}`,
    where: [name, letters?.postalAddress].filter((line) => line !== undefined).join(', '),
    says: `${place.cancelled ? 'This place is yours no more.' : 'If you cannot come, please tell us.'} ${telephone}`,
  });
}
