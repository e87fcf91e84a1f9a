/** Who prepares and who gives are people whom the opening of the session names as here, and whose competence is in date that day. */
import { subject } from '../ledger/subject.ts';
import { keepsCompetences, mayGiveAndCheck } from '../unit/competence.ts';
import { TYPED_IN_LATER } from '../visit/running-time.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { sessionOf } from '../visit/session-list.ts';
import type { Visit } from '../visit/visit.ts';
import { recordIn, sessionIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** A session that nobody opened names nobody; what ran on paper was done by whoever stands there. */
export function checkInTheOpening({ arrived }: Visit, now: Surroundings): readonly Refusal[] {
  const session = sessionIn(now, arrived.body.session);
  const { opened } = sessionDayOf(session);
  if (opened === undefined || now.clock.boot === TYPED_IN_LATER) return [];
  if (!opened.body.present.some(({ staff }) => staff === now.by.staff))
    return [
      refusal('not-in-the-opening', 'The opening of this session does not name you as here.', {
        remedy: 'the nurse in charge writes the opening anew with your name, or somebody named there does it',
      }),
    ];
  const unit = recordIn(now, subject('unit', sessionOf(session)?.unit ?? ''));
  return !keepsCompetences(unit) || mayGiveAndCheck(unit, now.by.staff, now.today)
    ? []
    : [
        refusal('not-in-the-opening', 'Your competence for medicines into a vein is not in date.', {
          remedy: 'somebody whose competence is in date does it; the service lead records yours once it is shown',
        }),
      ];
}
