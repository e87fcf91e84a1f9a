/** Tries at a vein today that failed, and who is not to try again. */
import { type Protocol, entryText, factsOf, failedTries, plural } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';

export function failedTriesOf(
  { record, today }: Person,
  protocol: Protocol | undefined,
  nameOf: (staff: string) => string,
): Pick<VisitView, 'failedTries' | 'triedEnough'> {
  const most = protocol?.number.cannulaTriesBeforeOther ?? Infinity;
  return {
    failedTries: factsOf(record, 'cannula')
      .filter(({ on, body }) => on === today && !body.placed)
      .map((fact) => ({ entry: fact.id, says: entryText(fact), by: nameOf(fact.author.staff) })),
    triedEnough: [...failedTries(record, today)].flatMap(([staff, tries]) => (tries >= most ? [nameOf(staff)] : [])),
  };
}

/** Whose tries at a vein are enough is told before anybody goes to the chair. Hazard 32. */
export function byAnother(person: Person, protocol: Protocol | undefined, nameOf: (staff: string) => string): string {
  const { triedEnough } = failedTriesOf(person, protocol, nameOf);
  return triedEnough.length === 0 ? '' : `: somebody other than ${plural(triedEnough)}, whose tries failed`;
}
