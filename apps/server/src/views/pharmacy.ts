/** The prescriptions of a unit that a pharmacist, or a prescriber asked by one, still has to look at. */
import {
  type Day,
  type Fact,
  type OrderAtPharmacy,
  type Protocol,
  counted,
  day,
  entryText,
  factsOf,
  holdsPreparation,
  isOpenOrder,
  needsPharmacist,
  orderAtPharmacy,
  pharmacySays,
  plainDate,
  protocolFor,
  shortDate,
} from '@twelvemonth/clinical';
import type { PersonView, PharmacyView, PrescriptionToVerify, TodayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { directionsShown } from './group-directions.ts';
import { allergiesInWords, bornInWords, fullName } from './person-words.ts';

/** Where the order of today is with the pharmacist; absent where nobody has a word in it: not asked for, and none given. */
export function atPharmacyOf({ record, today, unit }: Person): PersonView['atPharmacy'] {
  const order = orderAtPharmacy(record, today);
  if (order === undefined || !isOpenOrder(record, order.prescription, today)) return undefined;
  return stateShown(order, unit);
}

function stateShown(order: OrderAtPharmacy, unit: UnitNow | undefined): PersonView['atPharmacy'] {
  const holds = holdsPreparation(order, unit?.protocol);
  const { is } = order.state;
  if (is === 'waits' && !holds && order.state.changedSince === undefined) return undefined;
  return { is, says: pharmacySays(order, shortDate), holds };
}

export async function pharmacyOf(atHand: AtHand, unit: UnitNow, reader: string): Promise<PharmacyView> {
  const rows = (await atHand.people.all())
    .filter(({ unitId }) => unitId === unit.unit.id)
    .flatMap((person) => rowOf(person, atHand.accounts.nameOf, reader) ?? [])
    .toSorted(bySoonest);
  return {
    unit: unit.unit.id,
    unitName: unit.unit.name,
    today: plainDate(unit.today),
    ...(unit.protocol === undefined ? {} : { needed: needsPharmacist(unit.protocol) }),
    prescriptions: rows.filter(({ state }) => state.is !== 'verified'),
    verified: rows.filter(({ state, place }) => state.is === 'verified' && place !== undefined),
    ...directionsShown(atHand, unit, reader),
  };
}

/** Who has a place first, by its day; then who has waited longest. */
const bySoonest = (a: PrescriptionToVerify, b: PrescriptionToVerify): number => {
  const [left, right] = [a.place?.on ?? '9999', b.place?.on ?? '9999'];
  return left === right ? (a.since < b.since ? -1 : 1) : left < right ? -1 : 1;
};

function rowOf(person: Person, nameOf: (staff: string) => string, reader: string): PrescriptionToVerify | undefined {
  const { record, today, unit, place } = person;
  const order = orderAtPharmacy(record, today);
  if (order === undefined || !isOpenOrder(record, order.prescription, today)) return undefined;
  const { prescription, state } = order;
  const { body } = prescription;
  const protocol = unit?.protocol === undefined ? undefined : protocolFor(unit.protocol, record, today);
  const found = person.verdictOn(place?.on ?? today);
  const check = state.is === 'asked' || state.is === 'answered' ? state.check : undefined;
  const answer = state.is === 'answered' ? state.answer : undefined;
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    number: person.identity?.number ?? '',
    born: bornInWords(person.identity?.born),
    allergies: allergiesInWords(person),
    ...besideIt(person, place?.on ?? today),
    prescription: prescription.id,
    says: orderedInWords(prescription, protocol),
    orderedAs:
      body.groupDirection === undefined
        ? (body.orderedAs ?? 'patient-specific')
        : `under the group direction ${body.groupDirection}`,
    ...(body.conditions === undefined ? {} : { conditions: body.conditions }),
    validFrom: body.validFrom,
    validUntil: body.validUntil,
    by: nameOf(prescription.author.staff),
    on: plainDate(prescription.on),
    own: prescription.author.staff === reader,
    state: { is: state.is, says: pharmacySays(order, shortDate), holds: holdsPreparation(order, unit?.protocol) },
    since: plainDate(state.since),
    ...(check === undefined
      ? {}
      : {
          question: {
            check: check.id,
            says: check.body.question,
            by: nameOf(check.author.staff),
            on: plainDate(check.on),
          },
        }),
    ...(answer === undefined
      ? {}
      : { answer: { says: answer.body.answer, by: nameOf(answer.author.staff), on: plainDate(answer.on) } }),
    ...(place === undefined ? {} : { place: { on: plainDate(place.on), session: place.session } }),
    ...(found === undefined ? {} : { verdict: found.verdict, headline: found.headline }),
  };
}

/** What a pharmacist reads an order against: the kidneys with their numbers, what else is taken, what was given last. */
function besideIt(person: Person, on: Day): Pick<PrescriptionToVerify, 'clearance' | 'medicines' | 'lastDose'> {
  const clearance = person.view(on)?.requirements.find(({ id }) => id === 'kidney-function')?.working.says;
  const { lastDose } = person.course;
  return {
    ...(clearance === undefined ? {} : { clearance }),
    medicines: factsOf(person.record, 'medicine')
      .filter(({ body }) => body.stoppedOn === undefined || day(body.stoppedOn) > person.today)
      .map(({ body }) => body.name),
    ...(lastDose === undefined ? {} : { lastDose: entryText(lastDose) }),
  };
}

/** "zoledronic acid 5 mg once a year, 3 doses before a review": its days stand beside it. */
function orderedInWords({ body }: Fact<'prescription'>, protocol: Protocol | undefined): string {
  const known = protocol?.regimen.id === body.regimen ? protocol.regimen : undefined;
  const { interval, plannedDoses } = body;
  return [
    known === undefined ? `${body.regimen} (not in the protocol)` : known.title,
    ...(plannedDoses === undefined ? [] : [`${counted(plannedDoses, 'dose')} before a review`]),
    ...(interval === undefined ? [] : [`interval ${counted(interval.months, 'month')}: ${interval.reason}`]),
  ].join(', ');
}

/** On the list of a coming session, and nothing may be prepared yet. */
export function heldOn(people: readonly Person[]): TodayView['heldByPharmacy'] {
  const held = people.flatMap((person) => {
    const state = atPharmacyOf(person);
    return state?.holds === true && person.place !== undefined
      ? [
          {
            session: person.place.session,
            on: plainDate(person.place.on),
            patient: person.patient,
            name: fullName(person),
            says: state.says,
            refused: state.is === 'refused',
          },
        ]
      : [];
  });
  return [...held.filter(({ refused }) => refused), ...held.filter(({ refused }) => !refused)];
}
