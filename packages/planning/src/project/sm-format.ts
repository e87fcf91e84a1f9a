/** Projects as text: the `.sm` format of the project scheduling library PSPLIB (Kolisch, Sprecher 1997), one mode a task. */
import type { Project } from './project.ts';

export type ProjectRead =
  | { readonly ok: true; readonly project: Project }
  | { readonly ok: false; readonly problems: readonly string[] };

const numbersIn = (line: string): number[] => (line.match(/-?\d+/g) ?? []).map(Number);

export function readProject(text: string): ProjectRead {
  const lines = text.split(/\r?\n/);
  const after = (heading: string, skip: number): number => {
    const at = lines.findIndex((line) => line.startsWith(heading));
    return at < 0 ? -1 : at + skip;
  };
  const count = numbersIn(lines.find((line) => line.startsWith('jobs')) ?? '')[0];
  const relations = after('PRECEDENCE RELATIONS', 2);
  const requests = after('REQUESTS/DURATIONS', 3);
  const available = after('RESOURCEAVAILABILITIES', 2);
  const problems: string[] = [];
  if (count === undefined) problems.push('there is no line "jobs"');
  if (relations < 0) problems.push('there is no part "PRECEDENCE RELATIONS"');
  if (requests < 0) problems.push('there is no part "REQUESTS/DURATIONS"');
  if (available < 0) problems.push('there is no part "RESOURCEAVAILABILITIES"');
  if (count === undefined || problems.length > 0) return { ok: false, problems };
  const capacity = numbersIn(lines[available] ?? '');
  const tasks = Array.from({ length: count }, (_, task) => {
    const [, modes, , ...successors] = numbersIn(lines[relations + task] ?? '');
    const [, , length = 0, ...needs] = numbersIn(lines[requests + task] ?? '');
    const own = successors.map((successor) => successor - 1);
    if (modes !== 1) problems.push(`task ${task + 1} does not have one mode`);
    if (needs.length !== capacity.length) problems.push(`task ${task + 1} does not say its needs of every resource`);
    if (needs.some((need, resource) => need > (capacity[resource] ?? 0)))
      problems.push(`task ${task + 1} needs more than there is`);
    if (own.some((successor) => successor <= task || successor >= count))
      problems.push(`task ${task + 1} has a successor that is not later in the list`);
    return { length, needs, successors: own };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, project: { tasks, capacity } };
}
