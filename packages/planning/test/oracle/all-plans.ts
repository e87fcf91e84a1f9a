/** The best plan of a tiny day by trying all of them. Written for plainness, not speed. */
import { type Day, type Objective, type VisitTimes, compareObjectives, objectiveOf, broken } from '../../src/index.ts';

/** Every way to give one visit its times, waiting at most `mostWait`. */
function waysOf(day: Day, index: number, mostWait: number): VisitTimes[] {
  const visit = day.visits[index];
  if (visit === undefined) return [];
  const alone: Day = { ...day, visits: [visit] };
  const ways: VisitTimes[] = [];
  const range = (from: number, until: number): number[] =>
    Array.from({ length: Math.max(0, until - from + 1) }, (_, at) => from + at);
  const chains = (step: number, at: number, starts: readonly number[], waited: number): number[][] =>
    step === visit.steps.length
      ? [[...starts]]
      : range(at, at + mostWait - waited).flatMap((start) =>
          chains(step + 1, start + (visit.steps[step]?.ticks ?? 0), [...starts, start], waited + start - at),
        );
  for (const arrives of visit.arrival === 'transport' ? [visit.earliest] : range(visit.earliest, day.ticks)) {
    for (const starts of chains(0, arrives, [], 0)) {
      const needed = starts[visit.dose?.before ?? 0] ?? 0;
      const doses =
        visit.dose === null
          ? [[null, null] as const]
          : range(arrives, needed).flatMap((prepared) =>
              range(prepared + 1, needed - 1).map((checked) => [prepared, checked] as const),
            );
      for (const [preparation, secondCheck] of doses) {
        for (const watchedIn of visit.watch === null ? [null] : (['watch place', 'chair'] as const)) {
          const times = { arrives, starts, preparation, secondCheck, watchedIn };
          if (broken(alone, [times]).length === 0) ways.push(times);
        }
      }
    }
  }
  return ways;
}

/** The best objective that sees everyone, null if nobody can see everyone waiting at most `mostWait` each. */
export function bestByTryingAll(day: Day, mostWait: number): Objective | null {
  const ways = day.visits.map((_, index) => waysOf(day, index, mostWait));
  let best: Objective | null = null;
  const place = (index: number, times: readonly VisitTimes[]): void => {
    const partly: Day = { ...day, visits: day.visits.slice(0, index) };
    if (index > 0 && broken(partly, times).length > 0) return;
    const objective = objectiveOf(partly, times);
    if (best !== null && compareObjectives(objective, best) >= 0) return;
    if (index === day.visits.length) {
      best = objective;
      return;
    }
    for (const way of ways[index] ?? []) place(index + 1, [...times, way]);
  };
  place(0, []);
  return best;
}
