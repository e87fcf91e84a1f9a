/** Whose page an address opens, and what stands on it. */
import { type OpenPage, factsOf, noContactWanted, openPageOf } from '@twelvemonth/clinical';
import type { OwnPageFacts } from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { bloodsBetween } from '../documents/bloods-between.ts';
import { patientPackDocumentOf } from '../documents/patient-pack.ts';
import { Refused } from '../problem.ts';
import { isAboutDoseGiven } from '../documents/last-or-next.ts';
import type { Person } from '../register/people.ts';
import { doseAskedAbout } from './after.ts';
import { hashOfSecret, secretPattern } from './secret.ts';

export type OpenedPage = { readonly person: Person; readonly page: OpenPage };

/** Undefined for one that is over, was closed, or never was: nobody is told which. */
export async function pageBehind(secret: string, { people }: AtHand): Promise<OpenedPage | undefined> {
  if (!secretPattern.test(secret)) return undefined;
  const hash = hashOfSecret(secret);
  for (const person of await people.all()) {
    const page = mayOpen(person) ? openPageOf(person.record, person.today) : undefined;
    if (page?.secretHash === hash) return { person, page };
  }
  return undefined;
}

const over: ReadonlySet<string> = new Set(['died', 'closed']);
const mayOpen = ({ standing, record, today }: Person): boolean =>
  !over.has(standing.standing) && noContactWanted(record, today) === undefined;

export function ownPageFactsOf(person: Person): OwnPageFacts {
  const { unit, place, record, course } = person;
  if (unit === undefined) throw new Error('a person with a page and without a unit');
  const { name, telephone, letters, demo } = unit.unit;
  const isGiven = isAboutDoseGiven(person);
  const told = factsOf(record, 'told-ahead').findLast(
    ({ on }) => course.lastDose === undefined || on > course.lastDose.on,
  );
  return {
    language: letters?.language ?? 'en-GB',
    demo,
    unit: { name, telephone, address: letters?.postalAddress },
    visit: place === undefined || isGiven ? undefined : { on: place.on, arriveAt: place.arriveAt },
    bloods: isGiven ? undefined : bloodsBetween(person),
    pack: !(patientPackDocumentOf(person, { size: 'normal', language: 'en-GB' }) instanceof Refused),
    dosedOn: doseAskedAbout(person)?.on,
    toldOn: told?.on,
  };
}
