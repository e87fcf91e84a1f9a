/** An order by chance that keeps "before" and "after", the tasks with the longest way to the end preferred. */
import type { Draw } from '../random.ts';
import type { Layout } from './layout.ts';

/** How many of the tasks that could come next are drawn; the one with the longest way to the end is taken. */
const drawn = 3;

export function anyOrder({ tasks, forward, backward, tail }: Layout, draw: Draw): Int16Array {
  const open = Int32Array.from({ length: tasks }, (_, task) => forward.first[task + 1]! - forward.first[task]!);
  const ready = [...open.keys()].filter((task) => open[task] === 0);
  const order = new Int16Array(tasks);
  for (let at = 0; at < tasks; at += 1) {
    let chosen = draw(ready.length);
    for (let round = 1; round < drawn; round += 1) {
      const other = draw(ready.length);
      if (tail[ready[other]!]! > tail[ready[chosen]!]!) chosen = other;
    }
    const task = ready[chosen]!;
    ready[chosen] = ready.at(-1)!;
    ready.pop();
    order[at] = task;
    for (let cell = backward.first[task]!; cell < backward.first[task + 1]!; cell += 1) {
      const next = backward.before[cell]!;
      open[next]! -= 1;
      if (open[next] === 0) ready.push(next);
    }
  }
  return order;
}
