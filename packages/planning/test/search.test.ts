import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { broken, objectiveOf, planAtOnce, planDay } from '../src/index.ts';
import { checkDay } from './oracle/day-check.ts';
import { anyDay, sharedDay, sharedTimes } from './oracle/days.ts';

const few = { iterations: 300 };

describe('the search', () => {
  it('never breaks a rule of the referee, whatever the day; only people it could not place are told', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(), (day, seed) => {
        const { plan, objective } = planDay(day, { seed, limit: few });
        const said = broken(day, plan);
        expect(said.filter(({ rule }) => rule !== 'everyone is seen')).toEqual([]);
        expect(said).toHaveLength(objective.unseen);
        expect(objectiveOf(day, plan)).toEqual(objective);
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  it('gives the same plan from the same seed', () => {
    const { day } = sharedDay('A24-1');
    const plans = [1, 2].map(() => JSON.stringify(planDay(day, { seed: 7, limit: few })));
    expect(plans[0]).toBe(plans[1]);
    expect(JSON.stringify(planDay(day, { seed: 8, limit: few }).plan)).not.toBe(
      JSON.stringify(planDay(day, { seed: 7, limit: few }).plan),
    );
  });

  it('stops when it is told to', () => {
    const { day } = sharedDay('B16-2');
    let asked = 0;
    const stop = (): boolean => (asked += 1) > 3;
    const { iterations } = planDay(day, { seed: 1, limit: { iterations: 1_000_000, stop } });
    expect(iterations).toBeLessThan(1_000);
  });

  it('is never worse than the plan it begins with, and leaves locked visits where they are', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(), fc.array(fc.nat({ max: 13 }), { maxLength: 4 }), (day, seed, wanted) => {
        const from = planAtOnce(day);
        const locked = wanted.filter((index) => from.plan[index] !== null && from.plan[index] !== undefined);
        const after = planDay(day, { seed, limit: few, from: from.plan, locked });
        for (const index of locked) expect(after.plan[index]).toEqual(from.plan[index]);
        expect(after.objective.unseen).toBeLessThanOrEqual(from.objective.unseen);
        expect(broken(day, after.plan).filter(({ rule }) => rule !== 'everyone is seen')).toEqual([]);
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  // Source of the days and of the best values: shared day instances, found and proven by general solvers.
  it.each(['A08-1', 'A08-2', 'A12-1', 'A16-1', 'B08-2', 'B12-2', 'B16-2', 'B24-1'])(
    'reaches the stored best of %s, by the count of another checker',
    (id) => {
      const { day, raw, best } = sharedDay(id);
      const { plan } = planDay(day, { seed: 1, limit: { iterations: 12_000 } });
      expect(broken(day, plan)).toEqual([]);
      const counted = checkDay(raw, sharedTimes(plan));
      expect(counted).toEqual({ wait: best.waitMin / 5, finish: best.makespanMin / 5 });
    },
  );

  it('has a first plan of a full day that sees everyone', () => {
    for (const id of ['A48-1', 'A48-2', 'B48-1', 'B48-2']) {
      const { day, raw } = sharedDay(id);
      expect(checkDay(raw, sharedTimes(planAtOnce(day).plan))).not.toBeNull();
    }
  });
});
