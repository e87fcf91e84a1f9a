/**
 * No tick uses more than there is. What surely covers a tick (it must have begun by then and cannot have ended) is added up;
 * whatever no longer fits beside it has to begin later or end sooner. Each conclusion names the few that fill the tick, as in
 * lazy clause generation for the cumulative constraint (Schutt, Feydy, Stuckey, Wallace 2011; from memory).
 */
import { type Rule, fails, follows } from './rule.ts';
import { type Literal, type Trail, atLeast, atMost, opposite } from './trail.ts';

export type Use = {
  /** Begins at this variable plus an offset. */
  readonly begin: number;
  readonly beginOffset: number;
  /** Ends at this variable plus an offset; the same variable for what has a fixed length. */
  readonly end: number;
  readonly endOffset: number;
  readonly units: number;
  /** Uses nothing unless this holds; the variable it speaks of, -1 if it always holds. */
  readonly present: Literal;
  readonly presentVariable: number;
};

export function capacityRule(capacity: ArrayLike<number>, uses: readonly Use[]): Rule {
  const ticks = capacity.length;
  const used = new Int32Array(ticks);
  const count = uses.length;
  const begin = Int32Array.from(uses, (use) => use.begin);
  const beginOffset = Int32Array.from(uses, (use) => use.beginOffset);
  const end = Int32Array.from(uses, (use) => use.end);
  const endOffset = Int32Array.from(uses, (use) => use.endOffset);
  const units = Int32Array.from(uses, (use) => use.units);
  const present = Int32Array.from(uses, (use) => use.present);
  const because: Literal[] = [];
  const free = Int32Array.from(capacity);

  const beginsBy = (trail: Trail, use: number, tick: number): Literal =>
    atMost(trail, begin[use]!, tick - beginOffset[use]!);
  const endsAfter = (trail: Trail, use: number, tick: number): Literal =>
    atLeast(trail, end[use]!, tick + 1 - endOffset[use]!);

  /** Collects enough of what covers the tick that `more` units do not fit any longer. Long-known reasons first. */
  function explain(trail: Trail, tick: number, more: number, except: number): void {
    because.length = 0;
    let sum = more;
    for (let use = 0; use < count && sum <= free[tick]!; use += 1) {
      if (use === except || trail.value[present[use]!] !== 1) continue;
      if (trail.most[begin[use]!]! + beginOffset[use]! > tick) continue;
      if (trail.least[end[use]!]! + endOffset[use]! <= tick) continue;
      sum += units[use]!;
      because.push(beginsBy(trail, use, tick), endsAfter(trail, use, tick), present[use]!);
    }
  }

  function addUp(trail: Trail): boolean {
    used.fill(0);
    for (let use = 0; use < count; use += 1) {
      if (trail.value[present[use]!] !== 1) continue;
      const to = trail.least[end[use]!]! + endOffset[use]!;
      for (let tick = trail.most[begin[use]!]! + beginOffset[use]!; tick < to; tick += 1) used[tick]! += units[use]!;
    }
    for (let tick = 0; tick < ticks; tick += 1) {
      if (used[tick]! <= free[tick]!) continue;
      explain(trail, tick, 0, -1);
      return fails(trail, because);
    }
    return true;
  }

  const isTied = (trail: Trail, variable: number): boolean => trail.least[variable] === trail.most[variable];

  /** False on a contradiction. */
  function fitUse(trail: Trail, use: number): boolean {
    const here = present[use]!;
    if (trail.value[here] === -1) return true;
    if (trail.value[here] === 0) return mayBePresent(trail, use);
    if (isTied(trail, begin[use]!) && isTied(trail, end[use]!)) return true;
    const more = units[use]!;
    const first = trail.least[begin[use]!]! + beginOffset[use]!;
    let until = Math.min(trail.least[end[use]!]! + endOffset[use]!, trail.most[begin[use]!]! + beginOffset[use]!);
    for (let tick = first; tick < until; tick += 1) {
      if (used[tick]! + more <= free[tick]!) continue;
      explain(trail, tick, more, use);
      because.push(endsAfter(trail, use, tick), here);
      if (!follows(trail, opposite(beginsBy(trail, use, tick)), because)) return false;
      until = Math.min(trail.least[end[use]!]! + endOffset[use]!, trail.most[begin[use]!]! + beginOffset[use]!);
    }
    const last = trail.most[end[use]!]! + endOffset[use]! - 1;
    let from = Math.max(trail.most[begin[use]!]! + beginOffset[use]!, trail.least[end[use]!]! + endOffset[use]!);
    for (let tick = last; tick >= from; tick -= 1) {
      if (used[tick]! + more <= free[tick]!) continue;
      explain(trail, tick, more, use);
      because.push(beginsBy(trail, use, tick), here);
      if (!follows(trail, opposite(endsAfter(trail, use, tick)), because)) return false;
      from = Math.max(trail.most[begin[use]!]! + beginOffset[use]!, trail.least[end[use]!]! + endOffset[use]!);
    }
    return true;
  }

  /** What is not decided to be present, and would surely cover a full tick, is not present. */
  function mayBePresent(trail: Trail, use: number): boolean {
    const to = trail.least[end[use]!]! + endOffset[use]!;
    for (let tick = trail.most[begin[use]!]! + beginOffset[use]!; tick < to; tick += 1) {
      if (used[tick]! + units[use]! <= free[tick]!) continue;
      explain(trail, tick, units[use]!, use);
      because.push(beginsBy(trail, use, tick), endsAfter(trail, use, tick));
      return follows(trail, opposite(present[use]!), because);
    }
    return true;
  }

  return {
    watches: [...new Set([...begin, ...end, ...uses.map((use) => use.presentVariable)])].filter((one) => one >= 0),
    look(trail) {
      if (!addUp(trail)) return false;
      for (let use = 0; use < count; use += 1) if (!fitUse(trail, use)) return false;
      return true;
    },
  };
}
