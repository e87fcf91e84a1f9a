/** What has begun by now is a fact: its times are fixed, and nothing else may begin before now. */
import type { Day, Tick } from '../day/day.ts';
import { ARRIVES, CHECK, IN_WATCH_PLACE, LEAVES, PREPARATION, type Problem, stride } from '../search/problem.ts';

/**
 * Ties the begun steps of a problem to their times in `rows` and everything else to `now` or later. A step has begun if its
 * time is past and the person could be here by then: who is late has begun nothing. Returns the visits of which something
 * has begun. They may stay as long as they must, because nobody can be sent away from a running infusion.
 */
export function tieBegun(day: Day, problem: Problem, rows: Int16Array, now: Tick): number[] {
  const begun: number[] = [];
  for (let visit = 0; visit < problem.visits; visit += 1) {
    const row = visit * stride;
    const isHere =
      rows[row + LEAVES]! >= 0 && rows[row + ARRIVES]! < now && rows[row + ARRIVES]! >= problem.earliest[visit]!;
    for (let cell = row; cell < row + problem.stepCount[visit]!; cell += 1) {
      const hasBegun = isHere && rows[cell]! < now;
      problem.stepFrom[cell] = hasBegun ? rows[cell]! : now;
      if (hasBegun) problem.stepTo[cell] = rows[cell]!;
    }
    problem.preparationFrom[visit] = now;
    problem.checkFrom[visit] = now;
    if (!isHere) {
      // Who is brought has one arrival; who comes alone comes from now on.
      if (problem.byTransport[visit] === 0) problem.earliest[visit] = Math.max(problem.earliest[visit]!, now);
      else if (problem.earliest[visit]! < now) problem.begun[visit] = 1;
      continue;
    }
    begun.push(visit);
    tieHere(day, problem, rows, visit, now);
  }
  return begun;
}

function tieHere(day: Day, problem: Problem, rows: Int16Array, visit: number, now: Tick): void {
  const row = visit * stride;
  problem.begun[visit] = 1;
  problem.mayWait[visit] = 1;
  problem.latest[visit] = day.ticks;
  const isPast = (cell: number): boolean => rows[cell]! >= 0 && rows[cell]! < now;
  if (problem.doseBefore[visit]! >= 0 && isPast(row + PREPARATION)) {
    problem.preparationFrom[visit] = rows[row + PREPARATION]!;
    problem.preparationTo[visit] = rows[row + PREPARATION]!;
    // A dose that stands too long is told by the referee; it does not undo itself.
    problem.keepsTicks[visit] = day.ticks;
    if (isPast(row + CHECK)) {
      problem.checkFrom[visit] = rows[row + CHECK]!;
      problem.checkTo[visit] = rows[row + CHECK]!;
    }
  }
  const chair = problem.chairFrom[visit]!;
  if (chair >= 0 && isPast(row + chair)) problem.inChair[visit] = 1;
  const watch = problem.watch[visit]!;
  if (watch >= 0 && isPast(row + watch)) problem.watchedIn[visit] = rows[row + IN_WATCH_PLACE]!;
}
