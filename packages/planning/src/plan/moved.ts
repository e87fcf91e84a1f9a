/** A visit moved by hand: all its times by so many ticks, the rest of the plan as it is. Whether that is allowed the referee says. */
import type { Day } from '../day/day.ts';
import type { Plan } from './plan.ts';

/** The plan as it is where the visit would leave the grid of the day. */
export function movedBy(day: Day, plan: Plan, visit: number, ticks: number): Plan {
  const times = plan[visit];
  if (times === null || times === undefined) return plan;
  const shift = (tick: number): number => tick + ticks;
  const shifted = {
    ...times,
    arrives: shift(times.arrives),
    starts: times.starts.map(shift),
    preparation: times.preparation === null ? null : shift(times.preparation),
    secondCheck: times.secondCheck === null ? null : shift(times.secondCheck),
  };
  const last = Math.max(...shifted.starts.map((start, step) => start + (day.visits[visit]?.steps[step]?.ticks ?? 0)));
  return shifted.arrives < 0 || last > day.ticks ? plan : plan.with(visit, shifted);
}
