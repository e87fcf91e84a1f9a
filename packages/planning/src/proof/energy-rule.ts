/**
 * No stretch of the day holds more work than there are hands: whatever must lie wholly between two ticks is added up and
 * compared with all that is free between them. Sees crowding that no single tick shows.
 */
import type { Use } from './capacity-rule.ts';
import { type Rule, fails } from './rule.ts';
import { type Literal, type Trail, atLeast, atMost } from './trail.ts';

/** For uses of a fixed length that always happen. */
export function energyRule(capacity: ArrayLike<number>, uses: readonly Use[]): Rule {
  const ticks = capacity.length;
  const freeBefore = new Int32Array(ticks + 1);
  for (let tick = 0; tick < ticks; tick += 1) freeBefore[tick + 1] = freeBefore[tick]! + capacity[tick]!;
  const count = uses.length;
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  const work = Int32Array.from(uses, (use) => (use.endOffset - use.beginOffset) * use.units);
  const byEnd = Array.from({ length: count }, (_, index) => index);
  const because: Literal[] = [];

  function explain(trail: Trail, start: number, end: number): false {
    because.length = 0;
    uses.forEach((use, index) => {
      if (from[index]! < start || to[index]! > end) return;
      because.push(atLeast(trail, use.begin, start - use.beginOffset), atMost(trail, use.end, end - use.endOffset));
    });
    return fails(trail, because);
  }

  return {
    watches: [...new Set(uses.map((use) => use.begin))],
    look(trail) {
      uses.forEach((use, index) => {
        from[index] = trail.least[use.begin]! + use.beginOffset;
        to[index] = trail.most[use.end]! + use.endOffset;
      });
      // Nearly sorted already: what stands next to each other seldom changes places.
      for (let index = 1; index < count; index += 1) {
        const own = byEnd[index]!;
        let at = index - 1;
        for (; at >= 0 && to[byEnd[at]!]! > to[own]!; at -= 1) byEnd[at + 1] = byEnd[at]!;
        byEnd[at + 1] = own;
      }
      for (let first = 0; first < count; first += 1) {
        const start = from[first]!;
        let sum = 0;
        for (let index = 0; index < count; index += 1) {
          const use = byEnd[index]!;
          if (from[use]! < start) continue;
          sum += work[use]!;
          if (sum > freeBefore[to[use]!]! - freeBefore[start]!) return explain(trail, start, to[use]!);
        }
      }
      return true;
    },
  };
}
