/** A year of each unit under usual practice and by windows: the same people, the same luck, several seeds. */
import {
  type ComparedWays,
  type UnitOfYear,
  type WayResult,
  compareWays,
  sourcesOfAssumptions,
  yearAssumptions,
  yearUnitFromNotes,
} from '@twelvemonth/planning';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, type Output, dateOption, readOptions, wholeOption } from '../command.ts';
import { answeredNo, exitCodes } from '../ending.ts';
import { type PlaceOptions, placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { protocolOn, recordsOfUnit, sessionsOfUnit, unitNamed } from '../unit-notes.ts';
import { allUnits } from '../units.ts';

const usualSeeds = '5';
const mostSeeds = 100;
const mostLoad = 120;

export const rehearseYearCommand: Command = {
  summary: 'a year of each unit, as usual and by windows, side by side',
  help: `twelvemonth rehearse-year [options]

Reads what the units of the notes are (hours, places, staff, blood rules), how many were referred in the past year and how many
doses fall due in the coming one, and plays a year of sessions twice with the same people and the same luck: the first free
place with bloods at referral, and windows filled once a week with samples timed to the place. What is taken for granted
stands below the table with its source. It is about made-up people: no figure here was seen in a real unit.

  --unit ID          only this unit (all)
  --load PERCENT     as many people as ask for so much of the places (as many as the notes say)
  --seeds N          years played: seeds 1 to N (${usualSeeds})
  --today DATE       the day the year begins (today at the unit)
  --json             every seed, every measure, the assumptions
${placeHelp}`,
  run: async (args, output) => {
    const { values } = readOptions(args, {
      ...placeOptions,
      unit: { type: 'string' },
      load: { type: 'string' },
      seeds: { type: 'string', default: usualSeeds },
      today: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    const seeds = wholeOption('seeds', values.seeds, 1, mostSeeds);
    const load = values.load === undefined ? undefined : wholeOption('load', values.load, 1, mostLoad);
    const units = await unitsOfYear(values, output);
    const years: ComparedWays[] = [];
    for (let seed = 1; seed <= seeds; seed += 1)
      for (const unit of units) {
        years.push(compareWays(unit, { seed, load }));
        output.aside(`seed ${seed} of ${seeds}, ${unit.year.name}`);
      }
    const rows = measureRows(years);
    output.out(
      values.json
        ? jsonText({
            units: units.map(described),
            seeds,
            load,
            measures: rows,
            years,
            assumptions: yearAssumptions,
            sources: sourcesOfAssumptions,
          })
        : text(units, years, rows),
    );
    return exitCodes.done;
  },
};

async function unitsOfYear(
  values: PlaceOptions & Readonly<Partial<Record<'unit' | 'today', string | undefined>>>,
  output: Output,
): Promise<UnitOfYear[]> {
  const asked = dateOption('today', values.today);
  return withNotes(values, output, async (reader) => {
    const ids = values.unit === undefined ? [...(await allUnits(reader)).keys()] : [values.unit];
    const units: UnitOfYear[] = [];
    for (const id of ids) {
      const at = await unitNamed(reader, id);
      const today = asked ?? at.today;
      const made = yearUnitFromNotes({
        unit: at.unit,
        protocol: protocolOn(at, today),
        today,
        sessions: await sessionsOfUnit(reader, id),
        records: await recordsOfUnit(reader, id),
      });
      if (!made.ok) throw answeredNo(made.says);
      if (made.hasUsualSettings)
        output.aside(`${at.unit.name} has not written what planning needs: starting values stand in (no source).`);
      units.push(made.unit);
    }
    if (units.length === 0) throw answeredNo('No unit is described in the notes.');
    return units;
  });
}

const described = ({ year, demand }: UnitOfYear) => ({
  unit: year.name,
  places: year.places,
  ...demand,
  ...year.samples,
});

type Row = {
  readonly measure: string;
  readonly ways: readonly {
    readonly name: string;
    readonly mean: number;
    readonly least: number;
    readonly most: number;
  }[];
};

const measures: readonly [name: string, of: (result: WayResult) => number][] = [
  ['turned away, could have been seen a week before', (result) => result.foreseeableTurnAways],
  ['turned away, could not', (result) => result.otherTurnAways],
  ['did not come', (result) => result.didNotCome],
  ['days from referral to first dose, half up to', (result) => result.medianDaysToFirstDose],
  ['the same, nine in ten up to', (result) => result.ninthDecileDaysToFirstDose],
  ['samples drawn again', (result) => result.repeatDraws],
  ['later doses overdue', (result) => result.overdue],
  ['sessions past closing', (result) => result.overruns],
  ['sessions held', (result) => result.sessions],
  ['minutes from coming to leaving', (result) => result.meanStayMinutes],
  ['doses given', (result) => result.given],
];
const ofPeople = new Set([
  'days from referral to first dose, half up to',
  'the same, nine in ten up to',
  'minutes from coming to leaving',
]);

/** A year of one seed over all units: counts are added, days and minutes averaged by unit. */
function valueOf(
  years: readonly ComparedWays[],
  way: number,
  measure: string,
  of: (result: WayResult) => number,
): number {
  const values = years.map(({ ways }) => of(ways[way]!.result));
  const sum = values.reduce((a, b) => a + b, 0);
  return ofPeople.has(measure) ? sum / values.length : sum;
}

function measureRows(years: readonly ComparedWays[]): Row[] {
  const bySeed = [...Map.groupBy(years, ({ seed }) => seed).values()];
  const names = years[0]?.ways.map(({ name }) => name) ?? [];
  return measures.map(([measure, of]) => ({
    measure,
    ways: names.map((name, way) => {
      const values = bySeed.map((some) => valueOf(some, way, measure, of));
      return {
        name,
        mean: values.reduce((sum, value) => sum + value, 0) / values.length,
        least: Math.min(...values),
        most: Math.max(...values),
      };
    }),
  }));
}

const figure = (value: number): string => (Number.isFinite(value) ? value.toFixed(value < 10 ? 1 : 0) : 'never');

function text(units: readonly UnitOfYear[], years: readonly ComparedWays[], rows: readonly Row[]): string {
  const seeds = new Set(years.map(({ seed }) => seed)).size;
  const names = rows[0]?.ways.map(({ name }) => name) ?? [];
  return [
    ...units.map(({ year, demand }) => {
      const asked = years.find(({ unit }) => unit === year.name)?.asked ?? 0;
      return `${year.name}: ${year.places} places a session, ${demand.referralsPerWeek.toFixed(1)} referrals and ${demand.laterPerWeek.toFixed(1)} later doses a week in the notes; here ${asked.toFixed(0)} of 100 places are asked for.`;
    }),
    `A year, ${seeds === 1 ? 'one seed' : `${seeds} seeds`}: mean, and the least and most of the seeds. Made-up people; nothing here was seen in a real unit.`,
    '',
    columnsText(
      ['a year', ...names],
      rows.map(({ measure, ways }) => [
        measure,
        ...ways.map(({ mean, least, most }) => `${figure(mean)} (${figure(least)} to ${figure(most)})`),
      ]),
    ),
    '',
    'Taken for granted, for each way of working alike:',
    columnsText(
      ['what', 'is', 'from'],
      Object.entries(yearAssumptions).map(([name, value]) => [
        name,
        typeof value === 'object' ? Object.values(value).join(', ') : String(value),
        sourcesOfAssumptions[name as keyof typeof yearAssumptions],
      ]),
    ),
  ].join('\n');
}
