/** The rest of a session's day planned again from what the notes say has happened. */
import {
  type DayChanges,
  type Day,
  type RestOfDay,
  type ToTell,
  brokenInDrawing,
  clockAt,
  proposeRest,
  restOfDay,
  stillToCome,
  toTell,
  writePlan,
} from '@twelvemonth/planning';
import { jsonText } from './columns.ts';
import { type Output, wholeOption } from './command.ts';
import { type ExitCode, answeredNo, exitCodes, misused } from './ending.ts';
import { planText, refereeText } from './plan-text.ts';
import type { DayFile } from './planned-day.ts';

export const restOptions = {
  nurses: { type: 'string' },
  chairs: { type: 'string' },
  'second-checkers': { type: 'string' },
  comes: { type: 'string', multiple: true, default: [] as string[] },
  'runs-longer': { type: 'string', multiple: true, default: [] as string[] },
} as const;

export const restHelp = `  With --session and --now: what has happened is read from the notes. Besides that may be said
  --nurses N, --chairs N, --second-checkers N    how many there are from now on
  --comes "NAME=10:40"         who is late and comes at that time; may be given more than once
  --runs-longer "NAME=30"      whose infusion runs so many minutes longer; may be given more than once
`;

type Said = {
  readonly nurses?: string | undefined;
  readonly chairs?: string | undefined;
  readonly 'second-checkers'?: string | undefined;
  readonly comes: readonly string[];
  readonly 'runs-longer': readonly string[];
};

const most = 100;
const mostMinutes = 600;

function pairs(option: string, said: readonly string[], day: Day): Map<string, string> {
  return new Map(
    said.map((text) => {
      const at = text.lastIndexOf('=');
      const name = text.slice(0, at).trim();
      if (at < 0 || !day.visits.some((visit) => visit.name === name))
        throw misused(`--${option} "${text}": write NAME=VALUE with a name of the list.`);
      return [name, text.slice(at + 1).trim()];
    }),
  );
}

export function changesSaid(said: Said, day: Day): DayChanges {
  const count = (option: 'nurses' | 'chairs' | 'second-checkers'): number | undefined =>
    said[option] === undefined ? undefined : wholeOption(option, said[option], 0, most);
  const comes = pairs('comes', said.comes, day);
  for (const [name, time] of comes)
    if (!/^(?:[01]\d|2[0-3]):[0-5]\d$/.test(time)) throw misused(`--comes "${name}=${time}": write a time as 10:40.`);
  const longer = [...pairs('runs-longer', said['runs-longer'], day)];
  return {
    nurses: count('nurses'),
    chairs: count('chairs'),
    checkers: count('second-checkers'),
    comes,
    runsLonger: new Map(longer.map(([name, text]) => [name, wholeOption('runs-longer', text, 0, mostMinutes)])),
  };
}

export function plannedRest(
  file: DayFile,
  { time, changes, seed, effort }: { time: string; changes: DayChanges; seed: number; effort: number },
  { json, output }: { json: boolean; output: Output },
): ExitCode {
  const told = new Map((file.told ?? []).map(({ name, arrives }) => [name, arrives]));
  const read = restOfDay(file.day, told, file.soFar?.(time) ?? [], time, changes);
  if (!read.ok) throw answeredNo(read.says);
  const { rest } = read;
  const { drawn, lost, stuck, enough } = proposeRest(rest, { seed, limit: { iterations: effort } });
  const { day } = rest;
  const name = (visit: number): string => day.visits[visit]?.name ?? '';
  const tell = toTell(rest, drawn.plan);
  const referee = stillToCome(brokenInDrawing(day, drawn), rest.now)
    .filter(({ rule }) => rule !== 'everyone is seen')
    .map(({ says }) => says);
  if (json)
    output.out(
      jsonText({
        answer: 'rest of the day',
        seed,
        now: time,
        tell: tell.map(({ visit, from, to, because }) => ({
          name: name(visit),
          from: clockAt(day, from),
          to: clockAt(day, to),
          because,
        })),
        lost: lost.map(name),
        cannotFinish: stuck.map(name),
        enough,
        referee,
        plan: writePlan(day, drawn.plan, drawn),
      }),
    );
  else
    output.out(
      [
        `${day.id}, the rest of the day from ${time} on. A proposal: nobody is told by it.`,
        ...tellText(rest, tell),
        ...lost.map((visit) => `${name(visit)} has no place today any more: book another day with them.`),
        ...stuck.map((visit) => `${name(visit)} is here and cannot be finished within the day.`),
        ...(enough.length === 0 ? [] : ['Any one of these would be enough:', ...enough.map((one) => `  ${one}`)]),
        refereeText(referee),
        '',
        planText(day, drawn.plan),
      ].join('\n'),
    );
  return lost.length + stuck.length + referee.length === 0 ? exitCodes.done : exitCodes.no;
}

const tellText = ({ day }: RestOfDay, tell: readonly ToTell[]): string[] =>
  tell.length === 0
    ? ['Nobody has to be told another time.']
    : tell.map(
        ({ visit, from, to, because }) =>
          `tell ${day.visits[visit]?.name}: ${clockAt(day, to)} instead of ${clockAt(day, from)}. Why: ${because}`,
      );
