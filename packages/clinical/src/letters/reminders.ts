/**
 * Reminders of a place: which is due, and what became of those that were sent. Planned anew from the notes each time they are
 * asked for, so that a place that moves or is given up takes its reminders with it, and a death ends them.
 */
import { type Day, addDays } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';
import { type Place, placeFrom } from '../visit/place.ts';
import { openPageOf } from '../visit/told-ahead.ts';
import { noContactWanted } from './no-contact.ts';

export type ReminderDue = { readonly place: Place; readonly daysBefore: number };

/**
 * The nearest reminder whose day has come, unless it went out. One whose day lies before the booking is not sent: they were
 * told then. Of several missed ones only the nearest goes.
 */
export function reminderDue(record: SubjectRecord, daysBefore: readonly number[], today: Day): ReminderDue | undefined {
  const place = placeFrom(record, addDays(today, 1));
  if (place === undefined || isSilent(record, today)) return undefined;
  const come = daysBefore.filter((days) => {
    const on = addDays(place.on, -days);
    return on <= today && place.bookedOn < on;
  });
  const nearest = Math.min(...come);
  return come.length === 0 || wentOut(record, place.entry, nearest) ? undefined : { place, daysBefore: nearest };
}

/** Nothing is sent any more: they have died, or want no contact. */
export const isSilent = (record: SubjectRecord, today: Day): boolean =>
  heldBy(record, today).held === 'died' || noContactWanted(record, today) !== undefined;

export type ReminderSent = {
  readonly message: Fact<'message-begun'>;
  /** Undefined: nobody knows whether it went out. */
  readonly ended: Fact<'message-ended'> | undefined;
};

export const remindersSent = (record: SubjectRecord): readonly ReminderSent[] =>
  factsOf(record, 'message-begun').map((message) => ({ message, ended: messageEndOf(record, message) }));

/** The newest word about what became of a message. */
export const messageEndOf = (record: SubjectRecord, message: Fact): Fact<'message-ended'> | undefined =>
  factsOf(record, 'message-ended').findLast(({ body }) => body.message === message.first);

/** Also where it is not known: rather one reminder too few than two. Only one that the channel did not take may go again. */
export const wentOut = (record: SubjectRecord, place: string, daysBefore: number): boolean =>
  remindersSent(record).some(
    ({ message, ended }) =>
      message.body.place === place && message.body.daysBefore === daysBefore && ended?.body.outcome !== 'not accepted',
  );

export type MessageSent = Pick<ReminderSent, 'ended'> & { readonly message: Fact<'message-begun' | 'page-sent'> };

/**
 * Reminders of a place still to come and addresses of an open page that did not arrive, or may not have, since which nobody has
 * spoken with the person.
 */
export const messagesToLookAt = (record: SubjectRecord, today: Day): readonly MessageSent[] => [
  ...remindersToLookAt(record, today),
  ...pagesToLookAt(record, today),
];

const spokenSince = (record: SubjectRecord, { seq: since }: Fact): boolean =>
  factsOf(record, 'call').some(({ seq, body }) => body.reached && seq > since);

function pagesToLookAt(record: SubjectRecord, today: Day): readonly MessageSent[] {
  const page = openPageOf(record, today);
  return factsOf(record, 'page-sent')
    .filter((message) => message.body.page === page?.entry && !spokenSince(record, message))
    .map((message) => ({ message, ended: messageEndOf(record, message) }))
    .filter(({ ended }) => ended?.body.outcome !== 'accepted');
}

function remindersToLookAt(record: SubjectRecord, today: Day): readonly ReminderSent[] {
  const place = placeFrom(record, today);
  return remindersSent(record).filter(
    ({ message, ended }) =>
      message.body.place === place?.entry &&
      ended?.body.outcome !== 'accepted' &&
      !spokenSince(record, message) &&
      !remindersSent(record).some(
        (later) => later.message.seq > message.seq && later.ended?.body.outcome === 'accepted',
      ),
  );
}
