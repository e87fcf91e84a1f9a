/** The units in the notes with what decisions there need: calendar and protocols. */
import {
  type Day,
  type DecisionContext,
  type Unit,
  protocolsInForce,
  recordOf,
  subject,
  subjectId,
  unitOf,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { type DemoTime, todayIn } from './clock.ts';

export type UnitContext = {
  readonly unit: Unit;
  readonly context: DecisionContext;
  /** The date there now; in the demo the demo's. */
  readonly today: Day;
};

/** Undefined where nobody has described the unit. */
async function unitContext(reader: StoreReader, id: string): Promise<UnitContext | undefined> {
  const [unitSubject, protocolSubject] = [subject('unit', id), subject('protocol', id)];
  const unit = unitOf(recordOf(unitSubject, await reader.ledger(unitSubject)));
  if (unit === undefined) return undefined;
  const protocols = protocolsInForce(recordOf(protocolSubject, await reader.ledger(protocolSubject)));
  return { unit, context: { protocols, calendar: unit.calendar }, today: todayIn(unit.zone, await demoTime(reader)) };
}

export async function allUnits(reader: StoreReader): Promise<ReadonlyMap<string, UnitContext>> {
  const units = new Map<string, UnitContext>();
  for (const of of await reader.subjects('unit')) {
    const found = await unitContext(reader, subjectId(of));
    if (found !== undefined) units.set(subjectId(of), found);
  }
  return units;
}

/** Undefined for a real service. */
async function demoTime(reader: StoreReader): Promise<DemoTime | undefined> {
  if ((await reader.setting('kind')) !== 'demo') return undefined;
  const ahead = await reader.setting('demo-ahead');
  if (ahead !== undefined && ahead !== '') return { aheadMilliseconds: Number(ahead) };
  const stoppedAt = await reader.setting('demo-stopped-at');
  return stoppedAt === undefined ? undefined : { stoppedAt };
}
