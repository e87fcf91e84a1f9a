/** One person: everything the page about them shows. */
import { type Day, type Fact, entryText, factsOf, mayDoAct, plainDate, visitOn } from '@twelvemonth/clinical';
import { type PersonView, readinessToWire } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { entriesOf } from '../register/notes.ts';
import type { Person } from '../register/people.ts';
import { courseViewOf } from './course.ts';
import { clockOfPerson, clockViewOf } from './clock.ts';
import { entryViewsOf, unreadIn } from './entries.ts';
import { directionsToUse } from './group-directions.ts';
import { readingOf } from './reading.ts';
import { alikeViewsOf, togetherViewsOf } from './one-or-two.ts';
import { atPharmacyOf } from './pharmacy.ts';
import {
  ageOf,
  allergiesInWords,
  bornInWords,
  fullName,
  needsOf,
  placeViewOf,
  standingViewOf,
} from './person-words.ts';
import { supportLinesOf } from './supports.ts';

export async function personViewOf(
  atHand: AtHand,
  person: Person,
  on: Day | undefined,
  reader: string,
): Promise<PersonView> {
  const { identity, contact, record, today } = person;
  const entries = await entriesOf(atHand.store, record);
  const age = ageOf(identity?.born, today);
  const view = person.view(on ?? person.place?.on ?? today);
  const place = placeViewOf(person);
  const visit = visitOn(record, today);
  const clock = clockViewOf(clockOfPerson(person));
  const pharmacist = atPharmacyOf(person);
  const everyone = await atHand.people.all();
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    family: identity?.family ?? '',
    given: identity?.given ?? '',
    formerNames: [...(identity?.formerNames ?? [])],
    born: identity?.born ?? '',
    bornInWords: bornInWords(identity?.born),
    ...(age === undefined ? {} : { age }),
    ...(identity?.sex === undefined ? {} : { sex: identity.sex }),
    number: identity?.number ?? '',
    unit: person.unitId,
    allergies: allergiesInWords(person),
    ...(contact?.armToAvoid === undefined ? {} : { armToAvoid: contact.armToAvoid }),
    ...(contact?.armToAvoidBecause === undefined ? {} : { armToAvoidBecause: contact.armToAvoidBecause }),
    needs: needsOf(person),
    ...(contact?.telephone === undefined ? {} : { telephone: contact.telephone }),
    ...(contact?.address === undefined ? {} : { address: contact.address }),
    ...(contact?.familyDoctor === undefined ? {} : { familyDoctor: contact.familyDoctor }),
    standing: standingViewOf(person),
    ...(view === undefined
      ? { noReadiness: 'No protocol is in force at this unit: nothing can be said about a dose.' }
      : { readiness: readinessToWire(view) }),
    ...(place === undefined ? {} : { place }),
    supports: supportLinesOf(person),
    course: courseViewOf(record, person.course),
    ...(person.unit?.protocol === undefined ? {} : { reading: readingOf(record, person.unit.protocol, today) }),
    ...(clock === undefined ? {} : { clock }),
    ...(pharmacist === undefined ? {} : { atPharmacy: pharmacist }),
    directions: directionsToUse(person, reader),
    visitOpen: visit !== undefined && !visit.over,
    checkers: checkersBut(reader, atHand),
    unsigned: unsignedResults(person).map((fact) => ({
      entry: fact.id,
      text: entryText(fact),
      on: plainDate(fact.on),
    })),
    lookAlikes: alikeViewsOf(everyone, person, atHand.accounts.nameOf),
    together: togetherViewsOf(person, atHand.accounts.nameOf),
    problems: record.problems.map(({ says, seq }) => `entry ${seq}: ${says}`),
    entries: entryViewsOf(entries, atHand.accounts.nameOf, unreadIn(person), record),
  };
}

const checkersBut = (reader: string, { accounts }: AtHand): PersonView['checkers'] =>
  accounts
    .everyone()
    .filter(
      ({ staff, active, roles }) => active && staff !== reader && roles.some((role) => mayDoAct(role, 'second check')),
    )
    .map(({ staff, name }) => ({ staff, name }));

/** Results nobody has signed yet: they do not count until then. */
function unsignedResults({ record }: Pick<Person, 'record'>): readonly Fact<'result'>[] {
  const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
  return factsOf(record, 'result').filter(({ id }) => !signed.has(id));
}
