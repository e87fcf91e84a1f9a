/** A planned day played many times: when it ends, who waits for what, and the chance of ending on time. */
import { wilson } from '@twelvemonth/counselling';
import {
  type Chances,
  type Day,
  type Effect,
  type Rehearsal,
  clockAt,
  readChances,
  rehearse,
  usualChances,
  whatMatters,
} from '@twelvemonth/planning';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, mostSeed, readOptions, wholeOption } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { jsonFromFile, unusable } from '../json-file.ts';
import { dayMeant, minutesCaution, planOf, sessionHelp, sessionOptions } from '../planned-day.ts';

const usualDays = '2000';
const mostDays = 1_000_000;
const percent = 100;
/** Shares of the days by which the last person has left. */
const shares = [0.05, 0.25, 0.5, 0.75, 0.9, 0.95];

export const rehearseCommand: Command = {
  summary: 'a planned day tried out many times: its end, its waits',
  help: `twelvemonth rehearse FILE [options]
twelvemonth rehearse --session ID [options]

FILE is a planned day: what plan --json writes, or {"day": ..., "plan": [{"name": ..., "arrives": "08:30"}, ...]}; - is
standard input. People come as they were told, more or less; whoever is next is served first; steps take longer or shorter,
some do not come or are sent home, cannulas fail. A break of preparer or checker, and a room that closes early, are not felt.

  --chances FILE     what may go otherwise, all of it, as the guide shows (starting values)
  --days N           days played (${usualDays})
  --target PERCENT   ends with 1 if fewer of the days end on time
  --what-matters     the same days with one nurse or chair more or fewer, everyone on time, ...
  --seed N           the same seed meets the same delays, whatever the plan (1)
  --json             all of it as JSON
${sessionHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      chances: { type: 'string' },
      days: { type: 'string', default: usualDays },
      target: { type: 'string' },
      'what-matters': { type: 'boolean', default: false },
      seed: { type: 'string', default: '1' },
      json: { type: 'boolean', default: false },
      ...sessionOptions,
    });
    const options = {
      seed: wholeOption('seed', values.seed, 0, mostSeed),
      days: wholeOption('days', values.days, 1, mostDays),
    };
    const target = values.target === undefined ? undefined : wholeOption('target', values.target, 0, percent);
    const { file, path } = await dayMeant('rehearse', positionals, values, output);
    const plan = planOf(file, path);
    const { day } = file;
    const left = day.visits.filter((_, visit) => plan[visit] === null).map(({ name }) => name);
    if (left.length === day.visits.length)
      throw misused(`${path} has nobody in its plan: there is nothing to rehearse.`);
    const chances = values.chances === undefined ? usualChances : chancesFromFile(values.chances);
    if (file.hasUsualMinutes) output.aside(minutesCaution);
    if (values.chances === undefined)
      output.aside(
        'What may go otherwise are starting values, partly without a source: write the unit’s own, --chances FILE.',
      );
    if (left.length > 0) output.aside(`Not in the plan, and not rehearsed: ${left.join(', ')}.`);
    const found = rehearse(day, plan, chances, options);
    const effects = values['what-matters'] ? whatMatters(day, plan, chances, options) : undefined;
    output.out(values.json ? jsonText(json(day, found, effects)) : text(day, found, effects));
    return target !== undefined && found.onTime * percent < target ? exitCodes.no : exitCodes.done;
  },
};

function chancesFromFile(path: string): Chances {
  const read = readChances(jsonFromFile(path));
  if (!read.ok) throw unusable(path, read.problems);
  return read.chances;
}

/** Minutes since the day began, as a time to the minute. */
const clockOf = (day: Day, minutes: number): string => clockAt({ ...day, minutesPerTick: 1 }, Math.round(minutes));

/** How far off the share may be, because the days played are a sample: the 95 % range. */
const rangeOf = ({ onTime, days }: Rehearsal) => wilson(onTime * days, days);

const quantile = ({ finishes }: Rehearsal, share: number): number =>
  finishes[Math.min(finishes.length - 1, Math.floor(finishes.length * share))] ?? 0;

const json = (day: Day, found: Rehearsal, effects: readonly Effect[] | undefined) => ({
  seed: found.seed,
  days: found.days,
  onTime: found.onTime,
  onTimeRange95: rangeOf(found),
  closes: clockAt(day, day.closes),
  finish: {
    mean: clockOf(day, found.finish.mean),
    by: shares.map((share) => ({ share, at: clockOf(day, quantile(found, share)) })),
  },
  stayMinutes: found.stay,
  waitedMinutesADay: found.waitedFor,
  bottleneck: found.bottleneck,
  attended: found.attended,
  dosesMadeAgain: found.remade,
  present: found.present.map((people, index) => ({ at: clockOf(day, index * halfHour), people })),
  ...(effects === undefined ? {} : { whatMatters: effects }),
});

const halfHour = 30;
const oneDigit = (value: number): string => value.toFixed(1);
const inHundred = (share: number): string => oneDigit(share * percent);
const signed = (value: number): string => `${value >= 0 ? '+' : ''}${oneDigit(value)}`;

function text(day: Day, found: Rehearsal, effects: readonly Effect[] | undefined): string {
  const { waitedFor, bottleneck, stay } = found;
  const { from, to } = rangeOf(found);
  return [
    `${day.id}: ${found.days} days played, seed ${found.seed}; of ${day.visits.length} people ${oneDigit(found.attended)} come.`,
    `On time, by ${clockAt(day, day.closes)}: ${inHundred(found.onTime)} of 100 days (${inHundred(from)} to ${inHundred(to)}: the days played are a sample).`,
    `A stay: half up to ${Math.round(stay.median)} minutes, nine in ten up to ${Math.round(stay.ninthDecile)}.`,
    `Waited a day, all together: ${oneDigit(waitedFor.nurse)} minutes for a nurse, ${oneDigit(waitedFor.chair)} for a chair, ${oneDigit(waitedFor.dose)} for the dose. ${bottleneck === null ? 'Nobody waits.' : `Most for the ${bottleneck}.`}`,
    `Doses that stood too long and are made again: ${oneDigit(found.remade)} a day.`,
    '',
    columnsText(
      ['of 100 days', 'the last has left by'],
      shares.map((share) => [String(Math.round(share * percent)), clockOf(day, quantile(found, share))]),
    ),
    ...(effects === undefined
      ? []
      : [
          '',
          columnsText(
            ['with', 'on time, of 100', 'mean stay, minutes'],
            effects.map(({ what, onTime, stayMinutes }) => [what, signed(onTime * percent), signed(stayMinutes)]),
          ),
        ]),
  ].join('\n');
}
