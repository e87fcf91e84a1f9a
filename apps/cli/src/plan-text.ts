/** A plan and what is known about it, to read. */
import { type Day, type Objective, type Plan, type Replan, type Why, clockAt, writePlan } from '@twelvemonth/planning';
import { columnsText } from './columns.ts';

export const objectiveJson = (day: Day, { unseen, overtime, wait, finish }: Objective) => ({
  unseen,
  overtimeMinutes: overtime * day.minutesPerTick,
  waitMinutes: wait * day.minutesPerTick,
  finish: clockAt(day, finish),
});

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
