/** Transport, interpreter, hoist, wide chair: what goes with a place, and what a moved place left behind. */
import {
  type Day,
  type SupportLine,
  entryText,
  plainDate,
  placesOf,
  supportLinesFor,
  supportsLeftBehind,
} from '@twelvemonth/clinical';
import type { SupportLineView, SupportsView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName, needsOf } from './person-words.ts';

function lineView(line: SupportLine): SupportLineView {
  const { what, state } = line;
  switch (line.state) {
    case 'to arrange':
      return { what, state, says: `${what} to be booked` };
    case 'not needed':
      return { what, state, says: `${what} not needed this time: ${line.reason}` };
    case 'booked':
      return { what, state, says: entryText(line.booking), booking: line.booking.id };
  }
}

/** For the place they have on that day, or the next one; what was left behind by another place stands first. */
export function supportLinesOf({ record, today }: Person, on?: Day): SupportLineView[] {
  const place = placesOf(record).find((one) => (on === undefined ? one.on >= today : one.on === on));
  return [
    ...supportsLeftBehind(record, today).map(({ booking, moveTo }): SupportLineView => {
      const state = moveTo === undefined ? 'to be cancelled' : 'to be moved';
      return { what: booking.body.what, state, says: `${entryText(booking)}: ${state}`, booking: booking.id };
    }),
    ...(place === undefined ? [] : supportLinesFor(record, place).map(lineView)),
  ];
}

export function supportsViewOf(person: Person): SupportsView {
  const { patient, record, identity, contact, today } = person;
  const place = placesOf(record).find(({ on }) => on >= today);
  return {
    patient,
    seq: record.lastSeq,
    name: fullName(person),
    bornInWords: bornInWords(identity?.born),
    number: identity?.number ?? '',
    ...(contact?.telephone === undefined ? {} : { telephone: contact.telephone }),
    needs: needsOf(person),
    ...(place === undefined
      ? {}
      : { place: { session: place.session, on: plainDate(place.on), arriveAt: place.arriveAt } }),
    lines: supportLinesOf(person),
  };
}
