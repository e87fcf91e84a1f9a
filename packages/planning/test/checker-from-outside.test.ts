// The independent checker that came with the shared days, by another hand, where that folder lies beside the product: it has to
// pass every plan of ours, and to agree with our referee about plans that somebody spoilt.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  type Day,
  type Plan,
  boundFor,
  broken,
  drawnFrom,
  improveDrawn,
  moveInDrawing,
  objectiveOf,
  planDay,
  readDay,
} from '../src/index.ts';
import { peersFolder } from '../../../bench/shared-peers.ts';
import { sharedDay, sharedTimes } from './oracle/days.ts';

type Check = (raw: unknown, times: unknown) => { readonly wait: number; readonly makespan: number };
type Instance = { readonly id: string; readonly day: Day; readonly raw: unknown };

const checker = peersFolder === undefined ? undefined : new URL('day-lib.mjs', peersFolder);
const isThere = checker !== undefined && existsSync(checker);
const check = isThere ? ((await import(checker.href)) as { check: Check }).check : undefined;

/** Our copies, and the days beside the product of which we have none. */
function instances(): Instance[] {
  const own = readdirSync(new URL('../../../bench/days/', import.meta.url)).map((name) => name.replace('.json', ''));
  const others = peersFolder === undefined ? undefined : new URL('day-instances/', peersFolder);
  const more =
    others === undefined || !existsSync(others) ? [] : readdirSync(others).filter((name) => name.endsWith('.json'));
  return [
    ...own.map((id) => ({ id, ...sharedDay(id) })),
    ...more
      .filter((name) => !own.includes(name.replace('.json', '')))
      .flatMap((name): Instance[] => {
        const text = readFileSync(new URL(name, others), 'utf8');
        const read = readDay(text);
        return read.ok ? [{ id: name, day: read.day, raw: JSON.parse(text) }] : [];
      }),
  ];
}

const isPassed = (raw: unknown, plan: Plan): boolean => {
  try {
    check?.(raw, sharedTimes(plan));
    return true;
  } catch {
    return false;
  }
};

if (check === undefined)
  test('OPTIONAL, NOT RUN HERE: plans before the checker from outside (the shared days do not lie beside the product)', () =>
    expect(checker === undefined || !existsSync(checker)).toBe(true));
else
  describe('the checker from outside', () => {
    it.each(instances())('passes the plan of $id and counts the same waiting and end', ({ day, raw }) => {
      const { plan, objective } = planDay(day, { seed: 1, limit: { iterations: 400 } });
      expect(broken(day, plan)).toEqual([]);
      expect(check?.(raw, sharedTimes(plan))).toEqual({ wait: objective.wait, makespan: objective.finish });
    });

    it('passes plans that a proof handed back and plans improved from a drawing', () => {
      for (const id of ['A08-1', 'B12-2', 'A16-1']) {
        const { day, raw } = sharedDay(id);
        const { plan } = planDay(day, { seed: 2, limit: { iterations: 300 } });
        const bound = boundFor(day, plan, { contradictions: 2_000 });
        expect(isPassed(raw, bound.plan)).toBe(true);
        const drawn = moveInDrawing(day, drawnFrom(day, plan), 1, 3, 1);
        const improved = improveDrawn(day, drawn, { seed: 3, limit: { iterations: 300 } });
        if (improved.kind !== 'improved') throw new Error(improved.kind);
        expect(check?.(raw, sharedTimes(improved.drawn.plan))).toEqual({
          wait: objectiveOf(day, improved.drawn.plan).wait,
          makespan: improved.objective.finish,
        });
      }
    });

    it('agrees with our referee about plans moved by hand, allowed or not', () => {
      const days = ['A08-1', 'A12-1', 'B16-1', 'B24-1'].map(sharedDay);
      const plans = days.map(({ day }) => planDay(day, { seed: 1, limit: { iterations: 500 } }).plan);
      const seen = new Set<boolean>();
      fc.assert(
        fc.property(
          fc.nat({ max: 3 }),
          fc.nat(),
          fc.integer({ min: -4, max: 4 }),
          fc.nat(),
          fc.boolean(),
          (which, visit, by, step, one) => {
            const { day, raw } = days[which]!;
            const plan = plans[which]!;
            const at = visit % day.visits.length;
            const times = plan[at]!;
            const { steps } = day.visits[at]!;
            const own = step % steps.length;
            // The shared format has no time for the watch: it begins the moment the cannula is out.
            const goesWith = (index: number): boolean =>
              index === own || (steps[index]?.name === 'watch' && index === own + 1);
            const isStep = one && steps[own]?.name !== 'watch';
            const spoilt = isStep
              ? plan.with(at, {
                  ...times,
                  starts: times.starts.map((start, index) => start + (goesWith(index) ? by : 0)),
                })
              : moveInDrawing(day, drawnFrom(day, plan), at, by, 0).plan;
            const ours = broken(day, spoilt).length === 0;
            seen.add(ours);
            expect([ours, isPassed(raw, spoilt)]).toEqual([ours, ours]);
          },
        ),
        { seed: 71, numRuns: 400 },
      );
      expect(seen.size).toBe(2);
    });
  });
