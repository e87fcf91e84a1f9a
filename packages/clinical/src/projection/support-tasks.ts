/** What waits for somebody about the bookings that go with a place. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import { plural } from '../kinds-texts/words.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';
import { supportLinesFor, supportsLeftBehind } from '../visit/supports.ts';
import type { Row } from './row.ts';
import type { Task } from './task-rows.ts';

/** Transport, interpreter, hoist: left behind by a place that moved, or not yet booked for the place they have. */
export function supportTasks(record: SubjectRecord, today: Day, willNotCome: boolean, task: Task): Row[] {
  const left = supportsLeftBehind(record, today).map(({ booking, moveTo }) =>
    task(
      'move or cancel what was booked',
      booking,
      'clerk',
      day(booking.body.on),
      `${booking.body.what} of ${shortDate(day(booking.body.on))}: ${moveTo === undefined ? 'cancel' : `move to ${shortDate(moveTo.on)}`}`,
    ),
  );
  if (willNotCome) return left;
  const toArrange = placesOf(record).flatMap((place) => {
    const booking = record.all.find((fact) => fact.id === place.entry);
    const open = supportLinesFor(record, place).filter(({ state }) => state === 'to arrange');
    return booking === undefined || place.on < today || open.length === 0
      ? []
      : [
          task(
            'arrange what goes with the place',
            booking,
            'clerk',
            place.on,
            `${plural(
              open.map(({ what }) => what),
              'and',
            )} for ${shortDate(place.on)}`,
          ),
        ];
  });
  return [...left, ...toArrange];
}
