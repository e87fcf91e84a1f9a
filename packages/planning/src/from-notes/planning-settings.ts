/** What planning needs of a unit: its own settings, or starting values that are said to be. */
import type { PlanningSettings, Protocol, Unit } from '@twelvemonth/clinical';
import { type StepTicks, infusionChain, injectionChain } from '../day/chains.ts';
import type { Step } from '../day/day.ts';
import type { VisitKind } from '../fill/request.ts';

/** Every time of a day planned from the notes is a multiple of this. */
export const gridMinutes = 5;

/** Starting values: common practice, no source. A unit sets its own. */
export const usualPlanning: PlanningSettings = {
  nurses: 2,
  watchedPerNurse: 4,
  watchPlaces: 2,
  preparers: 1,
  secondCheckers: 1,
  minutes: {
    observations: 10,
    checklist: 10,
    cannula: 10,
    preparation: 10,
    secondCheck: 5,
    keeps: 30,
    removal: 5,
    leave: 5,
    injection: 5,
  },
  mostFirstVisits: 6,
  reservedPercent: 10,
  noticeDays: 3,
  onTimePercent: 90,
};

export const planningOf = ({ planning }: Unit): PlanningSettings => planning ?? usualPlanning;

/** Minutes as the grid holds them; never fewer than asked. */
const onGrid = (minutes: number): number => Math.ceil(minutes / gridMinutes) * gridMinutes;

export type VisitMinutes = { readonly infusion: number; readonly watchFirst: number; readonly watchLater: number };

/** How long an infusion runs and is watched after, by the protocol: never shorter than its shortest. */
export const visitMinutesOf = ({ number }: Protocol): VisitMinutes => ({
  infusion: onGrid(Math.max(number.runningMinutesUsual, number.runningMinutesLeast)),
  watchFirst: onGrid(number.observeFirstMinutes),
  watchLater: onGrid(number.observeLaterMinutes),
});

export const visitKindNames = ['first infusion', 'later infusion', 'injection'] as const;
export type VisitKindName = (typeof visitKindNames)[number];

function stepTicksOf({ minutes }: PlanningSettings, watch: number): StepTicks {
  const ticks = (length: number): number => length / gridMinutes;
  return {
    observations: ticks(minutes.observations),
    checklist: ticks(minutes.checklist),
    cannula: ticks(minutes.cannula),
    preparation: ticks(minutes.preparation),
    secondCheck: ticks(minutes.secondCheck),
    keeps: ticks(minutes.keeps),
    removal: ticks(minutes.removal),
    watch: ticks(watch),
    leave: ticks(minutes.leave),
    injection: ticks(minutes.injection),
  };
}

/** What a visit of each kind takes of a session: the minutes of its own chain of steps. */
export function visitKindsOf(
  settings: PlanningSettings,
  { infusion, watchFirst, watchLater }: VisitMinutes,
): VisitKind[] {
  const ticks = stepTicksOf(settings, watchFirst);
  const chains = {
    'first infusion': infusionChain(ticks, infusion / gridMinutes, watchFirst / gridMinutes),
    'later infusion': infusionChain(ticks, infusion / gridMinutes, watchLater / gridMinutes),
    injection: injectionChain(ticks),
  };
  return visitKindNames.map((name) => {
    const { steps, chair } = chains[name];
    const minutesOf = (some: readonly Step[]): number => some.reduce((sum, step) => sum + step.ticks, 0) * gridMinutes;
    return {
      name,
      nurseMinutes: minutesOf(steps.filter(({ nurse }) => nurse === 'whole')),
      chairMinutes: chair === null ? 0 : minutesOf(steps.slice(chair.from, chair.to + 1)),
      isFirst: name === 'first infusion',
    };
  });
}

/** Staff, places and steps of a unit as a written day has them. */
export function writtenStaff(unit: Unit, watchMinutes: number) {
  const settings = planningOf(unit);
  const { nurses, watchedPerNurse, watchPlaces, preparers, secondCheckers, minutes } = settings;
  return {
    nurses,
    watchedPerNurse,
    watchPlaces,
    preparers,
    secondCheckers,
    chairs: unit.chairs,
    minutes: { ...minutes, watch: watchMinutes },
    // Settings written before this could be asked do not say it.
    onTimePercent: settings.onTimePercent ?? usualPlanning.onTimePercent,
  };
}
