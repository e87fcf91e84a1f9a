/** What a life of the demo can look up: the notes as they stand, the protocol in force, the lists. Nothing here writes. */
import {
  type Act,
  type Day,
  type DecisionContext,
  type Formulary,
  type Ledgers,
  type Protocol,
  type SessionList,
  type Subject,
  type SubjectRecord,
  formularyOf,
  isSubjectOf,
  judgedBy,
  protocolInForceOn,
  protocolsInForce,
  recordOfLedgers,
  sessionOf,
  subject,
  subjectId,
  unitOf,
  unitOfPatient,
} from '@twelvemonth/clinical';
import { type Minutes } from './clock.ts';
import { type UnitId } from './staff.ts';

export type World = {
  readonly seed: number;
  /** First day of the demo's story, the day it stands on, and the minute up to which that day has come. */
  readonly begins: Day;
  readonly today: Day;
  readonly until: Minutes;
  readonly ledgers: Ledgers;
  /** Chairs in use, by unit. */
  readonly chairs: Record<UnitId, Set<number>>;
};

const contexts = new WeakMap<SubjectRecord, { unit: SubjectRecord; context: DecisionContext | undefined }>();

export const recordIn = (world: World, of: Subject): SubjectRecord =>
  recordOfLedgers(of, (one) => world.ledgers.get(one));
export const sessionIn = (world: World, session: string): SessionList | undefined =>
  sessionOf(recordIn(world, subject('session', session)));

/** The context a unit decides in, or none before a protocol is adopted. */
export function contextOf(world: World, unit: string): DecisionContext | undefined {
  const protocol = recordIn(world, subject('protocol', unit));
  const unitRecord = recordIn(world, subject('unit', unit));
  const known = contexts.get(protocol);
  if (known !== undefined && known.unit === unitRecord) return known.context;
  const described = unitOf(unitRecord);
  const protocols = protocolsInForce(protocol);
  const context =
    described === undefined || protocols.length === 0 ? undefined : { protocols, calendar: described.calendar };
  contexts.set(protocol, { unit: unitRecord, context });
  return context;
}

/** The packs a unit keeps. */
export const formularyIn = (world: World, unit: string): Formulary =>
  formularyOf(recordIn(world, subject('unit', unit)));

export const protocolIn = (world: World, unit: string, on: Day): Protocol | undefined => {
  const context = contextOf(world, unit);
  return context === undefined ? undefined : protocolInForceOn(context.protocols, on);
};

/** The unit an act is judged by: the one named, the session's, else the patient's own. */
export function unitOfAct(world: World, act: Act): string | undefined {
  const by = judgedBy(act);
  if (by === undefined) return undefined;
  if (isSubjectOf('unit', by)) return subjectId(by);
  return isSubjectOf('session', by) ? sessionIn(world, subjectId(by))?.unit : unitOfPatient(recordIn(world, by));
}
