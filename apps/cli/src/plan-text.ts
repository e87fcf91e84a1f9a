/** A plan and what is known about it, to read. */
import {
  type Day,
  type Objective,
  type Plan,
  type Replan,
  type Why,
  clockAt,
  minutesOf,
  writePlan,
} from '@twelvemonth/planning';
import { columnsText } from './columns.ts';

export const objectiveJson = (day: Day, { unseen, overtime, wait, finish }: Objective) => ({
  unseen,
  overtimeMinutes: overtime * day.minutesPerTick,
  waitMinutes: wait * day.minutesPerTick,
  finish: clockAt(day, finish),
});

export function objectiveText(day: Day, { unseen, overtime, wait, finish }: Objective): string {
  const people = day.visits.length === 1 ? 'one person' : `${day.visits.length} people`;
  const seen = unseen === 0 ? 'everyone is seen' : `${unseen} not seen`;
  const late = overtime === 0 ? '' : `, ${minutesOf(day, overtime)} of overtime`;
  const waits =
    wait === 0 ? 'Nobody waits inside the visit.' : `Waiting inside the visits, all together: ${minutesOf(day, wait)}.`;
  return `${day.id}: ${people}, ${seen}. The last leaves at ${clockAt(day, finish)}; the unit closes at ${clockAt(day, day.closes)}${late}. ${waits}`;
}

/** The bound in words; a field says nothing once one before it is not reached. */
export function boundText(day: Day, objective: Objective, atLeast: Objective, isProven: boolean): string {
  if (isProven) return 'Proven best: no plan has less overtime, less waiting, or an earlier end at no more waiting.';
  const least = (what: string, ticks: number): string =>
    `Not proven best: every plan has at least ${minutesOf(day, ticks)} of ${what}; it may be that this can be reached.`;
  if (atLeast.overtime < objective.overtime) return least('overtime', atLeast.overtime);
  if (atLeast.wait < objective.wait) return least('waiting', atLeast.wait);
  return `No plan waits less, that is proven. Not proven best: at this waiting none ends before ${clockAt(day, atLeast.finish)}.`;
}

export const refereeText = (says: readonly string[]): string =>
  says.length === 0 ? 'Referee: every rule is kept.' : ['Referee:', ...says.map((one) => `  ${one}`)].join('\n');

export function planText(day: Day, plan: Plan): string {
  const rows = writePlan(day, plan)
    .toSorted((a, b) => a.arrives.localeCompare(b.arrives))
    .map(({ name, arrives, leaves = '', waitMinutes = 0, preparation, secondCheck, steps = [], watchedIn }) => [
      arrives,
      leaves,
      name,
      waitMinutes === 0 ? '' : `${waitMinutes} min`,
      preparation ?? '',
      secondCheck ?? '',
      steps
        .map(({ step, from }) => `${from} ${step}${step === 'watch' && watchedIn === 'chair' ? ' (in the chair)' : ''}`)
        .join(', '),
    ]);
  return columnsText(['comes', 'leaves', 'who', 'waits', 'prepared', 'second check', 'steps'], rows);
}

/** Earlier times told in words; `--json` has them all. */
const nearest = 3;

export const whyText = (day: Day, { says, earlier }: Why): string =>
  [
    says,
    ...earlier
      .slice(0, nearest)
      .map(
        ({ arrives, wouldHaveToGive }) =>
          `  ${clockAt(day, arrives)}: ${wouldHaveToGive.length === 0 ? 'nothing is in the way' : `would need ${wouldHaveToGive.join('; ')}`}`,
      ),
  ].join('\n');

export function replanText(day: Day, { moved, lost, stuck }: Replan): string {
  const name = (visit: number): string => day.visits[visit]?.name ?? '';
  const lines = [
    ...moved.map(({ visit, from, to }) => `tell ${name(visit)}: ${clockAt(day, to)} instead of ${clockAt(day, from)}`),
    ...lost.filter((visit) => !stuck.includes(visit)).map((visit) => `${name(visit)} has no place any more`),
    ...stuck.map((visit) => `${name(visit)} has begun and cannot be finished within the day: a longer day is needed`),
  ];
  return lines.length === 0 ? 'Nobody has to be told another time.' : lines.join('\n');
}
