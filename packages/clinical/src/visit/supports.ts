/**
 * Bookings that go with a place (transport, interpreter, hoist, wide chair): asked from what the person needs, and left behind
 * when the place moves or is given up. One that was left behind stands until somebody has moved or cancelled it.
 */
import type { Day } from '../calendar/day.ts';
import type { Support } from '../kinds/support-booking.ts';
import { supports } from '../kinds/support-booking.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { asWritten } from '../record/newest-written.ts';
import { type Fact, type SubjectRecord, latest } from '../record/patient-record.ts';
import { type Place, placesOf } from './place.ts';

/** How a need was written down, to what has to be booked for it. A language other than English asks for an interpreter. */
const words: Readonly<Record<Support, RegExp>> = {
  transport: /transport|ambulance/i,
  interpreter: /interpret|sign language/i,
  hoist: /hoist/i,
  'wide chair': /wide chair|bariatric/i,
};

export function supportsNeeded(record: SubjectRecord): readonly Support[] {
  const contact = latest(record, 'contact')?.body;
  const needs = contact?.needs ?? [];
  const otherLanguage = contact?.language !== undefined && !/english/i.test(contact.language);
  return supports.filter(
    (what) => needs.some((need) => words[what].test(need)) || (what === 'interpreter' && otherLanguage),
  );
}

type Body = BodyOfKind<'support-booking'>;
export type SupportBooked = Fact<'support-booking'> & { readonly body: Extract<Body, { answer: 'booked' }> };
const isBooked = (fact: Fact<'support-booking'>): fact is SupportBooked => fact.body.answer === 'booked';

export type SupportLine = { readonly what: Support } & (
  | { readonly state: 'to arrange' }
  | { readonly state: 'not needed'; readonly reason: string }
  | { readonly state: 'booked'; readonly booking: SupportBooked }
);

/** Bookings nobody has cancelled or moved on. */
export function standingSupports(record: SubjectRecord): readonly SupportBooked[] {
  const all = asWritten(record, 'support-booking');
  const ended = new Set(
    all.flatMap(({ body }) =>
      body.answer === 'cancelled' ? [body.booking] : body.answer === 'booked' ? [body.inPlaceOf] : [],
    ),
  );
  return all.filter(isBooked).filter(({ id }) => !ended.has(id));
}

const isFor = ({ body }: SupportBooked, { session, arriveAt }: Place): boolean =>
  body.session === session && body.arriveAt === arriveAt;

/** For one place: everything that is needed or booked, and how far it is. */
export function supportLinesFor(record: SubjectRecord, place: Place): readonly SupportLine[] {
  const booked = standingSupports(record).filter((booking) => isFor(booking, place));
  const needed = supportsNeeded(record);
  return supports.flatMap((what): SupportLine[] => {
    const mine = booked.filter(({ body }) => body.what === what);
    if (mine.length > 0) return mine.map((booking) => ({ what, state: 'booked', booking }));
    if (!needed.includes(what)) return [];
    const saidNo = asWritten(record, 'support-booking').findLast(
      ({ body }) => body.answer === 'not needed' && body.what === what && body.session === place.session,
    );
    return saidNo?.body.answer === 'not needed'
      ? [{ what, state: 'not needed', reason: saidNo.body.reason }]
      : [{ what, state: 'to arrange' }];
  });
}

export type LeftBehind = {
  readonly booking: SupportBooked;
  /** The place it could move to; undefined: there is none, so it is to be cancelled. */
  readonly moveTo: Place | undefined;
};

/** Bookings for a place the person no longer has: to be moved to the new one, or cancelled, whatever the day. */
export function supportsLeftBehind(record: SubjectRecord, today: Day): readonly LeftBehind[] {
  const places = placesOf(record);
  const goesOn = latest(record, 'died') === undefined;
  const next = goesOn ? places.find(({ on }) => on >= today) : undefined;
  return standingSupports(record)
    .filter((booking) => !places.some((place) => isFor(booking, place)))
    .map((booking) => ({ booking, moveTo: next }));
}
