/**
 * A visit at given times breaks as little as it can: its dose made and checked at other moments, its watch spent elsewhere. A
 * preparer who is busy in one of several possible moments is no objection to the visit.
 */
import type { Day } from '../day/day.ts';
import type { Plan, VisitTimes } from '../plan/plan.ts';
import { broken } from './referee.ts';
import type { Sentence } from './sentence.ts';

function* dosesOf(day: Day, visit: number, times: VisitTimes): Generator<VisitTimes> {
  yield times;
  const dose = day.visits[visit]?.dose;
  if (dose === null || dose === undefined) return;
  const needed = times.starts[dose.before] ?? 0;
  const latest = needed - dose.secondCheckTicks;
  for (let check = latest; check >= times.arrives + dose.preparationTicks; check -= 1) {
    const earliest = Math.max(times.arrives, needed - dose.keepsTicks - dose.preparationTicks);
    for (let preparation = check - dose.preparationTicks; preparation >= earliest; preparation -= 1)
      yield { ...times, preparation, secondCheck: check };
  }
}

function* variantsOf(day: Day, visit: number, times: VisitTimes): Generator<VisitTimes> {
  const own = day.visits[visit];
  for (const variant of dosesOf(day, visit, times)) {
    yield variant;
    if (own?.watch === null || own?.chair === null || own === undefined) continue;
    yield { ...variant, watchedIn: variant.watchedIn === 'chair' ? 'watch place' : 'chair' };
  }
}

/** The times with the fewest objections that are about this visit, and those objections. */
export function leastInTheWay(
  day: Day,
  plan: Plan,
  visit: number,
  times: VisitTimes,
): { readonly times: VisitTimes; readonly said: readonly Sentence[] } {
  let best: { readonly times: VisitTimes; readonly said: readonly Sentence[] } | undefined;
  for (const variant of variantsOf(day, visit, times)) {
    const said = broken(day, plan.with(visit, variant)).filter(({ visits }) => visits.includes(visit));
    if (best === undefined || said.length < best.said.length) best = { times: variant, said };
    if (best.said.length === 0) break;
  }
  return best ?? { times, said: [] };
}
