/**
 * The day as the planner sees it: visits, staff and places over a grid of ticks. A plain value without opinions; whether a
 * plan keeps to it is the referee's business, how to find one the search's.
 */

/** Whole ticks since the day begins. A tick is the smallest step of the day's grid, usually 5 minutes. */
export type Tick = number;

/**
 * How much of a nurse a step takes. `whole`: one nurse and nobody else meanwhile. `shared`: one of several people a nurse
 * keeps an eye on (a running infusion). `none`: no nurse.
 */
export type NurseNeed = 'whole' | 'shared' | 'none';

export type Step = {
  /** What a sentence calls it: "cannula and flush". */
  readonly name: string;
  readonly ticks: number;
  readonly nurse: NurseNeed;
  /** Begins the moment the step before it ends; otherwise the person may wait before it. */
  readonly atOnce: boolean;
};

/** What has to happen to the medicine before a step may begin. Steps are named by their place in the chain, from 0. */
export type Dose = {
  readonly before: number;
  readonly preparationTicks: number;
  readonly secondCheckTicks: number;
  /** The dose may be finished at most this long before it is used. Prepared only once the person is here. */
  readonly keepsTicks: number;
};

export type Visit = {
  /** What sentences call the person. */
  readonly name: string;
  /** In their order; the visit is over when the last has ended. */
  readonly steps: readonly [Step, ...Step[]];
  /** The chair is held from the beginning of one step to the end of another. */
  readonly chair: { readonly from: number; readonly to: number } | null;
  /** A step spent in a watch place, or in the chair if none is free. Follows the last step of the chair. */
  readonly watch: number | null;
  readonly dose: Dose | null;
  /** Cannot be here before. */
  readonly earliest: Tick;
  /** Must have left by. */
  readonly latest: Tick;
  /** `transport` brings the person at `earliest`, whenever the first step begins. `free`: arrives when the first step begins. */
  readonly arrival: 'free' | 'transport';
  /** False: no waiting between arrival and leaving. */
  readonly mayWait: boolean;
};

/** How many there are in each tick; breaks, closed rooms and staff who come and go are already taken out. */
export type Capacity = readonly number[];

export type Day = {
  readonly id: string;
  /** Minutes after midnight at which tick 0 begins. */
  readonly startsAtMinute: number;
  readonly minutesPerTick: number;
  /** Length of the grid; nothing can happen after it. */
  readonly ticks: number;
  /** The unit's end of the day: every tick worked later is overtime. */
  readonly closes: Tick;
  readonly nurses: Capacity;
  /** How many `shared` steps one nurse can keep an eye on at once. */
  readonly watchedPerNurse: number;
  readonly chairs: Capacity;
  readonly watchPlaces: Capacity;
  readonly preparers: Capacity;
  /** Second checkers; never the people counted among the preparers. */
  readonly checkers: Capacity;
  readonly visits: readonly Visit[];
  /** Of a hundred days tried out so many are to end by closing; undefined: nothing is asked. */
  readonly onTimePercent?: number | undefined;
};

/** Minutes of care in the visit, without any waiting, in ticks. */
export const ticksOfCare = (visit: Visit): number => visit.steps.reduce((sum, step) => sum + step.ticks, 0);
