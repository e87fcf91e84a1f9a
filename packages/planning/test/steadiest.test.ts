// Of near-equal plans the one that ends on time most often, found by trying all of them out on the same days.
import { describe, expect, it } from 'vitest';
import {
  type Day,
  type Plan,
  broken,
  compareObjectives,
  objectiveOf,
  planDay,
  rehearse,
  steadiestOf,
  usualChances,
} from '../src/index.ts';
import { sharedDay } from './oracle/days.ts';

const { day: long } = sharedDay('A16-1');
const plansOf = (day: Day): Plan[] =>
  [1, 2, 3, 4, 5, 6].map((seed) => planDay(day, { seed, limit: { iterations: 1_000 } }).plan);
const options = { seed: 7, days: 400 };
const near = { waitTicks: 2, finishTicks: 2 };

/** A unit that closes half an hour after the best plan's last leaving: chance decides whether it is enough. */
const tight: Day = { ...long, closes: objectiveOf(long, plansOf(long)[0]!).finish + 6 };

describe('the steadiest of near-equal plans', () => {
  const plans = plansOf(tight);
  const found = steadiestOf(tight, plans, near, usualChances, options)!;

  it('ends on time at least as often as each of them, on the same days', () => {
    const shares = found.tried.map(({ plan }) => rehearse(tight, plan, usualChances, options).onTime);
    expect(found.tried.length).toBeGreaterThan(1);
    expect(found.chosen.onTime).toBe(Math.max(...shares));
    expect(new Set(shares).size).toBeGreaterThan(1);
  });

  it('is no worse than the best by more than was allowed, and breaks no rule', () => {
    const [best, chosen] = [found.best.objective, found.chosen.objective];
    expect(plans.every((plan) => compareObjectives(best, objectiveOf(tight, plan)) <= 0)).toBe(true);
    expect(chosen.unseen).toBe(best.unseen);
    expect(chosen.overtime).toBeLessThanOrEqual(best.overtime);
    expect(chosen.wait).toBeLessThanOrEqual(best.wait + near.waitTicks);
    expect(chosen.finish).toBeLessThanOrEqual(best.finish + near.finishTicks);
    expect(broken(tight, found.chosen.plan)).toEqual([]);
  });

  it('without any room is the best plan, or one exactly as good', () => {
    const none = steadiestOf(tight, plans, { waitTicks: 0, finishTicks: 0 }, usualChances, options)!;
    expect(compareObjectives(none.chosen.objective, none.best.objective)).toBe(0);
  });

  it('of one plan is that plan, of none nothing; the same twice counts once', () => {
    const [one] = plans;
    expect(steadiestOf(tight, [], near, usualChances, options)).toBeUndefined();
    expect(steadiestOf(tight, [one!, one!], near, usualChances, options)?.tried).toHaveLength(1);
  });

  it('where all end on time on every day, is the one whose late days end soonest', () => {
    const roomy = { ...long, closes: long.ticks };
    const { tried, chosen } = steadiestOf(roomy, plansOf(roomy), near, usualChances, { seed: 1, days: 20 })!;
    expect(tried.map(({ onTime }) => onTime)).toEqual(tried.map(() => 1));
    expect(chosen.ninthDecile).toBe(Math.min(...tried.map(({ ninthDecile }) => ninthDecile)));
  });
});
