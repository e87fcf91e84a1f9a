/** Two orders crossed at two places: the child has the beginning and the end of one, and the middle in the other's order. */
import type { Draw } from '../../random.ts';

/** `has` is scratch, one cell a task. An order that keeps "before" and "after" stays one that does. */
export function cross(draw: Draw, mother: Int16Array, father: Int16Array, child: Int16Array, has: Uint8Array): void {
  const tasks = mother.length;
  const one = draw(tasks);
  const other = draw(tasks);
  const from = Math.min(one, other);
  const to = Math.max(one, other);
  has.fill(0);
  let at = 0;
  for (; at < from; at += 1) {
    child[at] = mother[at]!;
    has[child[at]!] = 1;
  }
  for (let index = 0; at < to; index += 1) {
    const task = father[index]!;
    if (has[task] === 1) continue;
    child[at] = task;
    has[task] = 1;
    at += 1;
  }
  for (let index = 0; at < tasks; index += 1) {
    const task = mother[index]!;
    if (has[task] === 1) continue;
    child[at] = task;
    at += 1;
  }
}
