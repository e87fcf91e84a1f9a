/** One line of the list of people. */
import { type Standing, counted, nextDoseInWords, plainDate } from '@twelvemonth/clinical';
import type { PersonRow } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { ageOf, fullName, placeViewOf, standingViewOf } from './person-words.ts';

/** Shown where no protocol is in force: nothing can be said, and nothing is. */
export const noProtocolInForce = 'cannot say: no protocol is in force at the unit';

/** Where no dose of ours will be asked about. */
const ended: ReadonlySet<Standing> = new Set(['died', 'closed', 'transferred out', 'returned to referrer']);

export function personRowOf(person: Person): PersonRow {
  const { identity, course, today, standing } = person;
  const over = ended.has(standing.standing);
  const view = over ? undefined : person.view(person.place?.on ?? today);
  const age = ageOf(identity?.born, today);
  const place = placeViewOf(person);
  return {
    patient: person.patient,
    name: fullName(person),
    number: identity?.number ?? '',
    born: identity?.born ?? '',
    ...(age === undefined ? {} : { age }),
    unit: person.unitId,
    standing: standingViewOf(person),
    verdict: over ? 'does not apply' : (view?.verdict ?? 'cannot say'),
    headline: over ? standing.says : (view?.headline ?? noProtocolInForce),
    ...(view?.window === undefined ? {} : { window: view.window }),
    ...(place === undefined ? {} : { place }),
    dose: standing.standing === 'in review' ? `${counted(course.doses.length, 'dose')} given` : nextDoseInWords(course),
    firstTimer: course.firstTimer,
    ...(course.due === undefined ? {} : { due: plainDate(course.due) }),
  };
}
