/** A day from a file, alone or with its plan; what is wrong is told field by field. */
import { starterProtocols } from '@twelvemonth/clinical';
import { type Day, type Plan, readAnyDay, readPlan } from '@twelvemonth/planning';
import { misused } from './ending.ts';
import { jsonFromFile, unusable } from './json-file.ts';

export type DayFile = {
  /** The day as it was written, to be written again beside an answer. */
  readonly written: unknown;
  readonly day: Day;
  /** The unit's minutes of the steps were left out. */
  readonly hasUsualMinutes: boolean;
  /** Null when the file is a day without a plan. */
  readonly plan: Plan | null;
};

const isPlanned = (json: unknown): json is { readonly day: unknown; readonly plan: unknown } =>
  typeof json === 'object' && json !== null && 'plan' in json && 'day' in json;

export function dayFromFile(path: string): DayFile {
  const json = jsonFromFile(path);
  const written = isPlanned(json) ? json.day : json;
  const read = readAnyDay(written);
  if (!read.ok) throw unusable(path, read.problems);
  const { day, hasUsualMinutes } = read;
  if (!isPlanned(json)) return { written, day, hasUsualMinutes, plan: null };
  const plan = readPlan(day, json.plan);
  if (!plan.ok) throw unusable(path, plan.problems);
  return { written, day, hasUsualMinutes, plan: plan.plan };
}

export function planOf({ plan }: DayFile, path: string): Plan {
  if (plan === null)
    throw misused(
      `${path} has no plan in it: give what plan --json writes, or {"day": ..., "plan": [{"name": ..., "arrives": "08:30"}]}.`,
    );
  return plan;
}

/** What a reader should know of the minutes before relying on any time. */
export const minutesCaution =
  'The minutes of the steps are starting values (common practice, no source): write the unit’s own under "minutes".';

/** The longest of the shortest running times in the starter sheets that tell one; sheets differ, the most careful counts. */
const shortestMinutes = Math.max(
  ...starterProtocols
    .map(({ numbers }) => Number(numbers.runningMinutesLeast.value ?? Number.NaN))
    .filter(Number.isFinite),
);

/** What a reader should know of infusions planned shorter than any starter sheet allows; undefined when there are none. */
export function shortInfusionsCaution({ visits, minutesPerTick }: Day): string | undefined {
  const short = visits.filter(({ steps }) =>
    steps.some(({ nurse, ticks }) => nurse === 'shared' && ticks * minutesPerTick < shortestMinutes),
  );
  if (short.length === 0) return undefined;
  return `CAUTION: planned shorter than ${shortestMinutes} minutes, which no zoledronic acid 5 mg may run: ${short.map(({ name }) => name).join(', ')}. Ask the prescriber.`;
}
