// Chairs as numbers: against counting by hand what is held when.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chairNumbers } from '../src/plan/chair-numbers.ts';
import { seenIn } from '../src/plan/plan.ts';
import { broken } from '../src/referee/referee.ts';
import { planAtOnce } from '../src/search/search.ts';
import { anyDay } from './oracle/days.ts';

describe('chairs as numbers', () => {
  it('nobody shares a chair, and a plan that keeps the rules needs none above those there are', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const { plan } = planAtOnce(day);
        const numbers = chairNumbers(day, plan);
        const held = seenIn(day, plan).flatMap(({ visit, index, times }) =>
          visit.chair === null
            ? []
            : [
                {
                  chair: numbers[index],
                  from: times.starts[visit.chair.from]!,
                  // Until it is certain to be free: whoever is watched in it leaves it last.
                  until: times.starts[visit.chair.to]! + visit.steps[visit.chair.to]!.ticks,
                },
              ],
        );
        const shared = held.filter((one, index) =>
          held
            .slice(index + 1)
            .some((other) => one.chair === other.chair && one.from < other.until && other.from < one.until),
        );
        const isKept = broken(day, plan).length === 0;
        const beyond = numbers.filter((chair) => isKept && (chair ?? 0) > Math.max(0, ...day.chairs));
        expect({ shared, beyond }).toEqual({ shared: [], beyond: [] });
      }),
      { numRuns: 50 },
    );
  });
});
