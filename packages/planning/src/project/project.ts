/** A project: tasks of fixed length that need shared resources, some only after others. The plain problem behind any plan. */

export type Task = {
  readonly length: number;
  /** Units of each resource while it runs. */
  readonly needs: readonly number[];
  /** Tasks, by index, that begin only when this one has ended. */
  readonly successors: readonly number[];
};

export type Project = {
  readonly tasks: readonly Task[];
  /** Units there are of each resource, all the time. */
  readonly capacity: readonly number[];
};

/** When each task begins. */
export type Starts = ArrayLike<number>;

export const lengthOf = ({ tasks }: Project, starts: Starts): number =>
  tasks.reduce((latest, { length }, task) => Math.max(latest, (starts[task] ?? 0) + length), 0);

/** What a schedule breaks, in sentences; shares nothing with the search. */
export function brokenIn({ tasks, capacity }: Project, starts: Starts): string[] {
  const says: string[] = [];
  tasks.forEach(({ length, successors }, task) => {
    const end = (starts[task] ?? 0) + length;
    for (const successor of successors)
      if ((starts[successor] ?? 0) < end) says.push(`task ${successor} begins before task ${task} has ended`);
  });
  const moments = new Set(tasks.map((_, task) => starts[task] ?? 0));
  for (const moment of moments)
    capacity.forEach((units, resource) => {
      const used = tasks.reduce((sum, { length, needs }, task) => {
        const start = starts[task] ?? 0;
        return sum + (start <= moment && moment < start + length ? (needs[resource] ?? 0) : 0);
      }, 0);
      if (used > units) says.push(`at ${moment}, ${used} of ${units} units of resource ${resource} are needed`);
    });
  return says;
}
