/**
 * A day answered: a plan that the referee lets pass, with how good it can be at best; or, when not everyone can be seen, what
 * is impossible and the least that would make it possible. Never a plan that leaves somebody out without saying so.
 */
import type { Day } from '../day/day.ts';
import type { Objective } from '../plan/objective.ts';
import type { Plan } from '../plan/plan.ts';
import { type DayBound, boundFor, seeAll } from '../proof/day-bound.ts';
import { broken } from '../referee/referee.ts';
import type { Limit } from '../search/limit.ts';
import { planDay } from '../search/search.ts';
import { type Reason, plainReasons } from './impossible.ts';
import { type Remedy, remediesFor } from './remedies.ts';

export type AnswerLimits = {
  readonly search: Limit;
  /** Contradictions a proof may meet. */
  readonly contradictions: number;
  /** The search behind each remedy tried. */
  readonly remedy: Limit;
};

export type DayAnswer =
  | {
      readonly kind: 'planned';
      readonly plan: Plan;
      readonly objective: Objective;
      readonly bound: DayBound['atLeast'];
      readonly isProven: boolean;
      readonly seed: number;
    }
  | {
      readonly kind: 'impossible';
      /** False: no plan was found that sees everyone, but there might be one. */
      readonly isProven: boolean;
      readonly reasons: readonly Reason[];
      /** One kind of change each; any one of them is enough. */
      readonly remedies: readonly Remedy[];
      readonly seed: number;
    };

export function answerDay(day: Day, seed: number, limits: AnswerLimits): DayAnswer {
  const reasons = plainReasons(day);
  const found = planDay(day, { seed, limit: reasons.length > 0 ? limits.remedy : limits.search });
  let { plan } = found;
  let isProvenImpossible = reasons.length > 0;
  if (found.objective.unseen > 0 && !isProvenImpossible) {
    const all = seeAll(day, limits.contradictions);
    if (all.answer === 'possible') ({ plan } = planDay(day, { seed, limit: limits.search, from: all.plan }));
    isProvenImpossible = all.answer === 'impossible';
  }
  const unseen = plan.flatMap((times, index) => (times === null ? [index] : []));
  if (unseen.length > 0) {
    const names = unseen.map((index) => day.visits[index]?.name ?? '').join(', ');
    const says = isProvenImpossible
      ? `Not everyone can be seen. The best plan has no place for ${names}.`
      : `No plan was found that sees everyone; the best has no place for ${names}.`;
    return {
      kind: 'impossible',
      isProven: isProvenImpossible,
      reasons: reasons.length > 0 ? reasons : [{ visit: null, says }],
      remedies: remediesFor(day, unseen, seed, limits.remedy),
      seed,
    };
  }
  const bound = boundFor(day, plan, { contradictions: limits.contradictions });
  const said = broken(day, bound.plan);
  if (said.length > 0) throw new Error(`the planner broke a rule: ${said[0]?.says}`);
  return {
    kind: 'planned',
    plan: bound.plan,
    objective: bound.objective,
    bound: bound.atLeast,
    isProven: bound.isProven,
    seed,
  };
}
