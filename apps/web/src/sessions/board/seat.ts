/** Which visits lie on each other on the board: in one chair at one time. */
import { type Day, type Drawn, type Visit, type VisitTimes, leavesAt } from '@twelvemonth/planning';

export type Seat = { readonly sits: number; readonly rises: number };

/** From sitting down until rising, the watch counted where it is kept in the chair; the whole stay for who needs no chair. */
export function seatOf(visit: Visit, times: VisitTimes): Seat {
  if (visit.chair === null) return { sits: times.arrives, rises: leavesAt(visit, times) };
  const last = visit.watch !== null && times.watchedIn === 'chair' ? visit.watch : visit.chair.to;
  return {
    sits: times.starts[visit.chair.from] ?? 0,
    rises: (times.starts[last] ?? 0) + (visit.steps[last]?.ticks ?? 0),
  };
}

export function liesOnAnother({ visits }: Day, { plan, chairs }: Drawn, visit: number): boolean {
  const seat = (index: number): Seat | undefined => {
    const times = plan[index];
    return chairs[index] === undefined || times === null || times === undefined
      ? undefined
      : seatOf(visits[index]!, times);
  };
  const own = seat(visit);
  if (own === undefined) return false;
  return visits.some((_, index) => {
    const other = index === visit || chairs[index] !== chairs[visit] ? undefined : seat(index);
    return other !== undefined && other.sits < own.rises && own.sits < other.rises;
  });
}
