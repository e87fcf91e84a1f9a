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
  type Protocol,
  type Readiness,
  type ReadinessView,
  type StandingNow,
  type VerdictOn,
  type SubjectRecord,
  type UnitCalendar,
  addDays,
  courseOf,
  latest,
  placeFrom,
  readiness,
  standingOf,
  subjectId,
  type TaskName,
  taskRows,
  unitOfPatient,
  verdictOn,
  viewOf,
  visitOn,
} from '@twelvemonth/clinical';
import type { PersonRow } from '@twelvemonth/exchange';
import { type Clock, steadyMilliseconds } from '../clock.ts';
import { personRowOf } from '../views/person-row.ts';
import type { Notes } from './notes.ts';
import { type UnitNow, type Units, zoneBeforeAnyUnit } from './units.ts';

/** Something that waits for someone, and since when it is due. */
export type Task = {
  readonly name: string;
  readonly due: Day;
  readonly patient: string;
  readonly owner: string;
  readonly says: string;
  /** The first entry it is about. */
  readonly about: string;
};

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
  /** What is due today. */
  readonly tasks: () => readonly Task[];
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

  /** The list as it was last worked out, good as long as no record, unit, protocol or day has changed. */
  let kept:
    | {
        readonly records: readonly SubjectRecord[];
        readonly units: readonly UnitNow[];
        readonly people: readonly Person[];
      }
    | undefined;

  async function all(): Promise<readonly Person[]> {
    const unitsNow = await units.all();
    const records = await notes.all('patient');
    if (kept?.records === records && sameUnits(kept.units, unitsNow)) return kept.people;
    const byUnit = new Map(unitsNow.map((unit) => [unit.unit.id, unit]));
    const people: Person[] = [];
    let began = steadyMilliseconds();
    for (const record of records) {
      const person = personOf(record, byUnit.get(unitOfPatient(record)));
      person.row();
      people.push(person);
      if (steadyMilliseconds() - began > sliceMilliseconds) {
        await nextTurn();
        if (closed) return people;
        began = steadyMilliseconds();
      }
    }
    people.sort(byName);
    kept = { records, units: unitsNow, people };
    return people;
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
  // Once they have gone home, the place of today has been used.
  const place = placeFrom(record, visitOn(record, today)?.over === true ? addDays(today, 1) : today);
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
      // A day that is past is asked about as on that day, by what is known now: a list of yesterday can still be read.
      const found = on < today && unit?.context !== undefined ? readiness(record, unit.context, on) : ready();
      return found === undefined ? undefined : verdictOn(found, on);
    },
    view: (on) => {
      const found = ready();
      return found === undefined || unit?.context === undefined
        ? undefined
        : viewOf(found, record, unit.context, { on });
    },
    row: once(() => personRowOf(person)),
    tasks: once(() => tasksDue(record, protocol, today, unit?.unit.calendar)),
  };
  return person;
}

/** Listed before its day: whoever came and had no dose until they are seen to; what has to be there with the person that day. */
const listedBefore: ReadonlySet<string> = new Set<TaskName>([
  'see to what was put off',
  'move or cancel what was booked',
  'arrange what goes with the place',
]);

const tasksDue = (
  record: SubjectRecord,
  protocol: Protocol | undefined,
  today: Day,
  calendar: UnitCalendar | undefined,
): Task[] =>
  taskRows(record, protocol, today, calendar).flatMap(({ key, columns }) => {
    const { task, due_day: due, owner, detail } = columns;
    if (typeof task !== 'string' || typeof due !== 'number' || (due > today && !listedBefore.has(task))) return [];
    return [
      {
        name: task,
        due: due as Day,
        patient: subjectId(record.subject),
        owner: String(owner),
        says: String(detail),
        about: key.slice(task.length + 1),
      },
    ];
  });

const sameUnits = (before: readonly UnitNow[], now: readonly UnitNow[]): boolean =>
  before.length === now.length &&
  now.every(({ unit, context, today }, index) => {
    const other = before[index];
    return other?.unit === unit && other.context === context && other.today === today;
  });

function once<Value>(make: () => Value): () => Value {
  let made: { value: Value } | undefined;
  return () => (made ??= { value: make() }).value;
}

const nameOf = ({ identity }: Person): string =>
  `${identity?.family ?? ''}\u0000${identity?.given ?? ''}`.toLowerCase();
const order = new Intl.Collator('en', { sensitivity: 'base' });
const byName = (a: Person, b: Person): number =>
  order.compare(nameOf(a), nameOf(b)) || (a.patient < b.patient ? -1 : 1);
