/**
 * A session of the notes as a day to plan: who is on its list, with the unit's minutes and the protocol's running and watch
 * times. When, never whether: nobody's readiness is decided here.
 */
import {
  type Protocol,
  type SessionList,
  type SubjectRecord,
  type Unit,
  latest,
  shortDate,
} from '@twelvemonth/clinical';
import type { UnitDayWritten } from '../day/unit-format.ts';
import { minuteOf } from '../day/format-problem.ts';
import { namesOf, orderedFor, patientOf } from './people.ts';
import { gridMinutes, visitMinutesOf, writtenStaff } from './planning-settings.ts';

export type DayFromSession =
  | {
      readonly ok: true;
      readonly day: UnitDayWritten;
      /** The time each has been told, as a plan of arrivals; off the grid it is the grid's time before. */
      readonly told: readonly { readonly name: string; readonly patient: string; readonly arrives: string }[];
      /** The unit has not written its own numbers; those used are starting values. */
      readonly hasUsualSettings: boolean;
    }
  | { readonly ok: false; readonly says: string };

/** Said by whoever brings them, in the words of their needs. */
const isBrought = (record: SubjectRecord): boolean =>
  latest(record, 'contact')?.body.needs?.some((need) => /transport/i.test(need)) ?? false;

const timeOf = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** Counted from opening, as the day's grid is. */
const onGridBefore = (time: string, opensAt: string): string => {
  const opens = minuteOf(opensAt);
  return timeOf(opens + Math.max(0, Math.floor((minuteOf(time) - opens) / gridMinutes)) * gridMinutes);
};

export function dayFromSession(
  session: SessionList,
  {
    unit,
    protocol,
    listed,
  }: { readonly unit: Unit; readonly protocol: Protocol; readonly listed: readonly SubjectRecord[] },
): DayFromSession {
  const where = `${unit.name}, ${shortDate(session.on)}`;
  if (session.cancelled !== undefined) return { ok: false, says: `${where}: this session is cancelled.` };
  if (listed.length === 0) return { ok: false, says: `${where}: nobody is on the list, there is nothing to plan.` };
  const { watchFirst } = visitMinutesOf(protocol);
  const names = namesOf(listed);
  const people = listed.map((record) => {
    const patient = patientOf(record);
    const place = [...session.taken].find(([, whose]) => whose === patient)?.[0] ?? 1;
    const arrives = onGridBefore(session.arriveAt[place - 1] ?? session.opensAt, session.opensAt);
    return { record, patient, name: names.get(patient) ?? patient, arrives };
  });
  return {
    ok: true,
    hasUsualSettings: unit.planning === undefined,
    told: people.map(({ name, patient, arrives }) => ({ name, patient, arrives })),
    day: {
      id: where,
      opens: session.opensAt,
      closes: session.closesAt,
      gridMinutes,
      ...writtenStaff(unit, watchFirst),
      visits: people.map(({ record, name, arrives }) => {
        const { kind, protocol: ordered } = orderedFor(record, protocol, session.on);
        const lasts = visitMinutesOf(ordered);
        return {
          name,
          kind,
          ...(kind === 'injection'
            ? {}
            : {
                infusionMinutes: lasts.infusion,
                watchMinutes: kind === 'first infusion' ? lasts.watchFirst : lasts.watchLater,
              }),
          ...(isBrought(record) ? { brought: true, notBefore: arrives } : {}),
        };
      }),
    },
  };
}
