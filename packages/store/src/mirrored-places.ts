/**
 * A booked place is written twice by one act: in the session's notes, which are the truth, and in the patient's, their
 * mirror. Here the two are compared; that nobody holds two places is for the rules that decide, not for this check.
 */
import { subject, subjectId, type Entry, type Subject } from '@twelvemonth/clinical';

/** The first entry of an act that has no counterpart in the other notes. */
export function unmirroredPlace(
  act: readonly Entry[],
  isExpired: (of: Subject) => boolean,
): { readonly subject: Subject; readonly seq: number; readonly says: string } | undefined {
  const taken = act.filter((entry) => entry.kind === 'session-place-taken');
  const booked = act.filter((entry) => entry.kind === 'place-booked');
  const pair = (session: unknown, patient: unknown, place: unknown): string =>
    JSON.stringify([session, patient, place]);
  const inSessions = new Set(
    taken.map((entry) => pair(subjectId(entry.subject), field(entry, 'patient'), field(entry, 'place'))),
  );
  const inPatients = new Set(
    booked.map((entry) => pair(field(entry, 'session'), subjectId(entry.subject), field(entry, 'place'))),
  );

  const lonelyTaken = taken.find(
    (entry) =>
      !inPatients.has(pair(subjectId(entry.subject), field(entry, 'patient'), field(entry, 'place'))) &&
      !isExpired(subject('patient', String(field(entry, 'patient')))),
  );
  if (lonelyTaken !== undefined)
    return {
      subject: lonelyTaken.subject,
      seq: lonelyTaken.seq,
      says: "A place was taken, but the patient's notes do not say so.",
    };
  const lonelyBooked = booked.find(
    (entry) =>
      !inSessions.has(pair(field(entry, 'session'), subjectId(entry.subject), field(entry, 'place'))) &&
      !isExpired(subject('session', String(field(entry, 'session')))),
  );
  if (lonelyBooked !== undefined)
    return {
      subject: lonelyBooked.subject,
      seq: lonelyBooked.seq,
      says: "A place was booked, but the session's notes do not say so.",
    };
  return undefined;
}

const field = (entry: Entry, name: string): unknown =>
  typeof entry.body === 'object' && entry.body !== null
    ? (entry.body as Readonly<Record<string, unknown>>)[name]
    : undefined;
