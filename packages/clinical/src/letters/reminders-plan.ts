/**
 * Reminders of a place as they are planned, and whether they may go by themselves: a person approved them once, and nothing has
 * happened since that a person has to see first.
 */
import { type Day, addDays } from '../calendar/day.ts';
import type { MessageChannel } from '../kinds/message-begun.ts';
import type { Uuid } from '../ledger/entry.ts';
import { asWritten, newestWritten } from '../record/newest-written.ts';
import { type Fact, type SubjectRecord, latest } from '../record/patient-record.ts';
import { type Place, placeFrom } from '../visit/place.ts';
import { isSilent, remindersSent, wentOut } from './reminders.ts';

export type RemindersPlanned = {
  readonly place: Place;
  /** Those still to come, the first of them first; one whose day has come is among them until it went out. */
  readonly days: readonly { readonly daysBefore: number; readonly on: Day }[];
};

/** Planned anew from the notes each time, so that a place that moves takes its reminders with it. */
export function remindersPlanned(
  record: SubjectRecord,
  daysBefore: readonly number[],
  today: Day,
): RemindersPlanned | undefined {
  const place = placeFrom(record, addDays(today, 1));
  if (place === undefined || isSilent(record, today)) return undefined;
  const all = daysBefore
    .map((days) => ({ daysBefore: days, on: addDays(place.on, -days) }))
    .filter(({ daysBefore: days, on }) => place.bookedOn < on && !wentOut(record, place.entry, days));
  // Of several whose day has come only the nearest goes.
  const nearest = Math.min(...all.filter(({ on }) => on <= today).map(({ daysBefore: days }) => days));
  const days = all
    .filter(({ daysBefore: one, on }) => on > today || one === nearest)
    .toSorted((a, b) => b.daysBefore - a.daysBefore);
  return days.length === 0 ? undefined : { place, days };
}

/** The approval that holds for a place: given for it, or for the place that was moved to it. */
export function approvalFor(record: SubjectRecord, place: Uuid): Fact<'reminders-plan'> | undefined {
  const newest = newestWritten(record, 'reminders-plan');
  return newest?.body.is === 'approved' && movedTo(record, newest.body.place) === place ? newest : undefined;
}

/** Where a booking has come to by moves and other times told; undefined: it was given up. */
function movedTo(record: SubjectRecord, entry: Uuid): Uuid | undefined {
  const bookings = asWritten(record, 'place-booked');
  let booking = bookings.find(({ id }) => id === entry);
  while (booking !== undefined) {
    const { body, seq } = booking;
    const gone = asWritten(record, 'place-given-up').find((one) => one.body.session === body.session && one.seq > seq);
    if (gone === undefined) return booking.id;
    booking = bookings.find((one) => one.act === gone.act && one.seq > seq);
  }
  return undefined;
}

/** Why an approved reminder waits for a person; undefined: it may go. */
export function whyNotByItself(
  record: SubjectRecord,
  { body, seq }: Fact<'reminders-plan'>,
  { daysBefore, channel, to }: { readonly daysBefore: number; readonly channel: MessageChannel; readonly to: string },
): string | undefined {
  if (body.is !== 'approved') return 'it was taken back';
  if (!body.daysBefore.includes(daysBefore)) return `${daysBefore} days before was not among those approved`;
  if (body.channel !== channel || body.to !== to) return 'how they are reached has changed since it was approved';
  return remindersSent(record).some(({ message, ended }) => message.seq > seq && ended?.body.outcome !== 'accepted')
    ? 'one did not arrive, or may not have: somebody looks first, and approves it anew'
    : undefined;
}

/** How somebody agreed to be reminded, by the first way for which there is a number or an address. */
export function wayToRemind(
  record: SubjectRecord,
): { readonly channel: MessageChannel; readonly to: string } | { readonly because: string } {
  const contact = latest(record, 'contact')?.body;
  const agreed = contact?.remindBy ?? [];
  if (agreed.length === 0) return { because: 'nobody has written down that they agree to be reminded: ring or write' };
  const ways = { 'text message': contact?.telephone, 'e-mail': contact?.email };
  for (const channel of agreed) {
    const to = ways[channel];
    if (to !== undefined) return { channel, to };
  }
  return { because: `no ${agreed[0] === 'e-mail' ? 'e-mail address' : 'telephone'} is in the notes` };
}
