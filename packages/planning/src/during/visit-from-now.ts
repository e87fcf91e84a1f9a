/** A visit as it stands now: what is done is left out, what is under way is a fact, the rest is still to be planned. */
import { stepNames } from '../day/chains.ts';
import type { Day, Dose, Step, Tick, Visit } from '../day/day.ts';
import { minuteOf } from '../day/format-problem.ts';
import type { VisitTimes } from '../plan/plan.ts';
import type { SoFar } from './so-far.ts';

export type VisitNow = {
  readonly visit: Visit;
  /** Facts where something is under way; else without waiting from now, or from the time told, on. */
  readonly times: VisitTimes;
};

/** Who has been given a chair and waits in it. */
const seated: Step = { name: 'waiting in the chair', ticks: 1, nurse: 'none', atOnce: false };

const tickOf = (day: Day, time: string): number =>
  Math.floor((minuteOf(time) - day.startsAtMinute) / day.minutesPerTick);

const lengths = (steps: readonly Step[]): number => steps.reduce((sum, { ticks }) => sum + ticks, 0);

/** One after the other from a tick on. */
function startsFrom(steps: readonly Step[], at: Tick): Tick[] {
  let next = at;
  return steps.map(({ ticks }) => {
    const start = next;
    next += ticks;
    return start;
  });
}

const watchedIn = (day: Day, visit: Visit): VisitTimes['watchedIn'] =>
  visit.watch === null ? null : visit.chair === null || Math.max(0, ...day.watchPlaces) > 0 ? 'watch place' : 'chair';

/** Who is still expected, at the time told, nobody waiting; whether that fits is not asked here. */
export function expectedVisit(day: Day, visit: Visit, told: Tick, notBefore: Tick): VisitNow {
  const starts = startsFrom(visit.steps, told);
  const needed = visit.dose === null ? 0 : (starts[visit.dose.before] ?? 0);
  const check = visit.dose === null ? null : needed - visit.dose.secondCheckTicks;
  return {
    visit: { ...visit, earliest: Math.max(visit.earliest, notBefore) },
    times: {
      arrives: told,
      starts,
      preparation: visit.dose === null || check === null ? null : check - visit.dose.preparationTicks,
      secondCheck: check,
      watchedIn: watchedIn(day, visit),
    },
  };
}

/** The step under way, as long as it will be: never ended before now. */
function underWay(day: Day, step: Step, { since, until }: NonNullable<SoFar['runs']>, now: Tick, more: number) {
  const start = Math.min(tickOf(day, since), now - 1);
  const best =
    until === undefined ? start + step.ticks : Math.ceil((minuteOf(until) - day.startsAtMinute) / day.minutesPerTick);
  const end = Math.max(now, best + Math.ceil(more / day.minutesPerTick));
  return { start, step: { ...step, ticks: end - start } };
}

/** Preparation and check that are done, before now and one after the other. */
function doneDose({ preparationTicks, secondCheckTicks }: Dose, day: Day, so: SoFar, now: Tick) {
  if (so.prepared === undefined) return { preparation: now, secondCheck: now + preparationTicks };
  const isChecked = so.checked !== undefined;
  const latest = now - preparationTicks - (isChecked ? secondCheckTicks : 0);
  const preparation = Math.max(0, Math.min(tickOf(day, so.prepared) - preparationTicks + 1, latest, now - 1));
  const prepared = preparation + preparationTicks;
  if (!isChecked) return { preparation, secondCheck: Math.max(now, prepared) };
  return {
    preparation,
    secondCheck: Math.max(prepared, Math.min(tickOf(day, so.checked ?? ''), now - secondCheckTicks)),
  };
}

/** Who is here. Null when nothing is left to be done. `more`: minutes the step under way takes longer than was planned. */
export function visitFromNow(day: Day, visit: Visit, so: SoFar, now: Tick, more: number): VisitNow | null {
  const runs = so.runs === undefined ? -1 : visit.steps.findIndex(({ name }) => name === so.runs?.step);
  const last = visit.steps.findLastIndex(({ name }) => so.done.includes(name));
  const from = runs > last ? runs : last + 1;
  const [first, ...rest] = visit.steps.slice(from);
  if (first === undefined) return null;
  const running = runs === from && so.runs !== undefined ? underWay(day, first, so.runs, now, more) : undefined;
  const isWatch = first.name === stepNames.watch;
  const sits =
    visit.chair !== null && from > visit.chair.from && (from <= visit.chair.to || (isWatch && running !== undefined));
  const steps: [Step, ...Step[]] =
    running !== undefined ? [running.step, ...rest] : sits ? [seated, first, ...rest] : [first, ...rest];
  const shift = running === undefined && sits ? 1 - from : -from;
  const isDoseOpen =
    visit.dose !== null && visit.dose.before >= from && !(running !== undefined && visit.dose.before === from);
  const dose = visit.dose === null || !isDoseOpen ? null : { ...visit.dose, before: visit.dose.before + shift };
  const chair =
    visit.chair === null || (!sits && from > visit.chair.to)
      ? null
      : sits
        ? // Whoever is watched keeps the chair they had: nothing is known of another place.
          { from: 0, to: Math.max(0, visit.chair.to + shift) }
        : { from: visit.chair.from + shift, to: visit.chair.to + shift };
  const watch =
    visit.watch === null || visit.watch < from || (isWatch && running !== undefined) ? null : visit.watch + shift;
  const start = running?.start ?? (sits ? now - 1 : now);
  const done = dose === null ? { preparation: null, secondCheck: null } : doneDose(dose, day, so, now);
  const isPrepared = dose !== null && so.prepared !== undefined;
  const arrives = Math.max(0, isPrepared ? Math.min(start, done.preparation ?? start) : start);
  const next: Visit = {
    ...visit,
    steps,
    chair,
    watch,
    dose,
    // What is left of somebody who is here begins when it can: there is nothing to tell them.
    arrival: 'transport',
    earliest: arrives,
    latest: Math.max(visit.latest, Math.min(day.ticks, start + lengths(steps))),
    mayWait: true,
  };
  return {
    visit: next,
    times: { arrives, starts: startsFrom(steps, start), ...done, watchedIn: watchedIn(day, next) },
  };
}
