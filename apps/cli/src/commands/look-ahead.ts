/** Years ahead: places asked for, waits with their ranges, the places that keep to a wait, what-ifs with the same draws. */
import type { Unit } from '@twelvemonth/clinical';
import {
  type AheadAnswer,
  type Case,
  type Changes,
  type LookAhead,
  type LookAheadOptions,
  type ReadFigure,
  type Service,
  type UnitAheadFromNotes,
  type WaitTarget,
  aheadInSteps,
  allOf,
  changeNames,
  changedCase,
  needsFor,
  needsSays,
  readLookAhead,
  spokenChange,
  unitAheadFromNotes,
} from '@twelvemonth/planning';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, type Output, dateOption, mostSeed, readOptions, wholeOption } from '../command.ts';
import { answeredNo, exitCodes, misused } from '../ending.ts';
import { jsonFromFile, unusable } from '../json-file.ts';
import { type PlaceOptions, placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { recordsOfUnit, sessionsOfUnit, unitNamed } from '../unit-notes.ts';
import { type UnitWords, wordsOf } from '../unit-words.ts';

const usualWeeks = '156';
const mostWeeks = 520;
const usualRuns = '500';
const mostRuns = 100_000;
const percent = 100;
const weeksPerQuarter = 13;

const usualTargetWeeks = '4';
const usualTargetPercent = '90';
const mostPercent = 100;

export const lookAheadCommand: Command = {
  summary: 'places and waits over the coming years, and what if',
  help: `twelvemonth look-ahead FILE [options]
twelvemonth look-ahead --unit ID [options]

FILE says who waits and falls due, how many are referred, return and die, what the unit offers and the wait it aims at; the
guide shows it; - is standard input. With --unit all of it is counted from the notes, and what was counted stands below. Says how
many places are asked for, how long people wait, with the ranges that hold 80 and 95 of 100 runs, and how many places a week keep
to the wait. Ends with 1 if they are too few: the target is not kept.

  --weeks N          how far ahead (${usualWeeks})
  --runs N           how many futures (${usualRuns})
  --seed N           the same seed gives the same futures, for each what-if too (1)
  --json             all of it as JSON, week by week
  --unit ID          instead of FILE: this unit, from its notes
  --target N         with --unit: nobody waits longer than so many weeks (${usualTargetWeeks})
  --in N             with --unit: in so many of 100 runs (${usualTargetPercent})
  --if NAME=VALUE    with --unit: what if; may be given more than once. Names:
${Object.entries(changeNames)
  .map(([name, means]) => `                       ${name.padEnd(12)} ${means}`)
  .join('\n')}
  --write-file       with --unit: prints what was counted as a FILE, to be changed by hand
  --today DATE       with --unit: the day asked on (today at the unit)
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      weeks: { type: 'string', default: usualWeeks },
      runs: { type: 'string', default: usualRuns },
      seed: { type: 'string', default: '1' },
      json: { type: 'boolean', default: false },
      ...placeOptions,
      unit: { type: 'string' },
      today: { type: 'string' },
      target: { type: 'string', default: usualTargetWeeks },
      in: { type: 'string', default: usualTargetPercent },
      if: { type: 'string', multiple: true, default: [] },
      'write-file': { type: 'boolean', default: false },
    });
    const [path] = positionals;
    if ((path === undefined) === (values.unit === undefined) || positionals.length > 1)
      throw misused('Say which file or which unit: look-ahead FILE, or look-ahead --unit ID.');
    const options = {
      weeks: wholeOption('weeks', values.weeks, 1, mostWeeks),
      runs: wholeOption('runs', values.runs, 1, mostRuns),
      seed: wholeOption('seed', values.seed, 0, mostSeed),
    };
    const asked =
      values.unit === undefined
        ? fromFile(path ?? '')
        : await fromUnit(
            values,
            values.if,
            {
              weeks: wholeOption('target', values.target, 0, mostWeeks),
              probability: wholeOption('in', values.in, 1, mostPercent) / percent,
            },
            output,
          );
    if (values['write-file']) {
      if (values.unit === undefined) throw misused('--write-file goes with --unit: a file is there already.');
      output.out(jsonText(fileOf(asked)));
      return exitCodes.done;
    }
    const own = lookedAhead(asked.asTheyAre, asked.target, options);
    const others = asked.whatIfs.map((one) => lookedAhead(one, asked.target, options));
    output.out(
      values.json ? jsonText(json(asked, own, others, options)) : asked.words(text(asked, own, others, options)),
    );
    return own.chance >= asked.target.probability ? exitCodes.done : exitCodes.no;
  },
};

type CaseWithService = Case & { readonly service?: Service | undefined };
type Asked = {
  readonly asTheyAre: CaseWithService;
  readonly whatIfs: readonly CaseWithService[];
  readonly target: WaitTarget;
  /** What was counted, where the notes were read. */
  readonly read: readonly ReadFigure[];
  readonly words: UnitWords;
};

function fromFile(path: string): Asked {
  const read = readLookAhead(jsonFromFile(path));
  if (!read.ok) throw unusable(path, read.problems);
  return { ...read, read: [], words: wordsOf(undefined) };
}

/** Each what-if changes one thing; a text that is none is told with what there is. */
function changesOf(texts: readonly string[]): { readonly name: string; readonly changes: Changes }[] {
  return texts.map((name) => {
    const changes = spokenChange(name);
    if (changes === undefined)
      throw misused(`--if ${name}: write NAME=VALUE, with one of ${Object.keys(changeNames).join(', ')}.`);
    return { name, changes };
  });
}

async function fromUnit(
  values: PlaceOptions & Readonly<Partial<Record<'unit' | 'today', string | undefined>>>,
  whatIfs: readonly string[],
  target: WaitTarget,
  output: Output,
): Promise<Asked> {
  const [changes, asked] = [changesOf(whatIfs), dateOption('today', values.today)];
  const [made, { name, letters }] = await withNotes(
    values,
    output,
    async (reader): Promise<readonly [UnitAheadFromNotes, Unit]> => {
      const { unit, context, today } = await unitNamed(reader, values.unit);
      const made = unitAheadFromNotes({
        unit,
        context,
        today: asked ?? today,
        sessions: await sessionsOfUnit(reader, unit.id),
        records: await recordsOfUnit(reader, unit.id),
      });
      return [made, unit];
    },
  );
  if (!made.ok) throw answeredNo(made.says);
  if (made.hasUsualSettings)
    output.aside(
      'The unit has not written what planning needs: starting values stand in (common practice, no source).',
    );
  return {
    asTheyAre: { name, ...changedCase(made.ahead, {}) },
    whatIfs: changes.map((one) => ({ name: one.name, ...changedCase(made.ahead, one.changes) })),
    target,
    read: made.read,
    words: wordsOf({ letters }),
  };
}

const fileOf = ({ asTheyAre: { name, inputs, offer }, target }: Asked) => ({
  unit: name,
  demand: inputs,
  offer,
  target,
});

type Looked = AheadAnswer & { readonly of: CaseWithService };

const lookedAhead = (of: CaseWithService, target: WaitTarget, options: LookAheadOptions): Looked => ({
  of,
  ...allOf(aheadInSteps(of, target, options)),
});

const headJson = ({ of, found, chance, needed }: Looked) => ({
  name: of.name,
  placesPerWeek: of.offer.placesPerWeek,
  says: found.says,
  recovers: found.recovers,
  growing: found.growing,
  demandPerWeekInLastYear: found.demandPerWeekInLastYear,
  chanceOfTarget: chance,
  placesNeeded: needed ?? null,
});

const json = (
  { target, read }: Asked,
  own: Looked,
  others: readonly Looked[],
  { weeks, runs, seed }: LookAheadOptions,
) => ({
  seed,
  runs,
  weeks,
  target,
  ...headJson(own),
  demand: own.found.demand,
  waitWeeks: own.found.wait,
  turnedAway: own.found.turnedAway,
  whatIfs: others.map((other) => ({ ...headJson(other), waitWeeks: other.found.wait })),
  ...(read.length === 0 ? {} : { counted: read }),
});

/** What the places that keep to the wait take of sessions, nurses and chairs. */
function needsText({ of: { service }, needed }: Looked): string[] {
  const needs = service === undefined || needed === undefined ? undefined : needsFor(service, needed);
  if (needs === undefined) return [];
  return [needsSays(needs)];
}

const oneDigit = (value: number | undefined): string => (value ?? 0).toFixed(1);
const neededText = (needed: number | undefined): string => (needed === undefined ? 'none found' : String(needed));
const inHundred = (share: number): string => `${Math.round(share * percent)} of 100 runs`;

/** The mean of a week and its two ranges. */
function cells(of: LookAhead['wait'], week: number): string[] {
  return [
    oneDigit(of.mean[week]),
    `${oneDigit(of.low80[week])} to ${oneDigit(of.high80[week])}`,
    `${oneDigit(of.low95[week])} to ${oneDigit(of.high95[week])}`,
  ];
}

function text({ target, read }: Asked, own: Looked, others: readonly Looked[], options: LookAheadOptions): string {
  const { weeks, runs, seed } = options;
  const { found, of, chance, needed } = own;
  const quarters = Array.from({ length: Math.ceil(weeks / weeksPerQuarter) }, (_, quarter) =>
    Math.min(weeks, (quarter + 1) * weeksPerQuarter),
  );
  const away = found.turnedAway.mean.reduce((sum, one) => sum + one, 0);
  const row = (one: Looked): string[] => [
    one.of.name,
    oneDigit(one.of.offer.placesPerWeek),
    oneDigit(one.found.demandPerWeekInLastYear),
    oneDigit(one.found.wait.mean.at(-1)),
    inHundred(one.chance),
    neededText(one.needed),
  ];
  return [
    `${of.name}: ${weeks} weeks ahead, ${runs} runs, seed ${seed}. Places a week: ${oneDigit(of.offer.placesPerWeek)}; asked for in the last year: ${oneDigit(found.demandPerWeekInLastYear)}.`,
    found.says,
    `Nobody waits longer than ${target.weeks} weeks in the last year: ${inHundred(chance)}; aimed at ${inHundred(target.probability)}. Places a week that keep to it: ${neededText(needed)}.`,
    ...needsText(own),
    `Turned away because the bloods were too old, in all, on average: ${oneDigit(away)}.`,
    '',
    columnsText(
      ['after week', 'places asked for', '80 of 100', '95 of 100', 'wait, weeks', '80 of 100', '95 of 100'],
      quarters.map((week) => [String(week), ...cells(found.demand, week - 1), ...cells(found.wait, week - 1)]),
    ),
    ...(others.length === 0
      ? []
      : [
          '',
          columnsText(
            ['what if', 'places a week', 'asked for', 'wait at the end', 'wait kept', 'places needed'],
            [own, ...others].map(row),
          ),
          ...others.map((other) => `${other.of.name}: ${other.found.says}`),
        ]),
    ...(read.length === 0
      ? []
      : [
          '',
          columnsText(
            ['read from the notes', 'is', 'from'],
            read.map((one) => [one.what, one.is, one.from]),
          ),
          'Drawn towards a starting value that weighs as much as 20 people counted:',
          ...read.flatMap(({ what, starting }) => (starting === undefined ? [] : [`  ${what}: ${starting}`])),
        ]),
  ].join('\n');
}
