/** A session on its day: what opening and closing it need, and what was said. */
import {
  type Day,
  type Fact,
  type SessionDay,
  type SubjectRecord,
  competenceOf,
  competences,
  day,
  dripProduct,
  factsOf,
  mayGiveAndCheck,
  missingAtClosing,
  plainDate,
  receivedAs,
  sameBatch,
  sessionDayOf,
  sessionOf,
  shortDate,
  stopOf,
} from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { nurseOf, nursesOf } from './named-nurse.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName } from './person-words.ts';
import { byPatient, everySession, inTrouble, listedOn } from './sessions.ts';

export async function sessionDayViewOf(atHand: AtHand, id: string): Promise<SessionDayView | undefined> {
  const record = await atHand.notes.of('session', id);
  const session = sessionOf(record);
  const unit = session === undefined ? undefined : await atHand.units.named(session.unit);
  if (session === undefined || unit === undefined) return undefined;
  const people = byPatient(await atHand.people.all());
  const unitRecord = await atHand.notes.of('unit', session.unit);
  const listed = listedOn(session, people).flatMap(({ person }) => person ?? []);
  const next = (await everySession(atHand)).find(
    (one) => one.unit === session.unit && one.on > session.on && one.cancelled === undefined,
  );
  const said = sessionDayOf(record);
  return {
    session: id,
    seq: record.lastSeq,
    unit: session.unit,
    unitName: unit.unit.name,
    on: plainDate(session.on),
    today: plainDate(unit.today),
    state: said.state,
    chairs: unit.unit.chairs,
    listed: listed.length,
    nurses: nursesOf(record, atHand.accounts.nameOf),
    lookedAfter: listedOn(session, people)
      .flatMap(({ arriveAt, person }) => (person === undefined ? [] : [{ arriveAt, person }]))
      .map(({ arriveAt, person }) => ({
        patient: person.patient,
        name: fullName(person),
        arriveAt,
        ...nurseOf(record, person.patient, atHand.accounts.nameOf),
      })),
    staff: atHand.accounts
      .everyone()
      .filter(({ active }) => active)
      .map(({ staff, name, roles }) => ({
        staff,
        name,
        roles: [...roles],
        competences: shownBy(unitRecord, staff, session.on),
        mayCheck: mayGiveAndCheck(unitRecord, staff, session.on),
      })),
    batches: await batchesOf(atHand, session.on, openedBy(listed, session.on)),
    trouble: troubleOf(listed, session.on),
    ...(next === undefined
      ? {}
      : {
          next: {
            session: next.id,
            on: plainDate(next.on),
            trouble: troubleOf(
              listedOn(next, people).flatMap(({ person }) => person ?? []),
              next.on,
            ),
          },
        }),
    ...wordsOf(said, atHand.accounts.nameOf),
    missing:
      said.state === 'open'
        ? listed.flatMap((person) =>
            missingAtClosing(person.record, session.on).map(({ says, remedy }) => ({
              patient: person.patient,
              says,
              remedy,
            })),
          )
        : [],
  };
}

const shownBy = (unit: SubjectRecord, staff: string, on: Day): SessionDayView['staff'][number]['competences'] =>
  competences.flatMap((what) => {
    const shown = competenceOf(unit, staff, what);
    return shown === undefined ? [] : [{ what, until: shown.until, inDate: day(shown.until) >= on }];
  });

function troubleOf(listed: readonly Person[], on: Day): SessionDayView['trouble'] {
  return listed
    .filter((person) => inTrouble(person, on))
    .map((person) => ({
      patient: person.patient,
      name: fullName(person),
      says: person.verdictOn(on)?.headline ?? noProtocolInForce,
    }));
}

/** Packs opened for people on the list, by batch. */
function openedBy(listed: readonly Person[], on: Day): ReadonlyMap<string, number> {
  const opened = new Map<string, number>();
  for (const { record } of listed) {
    for (const preparation of factsOf(record, 'preparation')) {
      if (preparation.on !== on) continue;
      const batch = sameBatch(preparation.body.batch);
      opened.set(batch, (opened.get(batch) ?? 0) + 1);
    }
  }
  return opened;
}

/** What may be used that day: received, in date, not stopped. */
async function batchesOf(
  { notes }: AtHand,
  on: Day,
  opened: ReadonlyMap<string, number>,
): Promise<SessionDayView['batches']> {
  return (await notes.all('batch')).flatMap((record) => {
    const received = receivedAs(record);
    if (received === undefined || received.product !== dripProduct) return [];
    const here = opened.get(sameBatch(received.batch)) ?? 0;
    const mayBeUsed = day(received.expiresOn) >= on && stopOf(record) === undefined;
    if (!mayBeUsed && here === 0) return [];
    const { batch, product, expiresOn } = received;
    return [{ batch, product, expiresOn, opened: here }];
  });
}

const momentOf = (fact: Fact): string => fact.at ?? fact.recordedAt;

function wordsOf(
  { opened, closed, accepted }: SessionDay,
  nameOf: (staff: string) => string,
): Pick<SessionDayView, 'opened' | 'closed' | 'accepted'> {
  return {
    ...(opened === undefined
      ? {}
      : {
          opened: {
            by: nameOf(opened.author.staff),
            at: momentOf(opened),
            present: opened.body.present.map(({ staff, role }) => ({ staff, name: nameOf(staff), role })),
            secondCheckers: opened.body.secondCheckers.map((staff) => ({ staff, name: nameOf(staff) })),
            kit: `whole, in date until ${shortDate(day(opened.body.kit.expiresOn))}, looked at by ${nameOf(opened.body.kit.checkedBy)}`,
            kitExpiresOn: opened.body.kit.expiresOn,
            chairs: opened.body.chairs,
            counts: opened.body.counts.map((count) => ({ ...count })),
            ...(opened.body.note === undefined ? {} : { note: opened.body.note }),
          },
        }),
    ...(closed === undefined
      ? {}
      : {
          closed: {
            by: nameOf(closed.author.staff),
            byStaff: closed.author.staff,
            at: momentOf(closed),
            counts: closed.body.counts.map((count) => ({ ...count })),
            handover: closed.body.handover,
            to: nameOf(closed.body.to),
            toStaff: closed.body.to,
          },
        }),
    ...(accepted === undefined
      ? {}
      : {
          accepted: {
            by: nameOf(accepted.author.staff),
            at: momentOf(accepted),
            ...(accepted.body.note === undefined ? {} : { note: accepted.body.note }),
          },
        }),
  };
}
