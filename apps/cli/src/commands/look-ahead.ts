/** Years ahead: places asked for, waits with their ranges, the places that keep to a wait, what-ifs with the same draws. */
import {
  type Case,
  type LookAhead,
  type LookAheadOptions,
  type WaitTarget,
  chanceOfWait,
  lookAhead,
  placesNeeded,
  readLookAhead,
} from '@twelvemonth/planning';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, mostSeed, readOptions, wholeOption } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { jsonFromFile, unusable } from '../json-file.ts';

const usualWeeks = '156';
const mostWeeks = 520;
const usualRuns = '500';
const mostRuns = 100_000;
const percent = 100;
const weeksPerQuarter = 13;

export const lookAheadCommand: Command = {
  summary: 'places and waits over the coming years, and what if',
  help: `twelvemonth look-ahead FILE [options]

FILE says who waits and falls due, how many are referred, return and die, what the unit offers and the wait it aims at; the
guide shows it; - is standard input. Says how many places are asked for, how long people wait, with the ranges that hold 80 and
95 of 100 runs, and how many places a week keep to the wait. Ends with 1 if they are too few: the target is not kept.

  --weeks N          how far ahead (${usualWeeks})
  --runs N           how many futures (${usualRuns})
  --seed N           the same seed gives the same futures, for each what-if too (1)
  --json             all of it as JSON, week by week`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      weeks: { type: 'string', default: usualWeeks },
      runs: { type: 'string', default: usualRuns },
      seed: { type: 'string', default: '1' },
      json: { type: 'boolean', default: false },
    });
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw misused('Say which file: look-ahead FILE.');
    const options = {
      weeks: wholeOption('weeks', values.weeks, 1, mostWeeks),
      runs: wholeOption('runs', values.runs, 1, mostRuns),
      seed: wholeOption('seed', values.seed, 0, mostSeed),
    };
    const read = readLookAhead(jsonFromFile(path));
    if (!read.ok) throw unusable(path, read.problems);
    const { target } = read;
    const own = lookedAhead(read.asTheyAre, target, options);
    const others = read.whatIfs.map((one) => lookedAhead(one, target, options));
    output.out(values.json ? jsonText(json(own, others, target, options)) : text(own, others, target, options));
    return own.chance >= target.probability ? exitCodes.done : exitCodes.no;
  },
};

type Looked = {
  readonly of: Case;
  readonly found: LookAhead;
  /** Share of the runs in which nobody who joins in the last year waits longer than the target. */
  readonly chance: number;
  readonly needed: number | undefined;
};

function lookedAhead(of: Case, target: WaitTarget, options: LookAheadOptions): Looked {
  const { inputs, offer } = of;
  return {
    of,
    found: lookAhead(inputs, offer, options),
    chance: chanceOfWait(inputs, offer, target.weeks, options),
    needed: placesNeeded(inputs, offer, target, options),
  };
}

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

const json = (own: Looked, others: readonly Looked[], target: WaitTarget, { weeks, runs, seed }: LookAheadOptions) => ({
  seed,
  runs,
  weeks,
  target,
  ...headJson(own),
  demand: own.found.demand,
  waitWeeks: own.found.wait,
  turnedAway: own.found.turnedAway,
  whatIfs: others.map((other) => ({ ...headJson(other), waitWeeks: other.found.wait })),
});

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

function text(own: Looked, others: readonly Looked[], target: WaitTarget, options: LookAheadOptions): string {
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
  ].join('\n');
}
