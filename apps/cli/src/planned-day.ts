/** A day from a file, alone or with its plan; what is wrong is told field by field. */
import { plainDate, starterProtocols } from '@twelvemonth/clinical';
import {
  type Day,
  type Drawn,
  type Plan,
  chairNumbers,
  dayFromSession,
  readAnyDay,
  readPlan,
  type SoFar,
  visitSoFar,
} from '@twelvemonth/planning';
import type { Output } from './command.ts';
import { answeredNo, misused } from './ending.ts';
import { jsonFromFile, unusable } from './json-file.ts';
import { type PlaceOptions, placeHelp, placeOptions, withNotes } from './notes-place.ts';
import { protocolOn, sessionNamed } from './unit-notes.ts';

export type DayFile = {
  /** The day as it was written, to be written again beside an answer. */
  readonly written: unknown;
  readonly day: Day;
  /** The unit's minutes of the steps were left out. */
  readonly hasUsualMinutes: boolean;
  /** Null when the file is a day without a plan. */
  readonly plan: Plan | null;
  /** Chairs by number and locks, as far as the file says them. */
  readonly held?: Pick<Drawn, 'chairs' | 'locks'>;
  /** From the notes: the time each has been told. */
  readonly told?: readonly { readonly name: string; readonly arrives: string }[];
  /** From the notes: what has happened by a time of that day, HH:MM. */
  readonly soFar?: (time: string) => readonly SoFar[];
};

const isPlanned = (json: unknown): json is { readonly day: unknown; readonly plan: unknown } =>
  typeof json === 'object' && json !== null && 'plan' in json && 'day' in json;

function dayFromFile(path: string): DayFile {
  const json = jsonFromFile(path);
  const written = isPlanned(json) ? json.day : json;
  const read = readAnyDay(written);
  if (!read.ok) throw unusable(path, read.problems);
  const { day, hasUsualMinutes } = read;
  if (!isPlanned(json)) return { written, day, hasUsualMinutes, plan: null };
  const plan = readPlan(day, json.plan);
  if (!plan.ok) throw unusable(path, plan.problems);
  return { written, day, hasUsualMinutes, plan: plan.plan, held: { chairs: plan.chairs, locks: plan.locks } };
}

/** A session of the notes: its people as the day, the times they have been told as its plan. */
async function dayFromNotes(
  said: string,
  place: PlaceOptions & { readonly unit?: string | undefined },
  output: Output,
): Promise<DayFile> {
  const read = await withNotes(place, output, async (reader) => {
    const { session, at, listed } = await sessionNamed(reader, said, place.unit);
    return {
      session,
      listed,
      made: dayFromSession(session, { unit: at.unit, protocol: protocolOn(at, session.on), listed }),
    };
  });
  const { made, session, listed } = read;
  if (!made.ok) throw answeredNo(made.says);
  const asDay = readAnyDay(made.day);
  if (!asDay.ok) throw unusable(said, asDay.problems);
  const { day } = asDay;
  const told = made.told.map(({ name, arrives }) => ({ name, arrives }));
  const plan = readPlan(day, told);
  if (!plan.ok) throw unusable(said, plan.problems);
  const soFar = (time: string): readonly SoFar[] => {
    const { on, zone } = session;
    const wall = Temporal.PlainDateTime.from(`${plainDate(on)}T${time}`)
      .toZonedDateTime(zone)
      .toInstant()
      .toString();
    // No server's clock stands behind a command: a running infusion is reckoned by the wall clock alone.
    const clock = { boot: 'a command', uptimeMilliseconds: 0, wall };
    return made.told.map(({ name }, index) => visitSoFar(name, listed[index]!, { on, zone, time, clock }));
  };
  return { written: made.day, day, hasUsualMinutes: made.hasUsualSettings, plan: plan.plan, told, soFar };
}

export const sessionHelp = `  --session ID       instead of FILE: this session of the notes, by its id or date, with the unit's minutes and staff
  --unit ID          with a date: the unit whose session is meant
${placeHelp}`;

export const sessionOptions = { ...placeOptions, session: { type: 'string' }, unit: { type: 'string' } } as const;

/** The day that is meant: a file, or a session of the notes. */
export async function dayMeant(
  command: string,
  positionals: readonly string[],
  values: PlaceOptions & { readonly session?: string | undefined; readonly unit?: string | undefined },
  output: Output,
): Promise<{ readonly file: DayFile; readonly path: string }> {
  const [path, ...more] = positionals;
  if ((path === undefined) === (values.session === undefined) || more.length > 0)
    throw misused(`Say which file or which session: ${command} FILE, or ${command} --session ID.`);
  if (path !== undefined) return { file: dayFromFile(path), path };
  const said = values.session ?? '';
  return { file: await dayFromNotes(said, values, output), path: said };
}

export function planOf({ plan }: DayFile, path: string): Plan {
  if (plan === null)
    throw misused(
      `${path} has no plan in it: give what plan --json writes, or {"day": ..., "plan": [{"name": ..., "arrives": "08:30"}]}.`,
    );
  return plan;
}

/** The plan of a file as a drawing: who has no chair written gets the lowest number free. */
export function drawnOf(file: DayFile, path: string): Drawn {
  const plan = planOf(file, path);
  const { chairs, locks } = file.held ?? { chairs: [], locks: file.day.visits.map(() => undefined) };
  return { plan, chairs: chairNumbers(file.day, plan, chairs), locks };
}

/** What a reader should know of the minutes before relying on any time. */
export const minutesCaution =
  'The minutes of the steps are starting values (common practice, no source): write the unit’s own, in its settings or under "minutes".';

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
