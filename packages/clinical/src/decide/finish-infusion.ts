/** The medicine has run, or was stopped for good: the end of the infusion, and the dose it makes. */
import { MILLISECONDS_A_MINUTE, minutesAndSeconds } from '../kinds-texts/words.ts';
import type { Draft } from '../ledger/entry.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { type RunningTime, runningTime } from '../visit/running-time.ts';
import type { Infusion, Visit } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { atTheChair, notRunning, stepOf } from './at-the-drip.ts';
import { fieldWrong } from './check-fields.ts';
import { WHOLE_DOSE_MILLILITERS, checkRunningTime } from './check-running-time.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideFinish(act: ActNamed<'finish infusion'>, written: Surroundings): Decided {
  const now = asItHappened(act.happenedAt, written);
  const { visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (visit === undefined || infusion === undefined || infusion.finished !== undefined) {
    return decided([...refusals, notRunning('Nothing is running.', 'only a running infusion is finished')], () => []);
  }
  if (act.milliliters > WHOLE_DOSE_MILLILITERS) {
    refusals.push(
      refusal('more-than-the-dose', `The bag holds ${WHOLE_DOSE_MILLILITERS} mL.`, { field: 'milliliters' }),
    );
  }
  refusals.push(...checkHappenedAt(act.happenedAt, [infusion.started], written));
  const ran = withoutPauses(runningTime(infusion.marks, now.clock), act);
  refusals.push(...checkEnd(act, ran, infusion, now));
  return decided(refusals, () => ended(act, visit, ran, now));
}

/** Pauses written on paper have no marks of their own: their minutes do not count towards the least running time either. */
function withoutPauses(ran: RunningTime, { pausedMinutes = 0 }: ActNamed<'finish infusion'>): RunningTime {
  if (ran.measured || ran.byTypedTimes === undefined) return ran;
  return { ...ran, byTypedTimes: Math.max(0, ran.byTypedTimes - pausedMinutes * MILLISECONDS_A_MINUTE) };
}

function checkEnd(
  act: ActNamed<'finish infusion'>,
  ran: RunningTime,
  infusion: Infusion,
  now: Surroundings,
): readonly Refusal[] {
  const refusals: Refusal[] = [];
  const whole = act.milliliters >= WHOLE_DOSE_MILLILITERS;
  if (!whole && act.stoppedBecause === undefined) {
    refusals.push(
      fieldWrong('stoppedBecause', 'not the whole dose, and no reason', 'why it was stopped before the end'),
    );
  }
  if (act.pausedMinutes !== undefined && act.happenedAt === undefined) {
    refusals.push(
      fieldWrong('pausedMinutes', 'pauses of now are timed by the clock', 'only what stands on paper is typed'),
    );
  }
  if (!ran.measured) {
    if (act.timedBy === undefined) {
      refusals.push(
        refusal('cannot-be-measured', `${ran.says[0]?.toUpperCase() ?? ''}${ran.says.slice(1)}.`, {
          field: 'timedBy',
          remedy: 'say who timed it and by which clock',
        }),
      );
    }
    return [...refusals, ...checkTypedTimes(act, ran.byTypedTimes, now)];
  }
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (whole && protocol === undefined) {
    refusals.push(
      refusal('cannot-say', 'Without a protocol in force the shortest running time is not known.', {
        remedy: 'adopt a protocol',
      }),
    );
  }
  if (!whole && protocol !== undefined) refusals.push(...checkPartRan(act, ran.milliseconds, now));
  if (whole && protocol !== undefined) {
    const left = protocol.number.runningMinutesLeast * MILLISECONDS_A_MINUTE - ran.milliseconds;
    if (left > 0) {
      const paused = infusion.paused === undefined ? '' : ' (it is paused)';
      refusals.push(
        refusal(
          'too-early-to-finish',
          `It has run ${minutesAndSeconds(ran.milliseconds)}${paused}; ${minutesAndSeconds(left + 999)} are still to run.`,
          {
            field: 'milliliters',
            remedy: 'wait, or say how much was given and why it was stopped',
          },
        ),
      );
    }
  }
  return refusals;
}

/** A part of the bag may not run faster than the whole: what was lost in one rush and then stopped is told, and looked at. */
const checkPartRan = (
  { milliliters, incident }: ActNamed<'finish infusion'>,
  milliseconds: number,
  now: Surroundings,
): readonly Refusal[] =>
  checkRunningTime(
    {
      milliliters,
      minutes: milliseconds / MILLISECONDS_A_MINUTE,
      says: minutesAndSeconds(milliseconds),
      incident,
      by: 'the clock',
    },
    'incident',
    now,
  );

/** By typed times it ran faster than the protocol lets it: asked about, and written only as an incident. */
function checkTypedTimes(
  { milliliters, incident }: ActNamed<'finish infusion'>,
  byTypedTimes: number | undefined,
  now: Surroundings,
): readonly Refusal[] {
  if (byTypedTimes === undefined) return [];
  return checkRunningTime(
    {
      milliliters,
      minutes: byTypedTimes / MILLISECONDS_A_MINUTE,
      says: minutesAndSeconds(byTypedTimes),
      incident,
      by: 'the times given',
    },
    'incident',
    now,
  );
}

const SECONDS = 1000;

/** The end of the infusion, and the dose it makes. Nothing given is no dose. */
function ended(act: ActNamed<'finish infusion'>, visit: Visit, ran: RunningTime, now: Surroundings): readonly Draft[] {
  const seconds = ran.measured ? Math.floor(ran.milliseconds / SECONDS) : undefined;
  const milliseconds = ran.measured ? ran.milliseconds : ran.byTypedTimes;
  const finish = stepOf(
    act,
    'infusion-finished',
    {
      milliliters: act.milliliters,
      ...(seconds === undefined ? {} : { ranSeconds: seconds }),
      ...(act.stoppedBecause === undefined ? {} : { stoppedBecause: act.stoppedBecause }),
      ...(act.timedBy === undefined ? {} : { timedBy: act.timedBy }),
      ...(act.pausedMinutes === undefined ? {} : { pausedMinutes: act.pausedMinutes }),
      clock: now.clock,
    },
    now,
  );
  if (act.milliliters === 0) return [finish];
  const dose = stepOf(
    act,
    'dose',
    {
      medicine: 'zoledronic acid 5 mg',
      setting: 'this service',
      ...(visit.preparation === undefined ? {} : { batch: visit.preparation.body.batch }),
      ...(act.milliliters < WHOLE_DOSE_MILLILITERS ? { partMilliliters: act.milliliters } : {}),
      ...(milliseconds === undefined ? {} : { minutes: Math.floor(milliseconds / MILLISECONDS_A_MINUTE) }),
      ...(act.incident === undefined ? {} : { incident: act.incident }),
    },
    now,
  );
  return [finish, dose];
}
