/**
 * A life is a generator of wants: "at this minute, this person does this". The scheduler carries each out in the order of
 * time and answers with the minute it has become. A life reads the notes between two wants, as a member of staff would.
 */
import {
  type Act,
  type Author,
  type BodyOfKind,
  type Day,
  type KindName,
  type Refusal,
  type Role,
  type SubjectRecord,
  plainDate,
  subject,
  weekday,
} from '@twelvemonth/clinical';
import { type Minutes, at, dayOf, momentOf } from './clock.ts';
import type { Person } from './people.ts';
import type { Chance } from './random.ts';
import { inRole } from './staff.ts';
import { type World, contextOf, recordIn } from './world.ts';

export type Want = { readonly at: Minutes; readonly act?: Act; readonly by?: Author };
export type Reply = { readonly now: Minutes; readonly refusals: readonly Refusal[] };
export type Life<Result = void> = Generator<Want, Result, Reply>;

/** Thrown through a life when the person has died: whatever was planned is not. */
export class HasDied extends Error {}

/** Room left at the end of the demo's own day for what is written one after the other. */
const LAST_MINUTES = 15;

export class Me {
  readonly person: Person;
  readonly world: World;
  readonly chance: Chance;
  /** The minute it is in this life. */
  now: Minutes;

  constructor(person: Person, world: World, start: Minutes) {
    this.person = person;
    this.world = world;
    this.chance = person.chance;
    this.now = start;
  }
  get patient(): string {
    return this.person.id;
  }
  get today(): Day {
    return dayOf(this.now);
  }
  record(): SubjectRecord {
    return recordIn(this.world, subject('patient', this.person.id));
  }
  context(): ReturnType<typeof contextOf> {
    return contextOf(this.world, this.person.unit);
  }
  /** Someone of the unit in a role; who, is chance. */
  by(role: Role): Author {
    return inRole(role, this.person.unit, this.chance.between(0, 3));
  }

  /** Passes the time. Death comes between. */
  *until(minute: Minutes): Life {
    const { diesOn } = this.person;
    if (diesOn !== undefined && dayOf(minute) >= diesOn) throw new HasDied();
    if (minute <= this.now) return;
    this.now = (yield { at: minute }).now;
  }
  /** A working day so many days on, in office hours. */
  *days(least: number, most = least): Life {
    yield* this.officeDay((this.today + this.chance.between(least, most)) as Day);
  }
  /** That day in office hours, or the next working day; at once if it is today and still office time. */
  *officeDay(on: Day): Life {
    let day = Math.max(on, this.today) as Day;
    while (weekday(day) > 5) day = (day + 1) as Day;
    const minute = at(day, this.chance.between(9, 15), this.chance.between(0, 59));
    yield* this.until(minute > this.now ? minute : day > this.today ? minute : this.now + 1);
  }
  /** Exactly that day, at a time of day; on the demo's own day earlier if it has not come so far. */
  *onDay(on: Day, hour: number, minute = 0): Life {
    const { today, until } = this.world;
    const latest = on === today ? Math.max(at(today, 0), until - LAST_MINUTES) : Infinity;
    yield* this.until(Math.min(at(on, hour, minute), latest));
  }
  *minutes(least: number, most = least): Life {
    yield* this.until(this.now + this.chance.between(least, most));
  }

  /** Does it now. A life of the demo never asks for what is refused: that would be a defect of the demo. */
  *does(by: Author, act: Act): Life {
    const reply = yield { at: this.now, act, by };
    // Asked whether it is right as typed, people of the demo say yes; a wrong one is found and corrected later.
    const doubts = reply.refusals.filter(({ name }) => name === 'is-it-right').map(({ says }) => says);
    const answered =
      doubts.length > 0 && (act.name === 'record' || act.name === 'record together')
        ? yield { at: this.now, act: { ...act, confirms: doubts }, by }
        : reply;
    if (answered.refusals.length > 0) throw new RefusedInDemo(act, by, this.now, answered.refusals);
  }
  *writes<Kind extends KindName>(by: Author, kind: Kind, body: BodyOfKind<Kind>, on: Day = this.today): Life {
    yield* this.does(by, { name: 'record', patient: this.patient, line: { kind, body, effectiveAt: plainDate(on) } });
  }
  /** A step of a visit: true at this minute. */
  *marks<Kind extends KindName>(by: Author, kind: Kind, body: BodyOfKind<Kind>): Life {
    yield* this.does(by, {
      name: 'record',
      patient: this.patient,
      line: { kind, body, effectiveAt: momentOf(this.now) },
    });
  }
}

class RefusedInDemo extends Error {
  constructor(act: Act, by: Author, now: Minutes, refusals: readonly Refusal[]) {
    super(
      `${momentOf(now)} ${by.staff} (${by.role}) ${JSON.stringify(act)}: ${refusals.map(({ name, says }) => `${name}: ${says}`).join('; ')}`,
    );
  }
}
