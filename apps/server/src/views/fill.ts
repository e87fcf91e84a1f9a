/** Who waits and falls due at a unit as a request to fill its sessions; and who could have a place that came free. */
import { type SessionList, plainDate, sessionOf } from '@twelvemonth/clinical';
import type { FillView, StandbyView } from '@twelvemonth/exchange';
import {
  type RequestFromNotes,
  fillRequestInSteps,
  readFillRequest,
  standbyFor,
  tierNames,
} from '@twelvemonth/planning';
import type { AtHand } from '../at-hand.ts';
import { inSlices } from '../in-slices.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName } from './person-words.ts';
import { byPatient, everySession } from './sessions.ts';

const minutesPerHour = 60;
const minuteOf = (time: string): number => Number(time.slice(0, 2)) * minutesPerHour + Number(time.slice(3));

const freePlacesOf = ({ arriveAt, taken }: SessionList): { place: number; arriveAt: string }[] =>
  arriveAt.flatMap((time, index) => (taken.has(index + 1) ? [] : [{ place: index + 1, arriveAt: time }]));

type Requested = RequestFromNotes | { readonly ok: false; readonly says: string };

async function requestOf(
  atHand: AtHand,
  { unit, context, today }: UnitNow,
  people: readonly Person[],
  noticeDays?: number,
): Promise<Requested> {
  if (context === undefined) return { ok: false, says: noProtocolInForce };
  return inSlices(
    fillRequestInSteps({
      unit,
      context,
      today,
      sessions: (await everySession(atHand)).filter((session) => session.unit === unit.id),
      records: people.flatMap(({ record, unitId }) => (unitId === unit.id ? [record] : [])),
      noticeDays,
    }),
  );
}

export async function fillViewOf(atHand: AtHand, at: UnitNow): Promise<FillView> {
  const { unit, today } = at;
  const about = { unit: unit.id, unitName: unit.name, today: plainDate(today) };
  const everyone = await atHand.people.all();
  const made = await requestOf(atHand, at, everyone);
  if (!made.ok)
    return { ...about, says: made.says, people: [], sessions: [], leftOut: [], groupings: [], hasUsualSettings: false };
  const people = byPatient(everyone);
  const sessions = new Map((await everySession(atHand)).map((session) => [session.id, session]));
  return {
    ...about,
    request: made.request,
    people: made.patients.map((patient) => ({ patient, seq: people.get(patient)?.record.lastSeq ?? 0 })),
    sessions: made.sessions.flatMap((id) => {
      const session = sessions.get(id);
      if (session === undefined) return [];
      return [
        {
          session: id,
          on: plainDate(session.on),
          minutesOpen: minuteOf(session.closesAt) - minuteOf(session.opensAt),
          free: freePlacesOf(session),
        },
      ];
    }),
    leftOut: made.leftOut,
    groupings: made.groupings,
    hasUsualSettings: made.hasUsualSettings,
    ...(at.protocol === undefined ? {} : { bloodsValidDays: at.protocol.number.bloodsValidDays }),
  };
}

/** Nobody needs days of notice for a place that came free: they are rung. */
const noNotice = 0;

export async function standbyViewOf(atHand: AtHand, id: string): Promise<StandbyView | undefined> {
  const session = sessionOf(await atHand.notes.of('session', id));
  const at = session === undefined ? undefined : await atHand.units.named(session.unit);
  if (session === undefined || at === undefined) return undefined;
  const [place] = freePlacesOf(session);
  const about = { session: id, on: plainDate(session.on), ...(place === undefined ? {} : { place }) };
  const everyone = await atHand.people.all();
  const made = await requestOf(atHand, at, everyone, noNotice);
  if (!made.ok) return { ...about, says: made.says, list: [] };
  const index = made.sessions.indexOf(id);
  const read = readFillRequest(made.request);
  if (index < 0 || !read.ok)
    return { ...about, says: 'The session is past, cancelled or today: ring whoever is on its list.', list: [] };
  const { request } = read;
  const people = byPatient(everyone);
  const dates = new Map((await everySession(atHand)).map((one) => [one.id, plainDate(one.on)]));
  const list = standbyFor(
    request,
    request.people.map(({ told }) => told),
    index,
  ).flatMap(({ person, daysPastDue, from }) => {
    const who = people.get(made.patients[person] ?? '');
    // As things stand: for a place so near nothing more can be counted on.
    if (who?.verdictOn(session.on)?.verdict !== 'ready') return [];
    const later = from === null ? undefined : made.sessions[from];
    const on = later === undefined ? undefined : dates.get(later);
    return [
      {
        patient: who.patient,
        name: fullName(who),
        tier: tierNames[request.people[person]?.tier ?? 2],
        daysPastDue,
        ...(later === undefined || on === undefined ? {} : { from: { session: later, on } }),
        ...(who.contact?.telephone === undefined ? {} : { telephone: who.contact.telephone }),
        needs: [...(who.contact?.needs ?? [])],
        seq: who.record.lastSeq,
      },
    ];
  });
  return { ...about, list };
}
