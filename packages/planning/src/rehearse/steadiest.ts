/**
 * Which of several near-equal plans ends on time most often. Each is played with the same delays, the same slow steps, the same
 * people who do not come, so that what differs is the plan. A worse plan is never chosen for it: only one as good to within a
 * few minutes.
 */
import type { Day } from '../day/day.ts';
import { type Objective, compareObjectives, objectiveOf } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import type { Chances } from './chances.ts';
import { type RehearseOptions, rehearse } from './rehearse.ts';

/** So much more may be waited, all together, and so much later the last may leave, in ticks. Nobody more unseen, no more overtime. */
export type NearEqual = { readonly waitTicks: number; readonly finishTicks: number };

export type TriedPlan = {
  readonly plan: Plan;
  readonly objective: Objective;
  /** Share of the days that end by the time the unit closes. */
  readonly onTime: number;
  /** Minute by which nine in ten days have ended: decides between plans that end on time equally often. */
  readonly ninthDecile: number;
};

export type Steadiest = {
  readonly chosen: TriedPlan;
  /** The best by its four numbers alone. */
  readonly best: TriedPlan;
  /** Near-equal plans that differ, the chosen one among them. */
  readonly tried: readonly TriedPlan[];
};

const isNear = (one: Objective, best: Objective, { waitTicks, finishTicks }: NearEqual): boolean =>
  one.unseen === best.unseen &&
  one.overtime <= best.overtime &&
  one.wait <= best.wait + waitTicks &&
  one.finish <= best.finish + finishTicks;

/** Plans without those that are the same as one before. */
function different(plans: readonly Plan[]): readonly Plan[] {
  const seen = new Set<string>();
  return plans.filter((plan) => {
    const key = JSON.stringify(plan);
    return !seen.has(key) && seen.add(key).size > 0;
  });
}

/** Undefined when there is no plan at all. */
export function steadiestOf(
  day: Day,
  plans: readonly Plan[],
  near: NearEqual,
  chances: Chances,
  options: RehearseOptions,
): Steadiest | undefined {
  const byObjective = different(plans)
    .map((plan) => ({ plan, objective: objectiveOf(day, plan) }))
    .toSorted((a, b) => compareObjectives(a.objective, b.objective));
  const [first] = byObjective;
  if (first === undefined) return undefined;
  const tried = byObjective
    .filter(({ objective }) => isNear(objective, first.objective, near))
    .map((one): TriedPlan => {
      const { onTime, finish } = rehearse(day, one.plan, chances, options);
      return { ...one, onTime, ninthDecile: finish.ninthDecile };
    });
  // The order is that of the four numbers: of those that end on time equally often, the better plan stays.
  const [chosen] = tried.toSorted((a, b) => b.onTime - a.onTime || a.ninthDecile - b.ninthDecile);
  return { chosen: chosen!, best: tried[0]!, tried };
}
