/** What has really happened of a visit by now, read from the entries of its day, in the words of the planner's steps. */
import {
  type ClockReading,
  type Day,
  type SubjectRecord,
  type Visit,
  runningTime,
  visitOn,
} from '@twelvemonth/clinical';
import { stepNames } from '../day/chains.ts';
import { minuteOf } from '../day/format-problem.ts';
import type { SoFar } from '../during/so-far.ts';

type Moment = { readonly at: string | undefined; readonly recordedAt: string };

export type NowThere = {
  readonly on: Day;
  readonly zone: string;
  /** HH:MM on the unit's wall. */
  readonly time: string;
  readonly clock: ClockReading;
};

const localTime = ({ at, recordedAt }: Moment, zone: string): string =>
  Temporal.Instant.from(at ?? recordedAt)
    .toZonedDateTimeISO(zone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' });

const millisecondsPerMinute = 60_000;
const minutesPerHour = 60;
const twoDigits = (value: number): string => String(value).padStart(2, '0');
const later = (time: string, minutes: number): string => {
  const at = minuteOf(time) + Math.ceil(minutes);
  return `${twoDigits(Math.floor(at / minutesPerHour))}:${twoDigits(at % minutesPerHour)}`;
};

function doneSteps(visit: Visit): string[] {
  const isDone: Readonly<Record<string, boolean>> = {
    [stepNames.observations]: visit.observationsBefore !== undefined,
    [stepNames.checklist]: visit.checklist !== undefined && visit.decision?.body.decision === 'go',
    [stepNames.cannula]: visit.flush !== undefined,
    [stepNames.infusion]: visit.infusion?.finished !== undefined,
    [stepNames.removal]: visit.removed !== undefined,
    [stepNames.injection]: visit.injected,
    [stepNames.watch]: visit.observed !== undefined,
  };
  return Object.keys(isDone).filter((step) => isDone[step]);
}

/** An infusion that runs, with when it ends at best: the minutes prescribed that have not run yet, counted from now. */
function infusionNow({ infusion }: Visit, { time, zone, clock }: NowThere): SoFar['runs'] {
  if (infusion === undefined || infusion.finished !== undefined) return undefined;
  const since = localTime(infusion.started, zone);
  const ran = runningTime(infusion.marks, clock);
  const planned = infusion.started.body.plannedMinutes;
  const until = ran.measured
    ? later(time, Math.max(0, planned - ran.milliseconds / millisecondsPerMinute))
    : later(since, planned);
  return { step: stepNames.infusion, since, until, paused: infusion.paused !== undefined };
}

export function visitSoFar(name: string, record: SubjectRecord, now: NowThere): SoFar {
  const visit = visitOn(record, now.on);
  if (visit === undefined) return { name, state: 'expected', done: [] };
  const at = (moment: Moment): string => localTime(moment, now.zone);
  const { arrived, preparation, check, removed, observed } = visit;
  const infusion = infusionNow(visit, now);
  const isWatched = infusion === undefined && removed !== undefined && observed === undefined;
  return {
    name,
    state: visit.over ? 'gone' : visit.putOff ? 'put off' : 'here',
    arrived: at(arrived),
    ...(arrived.body.chair === undefined ? {} : { chair: arrived.body.chair }),
    done: doneSteps(visit),
    ...(infusion === undefined ? {} : { runs: infusion }),
    ...(isWatched ? { runs: { step: stepNames.watch, since: at(removed), paused: false } } : {}),
    ...(preparation === undefined ? {} : { prepared: at(preparation) }),
    ...(check?.body.agrees === true ? { checked: at(check) } : {}),
  };
}
