/**
 * Moves a few tasks that stand near each other in an order to any place between what comes before and what comes after them.
 * Near each other, because a schedule is bettered in one stretch of it at a time.
 */
import type { Draw } from '../../random.ts';
import type { Layout } from '../layout.ts';

const mostShifted = 14;
const stretch = 10;

export function shiftSome({ tasks, follows }: Layout, draw: Draw, order: Int16Array): void {
  const from = draw(Math.max(1, tasks - stretch));
  for (let left = 1 + draw(mostShifted); left > 0; left -= 1) {
    const at = Math.min(tasks - 1, from + draw(stretch));
    const task = order[at]!;
    let low = at;
    let high = at;
    while (low > 0 && follows[order[low - 1]! * tasks + task] === 0) low -= 1;
    while (high + 1 < tasks && follows[task * tasks + order[high + 1]!] === 0) high += 1;
    const to = low + draw(high - low + 1);
    if (to < at) order.copyWithin(to + 1, to, at);
    else order.copyWithin(at, at + 1, to + 1);
    order[to] = task;
  }
}
