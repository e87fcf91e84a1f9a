/**
 * The question "is there a schedule of at most this length?" put to the machinery that proves plans of a day: one whole number
 * a task, when it begins. Worth its time for few tasks; for many the search by orders is better.
 */
import { capacityRule } from '../proof/capacity-rule.ts';
import { type Limit, decide } from '../proof/decide.ts';
import { addOrder, noOrders } from '../proof/order-rule.ts';
import { ALWAYS, addVariable, closeVariables, type VariableList } from '../proof/trail.ts';
import type { Project, Starts } from './project.ts';

export type Shorter =
  | { readonly answer: 'possible'; readonly starts: Int32Array }
  | { readonly answer: 'impossible' }
  | { readonly answer: 'not known' };

/** Length of the longest chain of tasks before each task. */
function chainsBefore({ tasks }: Project): Int32Array {
  const before = new Int32Array(tasks.length);
  tasks.forEach(({ length, successors }, task) => {
    for (const successor of successors) before[successor] = Math.max(before[successor]!, before[task]! + length);
  });
  return before;
}

/** `tail` is the longest chain from each task's beginning to the end; `like` a schedule whose times are tried first. */
export function withinLength(
  project: Project,
  tail: Int32Array,
  most: number,
  like: Starts,
  limit: Omit<Limit, 'like'>,
): Shorter {
  const { tasks, capacity } = project;
  const list: VariableList = { lowest: [], highest: [] };
  const earliest = chainsBefore(project);
  tasks.forEach((_, task) => addVariable(list, earliest[task]!, most - tail[task]!));
  const variables = closeVariables(list);
  const orders = noOrders(tasks.length);
  tasks.forEach(({ length, successors }, task) => {
    for (const successor of successors) addOrder(orders, task, length, successor);
  });
  const rules = capacity.map((units, resource) =>
    capacityRule(
      new Int32Array(most).fill(units),
      tasks.flatMap(({ length, needs }, task) => {
        const need = needs[resource] ?? 0;
        if (need === 0 || length === 0) return [];
        return [
          {
            begin: task,
            beginOffset: 0,
            end: task,
            endOffset: length,
            units: need,
            present: ALWAYS,
            presentVariable: -1,
          },
        ];
      }),
    ),
  );
  const decision = decide({ variables, orders, rules }, { ...limit, like });
  return decision.answer === 'possible' ? { answer: 'possible', starts: decision.values } : { answer: decision.answer };
}
