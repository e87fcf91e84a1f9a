/** Any few visits, wherever they are in the day. */
import type { Move } from './move.ts';

export const anyVisits: Move = ({ draw, movable }, size, chosen) => {
  let count = 0;
  for (let left = Math.min(size, movable.length); left > 0; left -= 1) {
    // The chosen are kept at the end of the list, so that none is drawn twice.
    const last = movable.length - 1 - count;
    const at = draw(last + 1);
    const visit = movable[at]!;
    movable[at] = movable[last]!;
    movable[last] = visit;
    chosen[count] = visit;
    count += 1;
  }
  return count;
};
