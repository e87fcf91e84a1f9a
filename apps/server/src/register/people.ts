/**
 * Everyone on the register with what follows from their notes today: standing, course, readiness, the line they have in the
 * list. Worked out when first asked for and kept while notes, protocol and day stay the same.
 */
import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type BodyOfKind,
  type Course,
  type Day,
  type Place,
  type Readiness,
  type ReadinessView,
  type StandingNow,
  type VerdictOn,
  type SubjectRecord,
  courseOf,
  latest,
  placeFrom,
  readiness,
  standingOf,
  subjectId,
  unitOfPatient,
  verdictOn,
  viewOf,
} from '@twelvemonth/clinical';
import type { PersonRow } from '@twelvemonth/exchange';
import { type Clock, steadyMilliseconds } from '../clock.ts';
import { personRowOf } from '../views/person-row.ts';
import type { Notes } from './notes.ts';
import { type UnitNow, type Units, zoneBeforeAnyUnit } from './units.ts';

export type Person = {
  readonly patient: string;
  readonly record: SubjectRecord;
  readonly unit: UnitNow | undefined;
  readonly unitId: string;
  readonly today: Day;
  readonly identity: BodyOfKind<'identity'> | undefined;
  readonly contact: BodyOfKind<'contact'> | undefined;
  readonly standing: StandingNow;
  readonly course: Course;
  /** The next booked place, today's included. */
  readonly place: Place | undefined;
  /** Undefined: no protocol in force at their unit. */
  readonly readiness: () => Readiness | undefined;
  /** The answer on one date as things stand, without its working. */
  readonly verdictOn: (on: Day) => VerdictOn | undefined;
  readonly view: (on: Day) => ReadinessView | undefined;
  readonly row: () => PersonRow;
};

export type People = {
  readonly of: (patient: string) => Promise<Person | undefined>;
  /** Ascending by family name. */
  readonly all: () => Promise<readonly Person[]>;
  readonly warmUp: () => Promise<void>;
  readonly close: () => void;
};

/** How long one stretch of work may keep everyone else waiting. */
const sliceMilliseconds = 25;
/** A new day at a unit is noticed within this long. */
const newDayCheckMilliseconds = 30_000;

export function openPeople(notes: Notes, units: Units, clock: Clock): People {
  const known = new WeakMap<SubjectRecord, Person>();
  let closed = false;

  function personOf(record: SubjectRecord, unit: UnitNow | undefined): Person {
    const today = unit?.today ?? clock.local(zoneBeforeAnyUnit).today;
    const before = known.get(record);
    if (
      before !== undefined &&
      before.today === today &&
      before.unit?.context === unit?.context &&
      before.unit?.unit === unit?.unit
    )
      return before;
    const person = workedOut(record, unit, today);
    known.set(record, person);
    return person;
  }

  async function all(): Promise<readonly Person[]> {
    const byUnit = new Map((await units.all()).map((unit) => [unit.unit.id, unit]));
    const people: Person[] = [];
    let began = steadyMilliseconds();
    for (const record of await notes.all('patient')) {
      const person = personOf(record, byUnit.get(unitOfPatient(record)));
      person.row();
      people.push(person);
      if (steadyMilliseconds() - began > sliceMilliseconds) {
        await nextTurn();
        if (closed) break;
        began = steadyMilliseconds();
      }
    }
    return people.toSorted(byName);
  }

  const days = async (): Promise<string> => (await units.all()).map((unit) => `${unit.unit.id} ${unit.today}`).join();
  let lastDays = '';
  async function onNewDay(): Promise<void> {
    const now = await days();
    if (now === lastDays || closed) return;
    lastDays = now;
    await all();
  }
  const newDay = setInterval(() => {
    // What goes wrong here goes wrong again for whoever asks next, and is reported there.
    onNewDay().catch(() => undefined);
  }, newDayCheckMilliseconds);
  newDay.unref();

  return {
    of: async (patient) => {
      const record = await notes.of('patient', patient);
      return record.lastSeq === 0 ? undefined : personOf(record, await units.named(unitOfPatient(record)));
    },
    all,
    warmUp: async () => {
      lastDays = await days();
      await all();
    },
    close: () => {
      closed = true;
      clearInterval(newDay);
    },
  };
}

function workedOut(record: SubjectRecord, unit: UnitNow | undefined, today: Day): Person {
  const protocol = unit?.protocol;
  const place = placeFrom(record, today);
  const standing = standingOf(record, protocol, today);
  const course = courseOf(record, protocol, today, unit?.unit.calendar);
  const ready = once(() =>
    unit?.context === undefined
      ? undefined
      : readiness(record, unit.context, today, place === undefined ? {} : { place: place.on }),
  );
  const person: Person = {
    patient: subjectId(record.subject),
    record,
    unit,
    unitId: unitOfPatient(record),
    today,
    identity: latest(record, 'identity')?.body,
    contact: latest(record, 'contact')?.body,
    standing,
    course,
    place,
    readiness: ready,
    verdictOn: (on) => {
      const found = ready();
      return found === undefined ? undefined : verdictOn(found, on);
    },
    view: (on) => {
      const found = ready();
      return found === undefined || unit?.context === undefined
        ? undefined
        : viewOf(found, record, unit.context, { on });
    },
    row: once(() => personRowOf(person)),
  };
  return person;
}

function once<Value>(make: () => Value): () => Value {
  let made: { value: Value } | undefined;
  return () => (made ??= { value: make() }).value;
}

const nameOf = ({ identity }: Person): string =>
  `${identity?.family ?? ''}\u0000${identity?.given ?? ''}`.toLowerCase();
const order = new Intl.Collator('en', { sensitivity: 'base' });
const byName = (a: Person, b: Person): number =>
  order.compare(nameOf(a), nameOf(b)) || (a.patient < b.patient ? -1 : 1);
