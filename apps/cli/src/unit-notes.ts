/** The sessions of a unit and the people of its register, read from the notes for planning. */
import {
  type SessionList,
  type SubjectRecord,
  isPlainDate,
  patientSubject,
  plainDate,
  protocolInForceOn,
  readIn,
  readInThese,
  recordOf,
  sessionOf,
  shortDate,
  unitOfPatient,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { answeredNo, misused } from './ending.ts';
import { readPerson } from './read-person.ts';
import { type UnitContext, allUnits } from './units.ts';

async function allSessions(reader: StoreReader): Promise<SessionList[]> {
  const sessions: SessionList[] = [];
  await reader.everyLedger('session', (of, entries) => {
    const session = sessionOf(recordOf(of, entries));
    if (session !== undefined) sessions.push(session);
  });
  return sessions;
}

/** The unit that is meant: the only one, or the one that is named. */
export async function unitNamed(reader: StoreReader, id: string | undefined): Promise<UnitContext> {
  const units = await allUnits(reader);
  const named = id === undefined ? [...units.values()] : [units.get(id)].filter((one) => one !== undefined);
  const [only, ...others] = named;
  const known = [...units.keys()].join(', ');
  if (only === undefined)
    throw misused(id === undefined ? 'No unit is described.' : `There is no unit "${id}" (${known}).`);
  if (others.length > 0) throw misused(`There are several units: choose with --unit (${known}).`);
  return only;
}

/** A session by its id, or by its date where the unit has one that day. */
export async function sessionNamed(
  reader: StoreReader,
  said: string,
  unit: string | undefined,
): Promise<{ readonly session: SessionList; readonly at: UnitContext; readonly listed: readonly SubjectRecord[] }> {
  const sessions = (await allSessions(reader)).filter((one) => unit === undefined || one.unit === unit);
  const found = sessions.filter(({ id, on }) => id === said || (isPlainDate(said) && plainDate(on) === said));
  const [session, ...others] = found;
  if (session === undefined) throw answeredNo(`There is no session "${said}": give its id, or its date as 2026-11-26.`);
  if (others.length > 0)
    throw misused(`${said} has several sessions: choose by id (${found.map(({ id }) => id).join(', ')}).`);
  const at = await unitNamed(reader, session.unit);
  const listed: SubjectRecord[] = [];
  for (const patient of session.taken.values()) {
    const of = patientSubject(patient);
    listed.push((await readPerson(reader, of, await reader.ledger(of))).record);
  }
  return { session, at, listed };
}

export const sessionsOfUnit = async (reader: StoreReader, unit: string): Promise<SessionList[]> =>
  (await allSessions(reader)).filter((session) => session.unit === unit);

/** Everyone of a unit, those of two notes read together once. */
export async function recordsOfUnit(reader: StoreReader, unit: string): Promise<SubjectRecord[]> {
  const records: SubjectRecord[] = [];
  const together: SubjectRecord[] = [];
  await reader.everyLedger('patient', (of, entries) => {
    const record = recordOf(of, entries);
    if (readInThese(record).length > 0) together.push(record);
    else if (readIn(record) === undefined && unitOfPatient(record) === unit) records.push(record);
  });
  for (const { subject: of } of together) {
    const { record } = await readPerson(reader, of, await reader.ledger(of));
    if (unitOfPatient(record) === unit) records.push(record);
  }
  return records;
}

export function protocolOn({ unit, context }: UnitContext, on: SessionList['on']) {
  const protocol = protocolInForceOn(context.protocols, on);
  if (protocol === undefined)
    throw answeredNo(`No protocol is in force at ${unit.name} on ${shortDate(on)}: nothing can be said.`);
  return protocol;
}
