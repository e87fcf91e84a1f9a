/** A session on its day: what opening and closing it need, and what was said. */
import {
  type Day,
  type Fact,
  type SessionDay,
  type SessionList,
  type SubjectRecord,
  competenceOf,
  competences,
  day,
  dripProduct,
  factsOf,
  lettersOut,
  isVisitLetter,
  onHand,
  mayGiveAndCheck,
  missingAtClosing,
  plainDate,
  receivedAs,
  sameBatch,
  sessionDayOf,
  sessionOf,
  shortDate,
  stopOf,
  visitOn,
} from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { nurseOf, nursesOf } from './named-nurse.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName } from './person-words.ts';
import { secondChecksOf } from './second-checks.ts';
import { byPatient, everySession, inTrouble, listedOn } from './sessions.ts';
import { heldBy } from './session-state.ts';
import { whoHadWhat } from './stock.ts';

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
        gone: visitOn(person.record, session.on)?.over === true,
        ...nurseOf(record, person.patient, atHand.accounts.nameOf),
      })),
    secondChecks: secondChecksOf(listed, session.on, atHand.accounts.nameOf),
    staff: atHand.accounts
      .everyone()
      .filter(({ active }) => active)
      .map(({ staff, name, roles, forToday }) => ({
        staff,
        name,
        roles: [...roles],
        onlyToday: forToday !== undefined,
        competences: shownBy(unitRecord, staff, session.on),
        mayCheck: mayGiveAndCheck(unitRecord, staff, session.on),
      })),
    batches: await batchesOf(atHand, session, openedBy(listed, session.on)),
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
    ...wordsOf(said, atHand.accounts.nameOf, await sumsBefore(atHand, session)),
    held: said.state === 'open' ? heldBy(said, unitRecord, session.on) : [],
    missing: said.state === 'open' ? missingOf(session, people, unit) : [],
    lettersToSend: listed.reduce((sum, { record: notes }) => sum + lettersToSend(notes, session.on), 0),
  };
}

function missingOf(
  session: SessionList,
  people: ReadonlyMap<string, Person>,
  { today, moment }: UnitNow,
): SessionDayView['missing'] {
  const isStillToCome = (arriveAt: string): boolean =>
    session.on > today || (session.on === today && arriveAt > moment.slice(11, 16));
  return listedOn(session, people).flatMap(({ person, arriveAt }) =>
    person === undefined
      ? []
      : missingAtClosing(person.record, session.on).map(({ what, remedy }) => ({
          patient: person.patient,
          name: fullName(person),
          what,
          remedy,
          ...(what === 'not come' && isStillToCome(arriveAt) ? { comesAt: arriveAt } : {}),
        })),
  );
}

const lettersToSend = (record: SubjectRecord, on: Day): number =>
  lettersOut(record).filter(
    ({ letter, waitsFor }) =>
      letter !== undefined && letter.on >= on && isVisitLetter(letter.body) && waitsFor === 'sending',
  ).length;

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

/** What may be used that day: received, in date, not stopped. What lies at this unit comes first. */
async function batchesOf(
  atHand: AtHand,
  { on, unit }: SessionList,
  opened: ReadonlyMap<string, number>,
): Promise<SessionDayView['batches']> {
  const { used } = await whoHadWhat(atHand, unit);
  return (await atHand.notes.all('batch'))
    .flatMap((record) => {
      const received = receivedAs(record);
      if (received === undefined || received.product !== dripProduct) return [];
      const key = sameBatch(received.batch);
      const here = opened.get(key) ?? 0;
      const mayBeUsed = day(received.expiresOn) >= on && stopOf(record) === undefined;
      if (!mayBeUsed && here === 0) return [];
      const { batch, product, expiresOn } = received;
      const isHere = here > 0 || onHand(record, unit, used.get(key) ?? []).packs !== 0;
      return [{ batch, product, expiresOn, opened: here, isHere }];
    })
    .toSorted((a, b) => Number(b.isHere) - Number(a.isHere) || (a.expiresOn < b.expiresOn ? -1 : 1));
}

const momentOf = (fact: Fact): string => fact.at ?? fact.recordedAt;

/** When it was opened, where that was written anew since. */
function firstOpening(
  [first]: SessionDay['openings'],
  opened: Fact<'session-opened'>,
  nameOf: (staff: string) => string,
): Pick<NonNullable<SessionDayView['opened']>, 'first'> {
  return first === undefined || first.id === opened.id
    ? {}
    : { first: { by: nameOf(first.author.staff), at: momentOf(first) } };
}

/** Who writes anew who is here does not count the packs again: the newest count of each batch stands. */
const newestCounts = (
  openings: SessionDay['openings'],
  sums: ReadonlyMap<string, number>,
): NonNullable<SessionDayView['opened']>['counts'] =>
  [
    ...new Map(openings.flatMap(({ body }) => body.counts).map((count) => [sameBatch(count.batch), count])).values(),
  ].map((count) => {
    const bySum = sums.get(sameBatch(count.batch));
    return { ...count, ...(bySum === undefined || bySum === count.packs ? {} : { bySum }) };
  });

/** By batch: what the sum said before the count that was made last, where that was on this day. */
async function sumsBefore(atHand: AtHand, { on, unit }: SessionList): Promise<ReadonlyMap<string, number>> {
  const { used } = await whoHadWhat(atHand, unit);
  return new Map(
    (await atHand.notes.all('batch')).flatMap((record): [string, number][] => {
      const key = sameBatch(receivedAs(record)?.batch ?? '');
      const { counted } = onHand(record, unit, used.get(key) ?? []);
      return counted?.on === on ? [[key, counted.saidThen]] : [];
    }),
  );
}

function wordsOf(
  { opened, openings, closed, accepted }: SessionDay,
  nameOf: (staff: string) => string,
  sums: ReadonlyMap<string, number>,
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
            kit: `${opened.body.kit.complete ? 'whole' : 'not whole'}, in date until ${shortDate(day(opened.body.kit.expiresOn))}, looked at by ${nameOf(opened.body.kit.checkedBy)}`,
            kitCheckedBy: opened.body.kit.checkedBy,
            kitComplete: opened.body.kit.complete,
            kitExpiresOn: opened.body.kit.expiresOn,
            chairs: opened.body.chairs,
            ...firstOpening(openings, opened, nameOf),
            counts: newestCounts(openings, sums),
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
