/** A drawn visit in words: for its bar, its line in the table, and whoever cannot see the board. */
import { type Day, type Drawn, clockAt, leavesAt } from '@twelvemonth/planning';

export type VisitWords = {
  readonly name: string;
  readonly comes: string;
  readonly leaves: string;
  readonly chair: string;
  readonly lock: string | undefined;
};

export function visitWords(day: Day, drawn: Drawn, visit: number): VisitWords | undefined {
  const own = day.visits[visit];
  const times = drawn.plan[visit];
  if (own === undefined || times === null || times === undefined) return undefined;
  const chair = drawn.chairs[visit];
  const lock = drawn.locks[visit];
  return {
    name: own.name,
    comes: clockAt(day, times.arrives),
    leaves: clockAt(day, leavesAt(own, times)),
    chair: chair === undefined ? 'no chair' : `chair ${chair}`,
    lock: lock === undefined ? undefined : `${lock} locked`,
  };
}

export const oneLine = ({ name, comes, leaves, chair, lock }: VisitWords): string =>
  [name, `${comes} to ${leaves}`, chair, ...(lock === undefined ? [] : [lock])].join(', ');
