/** Asked before a booking is confirmed: every requirement again, for that date. */
import {
  type Role,
  bookingTrouble,
  day,
  mayAcceptTrouble,
  plainDate,
  requirements,
  sessionOf,
  viewOf,
} from '@twelvemonth/clinical';
import type { BookingCheck } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { type Refused, notHere } from '../problem.ts';
import type { Person } from '../register/people.ts';

/** The session asked about, or a date; today otherwise. */
export async function bookingCheckOf(
  atHand: AtHand,
  person: Person,
  asked: { session?: string | undefined; on?: string | undefined },
  roles: readonly Role[],
): Promise<BookingCheck | Refused> {
  const session = asked.session === undefined ? undefined : sessionOf(await atHand.notes.of('session', asked.session));
  if (asked.session !== undefined && session === undefined) return notHere('session');
  const unit = session === undefined ? person.unit : await atHand.units.named(session.unit);
  const on = session?.on ?? (asked.on === undefined ? person.today : day(asked.on));
  const trouble = bookingTrouble(person.record, unit?.context, person.today, on);
  const view =
    trouble.readiness === undefined || unit?.context === undefined
      ? undefined
      : viewOf(trouble.readiness, person.record, unit.context, { on });
  return {
    on: plainDate(on),
    verdict: trouble.verdict,
    headline: trouble.headline,
    insideWindow: trouble.insideWindow,
    causes: trouble.causes.map(({ cause, verdict, says }) => ({
      cause,
      title: cause === 'no protocol in force' ? 'No protocol in force' : requirements[cause].title,
      verdict,
      says,
      acceptable: roles.some(mayAcceptTrouble),
    })),
    steps: (view?.nextSteps ?? []).map(({ what, earliest, latest }) => ({
      what,
      earliest,
      ...(latest === undefined ? {} : { latest }),
    })),
    ...(view?.window === undefined ? {} : { window: wire(view.window) }),
  };
}

/** Lists of the core are read-only; the wire's type does not say so. */
const wire = (window: NonNullable<ReturnType<typeof viewOf>['window']>): NonNullable<BookingCheck['window']> => ({
  ...window,
  waitingFor: [...window.waitingFor],
  otherwise: [...window.otherwise],
});
