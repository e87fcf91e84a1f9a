/** Sessions: the list of them, one with its list, and who could come. */
import { type Day, type SessionList, addDays, plainDate, sessionOf, shortDate, visitOn } from '@twelvemonth/clinical';
import type { SessionRow, SessionView, sessionsQuery } from '@twelvemonth/exchange';
import type { z } from 'zod';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { fullName } from './person-words.ts';
import { listedPatientOf } from './visit-steps.ts';

type ByPatient = ReadonlyMap<string, Person>;

export async function everySession({ notes }: AtHand): Promise<(SessionList & { readonly seq: number })[]> {
  return (await notes.all('session'))
    .flatMap((record) => {
      const session = sessionOf(record);
      return session === undefined ? [] : [{ ...session, seq: record.lastSeq }];
    })
    .toSorted((a, b) => a.on - b.on || (a.opensAt < b.opensAt ? -1 : 1));
}

export const byPatient = (everyone: readonly Person[]): ByPatient =>
  new Map(everyone.map((person) => [person.patient, person]));

/** The people on a list, in the order of their places. */
export const listedOn = (
  session: SessionList,
  people: ByPatient,
): { place: number; arriveAt: string; person: Person | undefined }[] =>
  session.arriveAt.map((arriveAt, index) => {
    const patient = session.taken.get(index + 1);
    return { place: index + 1, arriveAt, person: patient === undefined ? undefined : people.get(patient) };
  });

/** Whether a booked person will not be ready on that date, as things stand; whose visit is decided is past that question. */
export const inTrouble = (person: Person, on: Day): boolean => {
  const visit = visitOn(person.record, on);
  if (visit?.dose !== undefined || visit?.putOff === true) return false;
  const verdict = person.verdictOn(on)?.verdict;
  return verdict !== 'ready' && verdict !== 'does not apply';
};

function rowOf(session: SessionList, people: ByPatient, unitName: string, today: Day): SessionRow {
  const booked = listedOn(session, people).flatMap(({ person }) => person ?? []);
  return {
    session: session.id,
    unit: session.unit,
    unitName,
    on: plainDate(session.on),
    opensAt: session.opensAt,
    closesAt: session.closesAt,
    places: session.arriveAt.length,
    taken: session.taken.size,
    trouble:
      session.on < today || session.cancelled !== undefined
        ? 0
        : booked.filter((person) => inTrouble(person, session.on)).length,
    cancelled: session.cancelled !== undefined,
  };
}

/** Shown when nobody says which: from last week to half a year ahead. */
const shownBackDays = 7;
const shownAheadDays = 183;

export async function sessionsOf(atHand: AtHand, asked: z.infer<typeof sessionsQuery>): Promise<SessionRow[]> {
  const people = byPatient(await atHand.people.all());
  const rows: SessionRow[] = [];
  const units = new Map((await atHand.units.all()).map((unit) => [unit.unit.id, unit]));
  for (const session of await everySession(atHand)) {
    const unit = units.get(session.unit);
    if (unit === undefined || (asked.unit !== undefined && asked.unit !== session.unit)) continue;
    const from = asked.from ?? plainDate(addDays(unit.today, -shownBackDays));
    const until = asked.until ?? plainDate(addDays(unit.today, shownAheadDays));
    const on = plainDate(session.on);
    if (on >= from && on <= until) rows.push(rowOf(session, people, unit.unit.name, unit.today));
  }
  return rows;
}

/** How many people who could come are worth naming beside a list. */
const couldComeAtMost = 40;
const whoCouldCome = new Set(['waiting for a place', 'in work-up', 'put off', 'overdue', 'between doses']);

export async function sessionViewOf(atHand: AtHand, id: string): Promise<SessionView | undefined> {
  const record = await atHand.notes.of('session', id);
  const session = sessionOf(record);
  if (session === undefined) return undefined;
  const unit = await atHand.units.named(session.unit);
  const everyone = await atHand.people.all();
  const people = byPatient(everyone);
  const today = unit?.today ?? session.on;
  const listed = listedOn(session, people);
  const booked = listed.flatMap(({ person }) => person ?? []);
  return {
    ...rowOf(session, people, unit?.unit.name ?? session.unit, today),
    seq: record.lastSeq,
    list: listed.map(({ place, arriveAt, person }) => ({
      place,
      arriveAt,
      ...(person === undefined ? {} : { who: listedPatientOf(person, session.on, atHand.accounts.nameOf, booked) }),
    })),
    couldCome: session.on < today || session.cancelled !== undefined ? [] : couldComeOn(everyone, session),
  };
}

export function couldComeOn(everyone: readonly Person[], session: SessionList): SessionView['couldCome'] {
  return (
    everyone
      .filter(
        (person) =>
          person.unitId === session.unit &&
          person.place === undefined &&
          whoCouldCome.has(person.standing.standing) &&
          // Put off this morning is no reason to be asked for this afternoon.
          visitOn(person.record, session.on) === undefined &&
          isDue(person, session.on),
      )
      .flatMap((person) => {
        const window = person.readiness()?.window;
        if (
          window === undefined ||
          window.first > session.on ||
          (window.last !== undefined && window.last < session.on)
        )
          return [];
        const certain = window.certainUntil !== undefined && window.certainUntil >= session.on;
        return [{ person, certain, last: window.last ?? Infinity }];
      })
      // Whose window closes first has the least choice.
      .toSorted((a, b) => Number(b.certain) - Number(a.certain) || a.last - b.last)
      .slice(0, couldComeAtMost)
      .map(({ person, certain }) => ({
        patient: person.patient,
        name: fullName(person),
        standing: person.standing.says,
        window: person.row().window?.says ?? shortDate(session.on),
        certain,
      }))
  );
}

/** Between two doses a place is offered from the due date on. */
const isDue = ({ course, standing }: Person, on: Day): boolean =>
  standing.standing !== 'between doses' || (course.due !== undefined && course.due <= on);
