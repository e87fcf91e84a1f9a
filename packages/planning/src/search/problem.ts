/**
 * The day laid out in flat arrays, for the search alone. Nothing is decided here: one row a visit, `stride` cells a row
 * where a visit has several of something.
 */
import { type Day, type Visit, ticksOfCare } from '../day/day.ts';
import { type Plan, type VisitTimes, leavesAt } from '../plan/plan.ts';

/** Cells of a row of times: one a step, then these. */
export const stride = 16;
export const PREPARATION = 11;
export const CHECK = 12;
/** 1 watched in a watch place, 0 in the chair. */
export const IN_WATCH_PLACE = 13;
export const ARRIVES = 14;
/** The tick of leaving; -1 while the visit has no place in the plan. */
export const LEAVES = 15;
const mostSteps = PREPARATION;

export type Problem = {
  readonly visits: number;
  readonly ticks: number;
  readonly closes: number;
  /** Units of nurse a `whole` step takes; a `shared` step takes one. */
  readonly wholeUnits: number;
  readonly stepCount: Int16Array;
  readonly stepTicks: Int16Array;
  readonly stepUnits: Int16Array;
  readonly stepAtOnce: Uint8Array;
  /** The ticks in which a step may begin: the whole day, or one tick for a step that has begun. */
  readonly stepFrom: Int16Array;
  readonly stepTo: Int16Array;
  /** Index of a step, or -1. */
  readonly chairFrom: Int16Array;
  readonly chairTo: Int16Array;
  readonly watch: Int16Array;
  readonly doseBefore: Int16Array;
  readonly preparationTicks: Int16Array;
  readonly checkTicks: Int16Array;
  readonly keepsTicks: Int16Array;
  readonly preparationFrom: Int16Array;
  readonly preparationTo: Int16Array;
  readonly checkFrom: Int16Array;
  readonly checkTo: Int16Array;
  readonly earliest: Int16Array;
  readonly latest: Int16Array;
  readonly byTransport: Uint8Array;
  readonly mayWait: Uint8Array;
  readonly care: Int16Array;
  /** 1 where some step has begun: those steps are facts, whatever they use. */
  readonly begun: Uint8Array;
  /** 1 where the chair is already sat in. */
  readonly inChair: Uint8Array;
  /** Where a watch that has begun is spent, as IN_WATCH_PLACE says it; -1 otherwise. */
  readonly watchedIn: Int8Array;
  readonly nurseUnits: Int16Array;
  readonly chairs: Int16Array;
  readonly watchPlaces: Int16Array;
  readonly preparers: Int16Array;
  readonly checkers: Int16Array;
};

const unitsOf = (day: Day, need: 'whole' | 'shared' | 'none'): number =>
  need === 'whole' ? day.watchedPerNurse : need === 'shared' ? 1 : 0;

const column = (visits: readonly Visit[], of: (visit: Visit) => number): Int16Array => Int16Array.from(visits, of);

function stepCells(visits: readonly Visit[], of: (visit: Visit, step: number) => number): Int16Array {
  const cells = new Int16Array(visits.length * stride);
  visits.forEach((visit, row) => visit.steps.forEach((_, step) => (cells[row * stride + step] = of(visit, step))));
  return cells;
}

export function problemOf(day: Day): Problem {
  const { visits, ticks } = day;
  const long = visits.find((visit) => visit.steps.length > mostSteps);
  if (long !== undefined) throw new RangeError(`${long.name} has more than ${mostSteps} steps`);
  const capacity = (of: (tick: number) => number): Int16Array => Int16Array.from({ length: ticks }, (_, t) => of(t));
  const stepTicks = stepCells(visits, (visit, step) => visit.steps[step]?.ticks ?? 0);
  return {
    visits: visits.length,
    ticks,
    closes: day.closes,
    wholeUnits: day.watchedPerNurse,
    stepCount: column(visits, (visit) => visit.steps.length),
    stepTicks,
    stepUnits: stepCells(visits, (visit, step) => unitsOf(day, visit.steps[step]?.nurse ?? 'none')),
    stepAtOnce: Uint8Array.from(stepCells(visits, (visit, step) => (visit.steps[step]?.atOnce === true ? 1 : 0))),
    stepFrom: new Int16Array(visits.length * stride),
    stepTo: new Int16Array(visits.length * stride).fill(ticks),
    chairFrom: column(visits, (visit) => visit.chair?.from ?? -1),
    chairTo: column(visits, (visit) => visit.chair?.to ?? -1),
    watch: column(visits, (visit) => visit.watch ?? -1),
    doseBefore: column(visits, (visit) => visit.dose?.before ?? -1),
    preparationTicks: column(visits, (visit) => visit.dose?.preparationTicks ?? 0),
    checkTicks: column(visits, (visit) => visit.dose?.secondCheckTicks ?? 0),
    keepsTicks: column(visits, (visit) => visit.dose?.keepsTicks ?? 0),
    preparationFrom: new Int16Array(visits.length),
    preparationTo: new Int16Array(visits.length).fill(ticks),
    checkFrom: new Int16Array(visits.length),
    checkTo: new Int16Array(visits.length).fill(ticks),
    earliest: column(visits, (visit) => visit.earliest),
    latest: column(visits, (visit) => Math.min(visit.latest, ticks)),
    byTransport: Uint8Array.from(visits, (visit) => (visit.arrival === 'transport' ? 1 : 0)),
    mayWait: Uint8Array.from(visits, (visit) => (visit.mayWait ? 1 : 0)),
    care: column(visits, ticksOfCare),
    begun: new Uint8Array(visits.length),
    inChair: new Uint8Array(visits.length),
    watchedIn: new Int8Array(visits.length).fill(-1),
    nurseUnits: capacity((t) => (day.nurses[t] ?? 0) * day.watchedPerNurse),
    chairs: capacity((t) => day.chairs[t] ?? 0),
    watchPlaces: capacity((t) => day.watchPlaces[t] ?? 0),
    preparers: capacity((t) => day.preparers[t] ?? 0),
    checkers: capacity((t) => day.checkers[t] ?? 0),
  };
}

function timesIn(visit: Visit, times: Int16Array, row: number): VisitTimes | null {
  const cell = (index: number): number => times[row * stride + index]!;
  if (cell(LEAVES) < 0) return null;
  return {
    arrives: cell(ARRIVES),
    starts: visit.steps.map((_, step) => cell(step)),
    preparation: visit.dose === null ? null : cell(PREPARATION),
    secondCheck: visit.dose === null ? null : cell(CHECK),
    watchedIn: visit.watch === null ? null : cell(IN_WATCH_PLACE) === 1 ? 'watch place' : 'chair',
  };
}

export const planFrom = (day: Day, times: Int16Array): Plan =>
  day.visits.map((visit, row) => timesIn(visit, times, row));

/** A plan as rows; visits without times, or of another shape than the day's, have no place. */
export function rowsFrom(day: Day, plan: Plan): Int16Array {
  const rows = new Int16Array(day.visits.length * stride).fill(-1);
  day.visits.forEach((visit, index) => {
    const times = plan[index];
    if (times === null || times === undefined || times.starts.length !== visit.steps.length) return;
    const row = index * stride;
    rows.set(times.starts, row);
    rows[row + PREPARATION] = times.preparation ?? -1;
    rows[row + CHECK] = times.secondCheck ?? -1;
    rows[row + IN_WATCH_PLACE] = times.watchedIn === 'watch place' ? 1 : 0;
    rows[row + ARRIVES] = times.arrives;
    rows[row + LEAVES] = leavesAt(visit, times);
  });
  return rows;
}
