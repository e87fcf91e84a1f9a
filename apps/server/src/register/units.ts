/** The units of the service as they are now: settings, protocols, and what day it is there. */
import {
  type Day,
  type DecisionContext,
  type LocalMoment,
  type Protocol,
  type ProtocolTimeline,
  type SubjectRecord,
  type Unit,
  protocolInForceOn,
  protocolsInForce,
  subjectId,
  unitOf,
} from '@twelvemonth/clinical';
import type { Clock } from '../clock.ts';
import type { Notes } from './notes.ts';

export type UnitNow = {
  readonly unit: Unit;
  readonly protocolRecord: SubjectRecord;
  readonly timeline: ProtocolTimeline;
  /** In force today. */
  readonly protocol: Protocol | undefined;
  /** Undefined until a protocol is in force. */
  readonly context: DecisionContext | undefined;
  readonly today: Day;
  readonly moment: LocalMoment;
};

/** Where nobody has described a unit yet, dates are told in this zone. */
export const zoneBeforeAnyUnit = 'Europe/London';

export type Units = {
  readonly all: () => Promise<readonly UnitNow[]>;
  readonly named: (unit: string) => Promise<UnitNow | undefined>;
};

type Context = {
  readonly unitRecord: SubjectRecord;
  readonly protocolRecord: SubjectRecord;
  readonly unit: Unit;
  readonly timeline: ProtocolTimeline;
  readonly context: DecisionContext;
};

export function openUnits(notes: Notes, clock: Clock): Units {
  /** The same context object as long as settings and protocol are the same: what was worked out with it stays good. */
  const known = new Map<string, Context>();

  async function named(id: string): Promise<UnitNow | undefined> {
    const unitRecord = await notes.of('unit', id);
    const protocolRecord = await notes.of('protocol', id);
    let found = known.get(id);
    if (found?.unitRecord !== unitRecord || found.protocolRecord !== protocolRecord) {
      const unit = unitOf(unitRecord);
      if (unit === undefined) return undefined;
      const timeline = protocolsInForce(protocolRecord);
      found = { unitRecord, protocolRecord, unit, timeline, context: { protocols: timeline, calendar: unit.calendar } };
      known.set(id, found);
    }
    const { today, moment } = clock.local(found.unit.zone);
    const protocol = protocolInForceOn(found.timeline, today);
    return {
      unit: found.unit,
      protocolRecord,
      timeline: found.timeline,
      protocol,
      context: protocol === undefined ? undefined : found.context,
      today,
      moment,
    };
  }

  return {
    named,
    all: async () => {
      const units: UnitNow[] = [];
      for (const { subject } of (await notes.all('unit')).toSorted(byFirstEntry)) {
        const unit = await named(subjectId(subject));
        if (unit !== undefined) units.push(unit);
      }
      return units;
    },
  };
}

/** The unit described first is the first one everywhere. */
const byFirstEntry = (a: SubjectRecord, b: SubjectRecord): number => {
  const [left, right] = [a.all[0]?.recordedAt ?? '', b.all[0]?.recordedAt ?? ''];
  return left < right ? -1 : left > right ? 1 : 0;
};
