/** The units in the notes with what decisions there need: calendar and protocols, as known now or at an earlier moment. */
import {
  type DecisionContext,
  type Instant,
  type Unit,
  protocolsInForce,
  recordOf,
  subject,
  subjectId,
  unitOf,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';

export type UnitContext = { readonly unit: Unit; readonly context: DecisionContext };

/** Undefined where nobody had described the unit by then. */
export async function unitContext(
  reader: StoreReader,
  id: string,
  knownAt?: Instant,
): Promise<UnitContext | undefined> {
  const asOf = knownAt === undefined ? {} : { knownAt };
  const [unitSubject, protocolSubject] = [subject('unit', id), subject('protocol', id)];
  const unit = unitOf(recordOf(unitSubject, await reader.ledger(unitSubject), asOf));
  if (unit === undefined) return undefined;
  const protocols = protocolsInForce(recordOf(protocolSubject, await reader.ledger(protocolSubject), asOf));
  return { unit, context: { protocols, calendar: unit.calendar } };
}

export async function allUnits(reader: StoreReader): Promise<ReadonlyMap<string, UnitContext>> {
  const units = new Map<string, UnitContext>();
  for (const of of await reader.subjects('unit')) {
    const found = await unitContext(reader, subjectId(of));
    if (found !== undefined) units.set(subjectId(of), found);
  }
  return units;
}
