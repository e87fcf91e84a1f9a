/** What a person decides upon: the facts by which a trial fits them, the risk copied for them, what was talked about. */
import {
  type Day,
  type Fact,
  type KindName,
  type SubjectRecord,
  day,
  entryText,
  factsOf,
  plainDate,
} from '@twelvemonth/clinical';
import type { DecidingView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { feltAfterLastDose } from './coming-back.ts';
import { ageOf, bornInWords, fullName } from './person-words.ts';

export function decidingViewOf(atHand: AtHand, person: Person): DecidingView {
  const { record, unit, today, identity, standing } = person;
  const told = (fact: Fact) => ({
    entry: fact.id,
    on: plainDate(fact.on),
    text: entryText(fact),
    by: atHand.accounts.nameOf(fact.author.staff),
  });
  const newest = <Kind extends KindName>(kind: Kind): Fact<Kind> | undefined => upTo(record, kind, today).at(-1);
  const capacity = newest('capacity');
  const consent = newest('consent');
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    born: bornInWords(identity?.born),
    number: identity?.number ?? '',
    standing: standing.says,
    unit: {
      name: unit?.unit.name ?? '',
      telephone: unit?.unit.telephone ?? '',
      demo: unit?.unit.demo ?? atHand.demo !== undefined,
    },
    today: plainDate(today),
    ...(unit?.protocol === undefined ? {} : { protocolVersion: unit.protocol.version }),
    person: factsFor(person),
    risks: upTo(record, 'baseline-risk', today).map(({ id, on, body }) => ({
      entry: id,
      of: body.of,
      percent: body.percent,
      years: body.years,
      instrument: body.instrument,
      workedOutOn: plainDate(on),
      ...(body.lowPercent === undefined ? {} : { lowPercent: body.lowPercent }),
      ...(body.highPercent === undefined ? {} : { highPercent: body.highPercent }),
      veryFrail: body.veryFrail,
    })),
    felt: feltAfterLastDose(person),
    talks: upTo(record, 'talk', today)
      .toReversed()
      .map((fact) => ({ ...told(fact), ...(fact.body.matters === undefined ? {} : { matters: fact.body.matters }) })),
    ...(capacity === undefined ? {} : { capacity: told(capacity) }),
    ...(consent === undefined ? {} : { consent: told(consent) }),
    cautions: [...(unit?.protocol?.sheet.cautions ?? [])],
  };
}

const upTo = <Kind extends KindName>(record: SubjectRecord, kind: Kind, today: Day): readonly Fact<Kind>[] =>
  factsOf(record, kind).filter(({ on }) => on <= today);

function factsFor({ record, today, identity, course }: Person): DecidingView['person'] {
  const age = ageOf(identity?.born, today);
  const fractures = [
    ...upTo(record, 'fracture', today),
    ...upTo(record, 'spine-imaging', today).filter(({ body }) => body.found === 'new fracture'),
  ].map(({ on }) => on);
  const hip = newestHip(record, today);
  const firstSince =
    hip === undefined
      ? undefined
      : upTo(record, 'dose', today).find(({ on, body }) => body.medicine === 'zoledronic acid 5 mg' && on >= hip.on);
  const medicines = upTo(record, 'medicine', today);
  return {
    ...(identity?.sex === undefined ? {} : { sex: identity.sex }),
    ...(age === undefined ? {} : { ageYears: age }),
    ...(fractures.length === 0 ? {} : { newestFracture: plainDate(Math.max(...fractures) as Day) }),
    ...(hip === undefined ? {} : { hip: { on: plainDate(hip.on), repaired: hip.repaired } }),
    onSteroid: medicines.some(
      ({ body }) => body.sort === 'steroid' && (body.stoppedOn === undefined || day(body.stoppedOn) > today),
    ),
    hadBoneTablets: medicines.some(({ body }) => body.sort === 'bisphosphonate tablet'),
    dosesGiven: course.lifetime,
    dosesInARow: course.consecutive,
    ...(firstSince === undefined ? {} : { firstDoseSinceHip: plainDate(firstSince.on) }),
  };
}

/** By the day of its latest repair; a fracture that is not said to be repaired is one that is not. */
function newestHip(record: SubjectRecord, today: Day): { readonly on: Day; readonly repaired: boolean } | undefined {
  const fracture = upTo(record, 'fracture', today).findLast(({ body }) => body.site === 'hip');
  const repair = upTo(record, 'surgery', today).findLast(({ body }) => body.what !== 'other operation');
  if (repair !== undefined && (fracture === undefined || repair.on >= fracture.on))
    return { on: repair.on, repaired: true };
  return fracture === undefined ? undefined : { on: fracture.on, repaired: fracture.body.treated === 'repaired' };
}
