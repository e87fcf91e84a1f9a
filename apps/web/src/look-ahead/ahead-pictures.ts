/** The coming years as pictures: places asked for against those there are, and the wait against the target. */
import { type Drawing, rangesDrawing } from '@twelvemonth/charts';
import { addDays, day, plainDate } from '@twelvemonth/clinical';
import type { AheadAnswer, Offer, Ranges } from '@twelvemonth/planning';
import { shortDay } from '../words/dates.ts';

const daysPerWeek = 7;
const weeksPerYear = 52;
const weeksPerQuarter = 13;
/** On narrow pictures every second quarter has its word. */
const wordWidth = 95;

const one = (value: number | undefined): string => (value ?? 0).toFixed(1);

export type PictureOf = {
  readonly answer: AheadAnswer;
  /** As things stand, where something was changed. */
  readonly before: AheadAnswer | undefined;
  readonly today: string;
  /** Weeks that one value of the ranges stands for. */
  readonly every: number;
};

const dateAfter = (today: string, weeks: number): string =>
  shortDay(plainDate(addDays(day(today), weeks * daysPerWeek)));

function ticksOf(today: string, every: number, count: number, width: number) {
  const quarters = Math.ceil((count * every) / weeksPerQuarter);
  const each = Math.max(1, Math.ceil((quarters * wordWidth) / width));
  return Array.from({ length: quarters }, (_, quarter) => quarter)
    .filter((quarter) => quarter % each === 0)
    .map((quarter) => ({
      at: (quarter * weeksPerQuarter) / every,
      says: dateAfter(today, quarter * weeksPerQuarter).replace(/^\d+ /, ''),
    }));
}

function rowsOf(today: string, every: number, of: Ranges): string[][] {
  const perQuarter = Math.round(weeksPerQuarter / every);
  return of.mean.flatMap((mean, at) =>
    at % perQuarter === perQuarter - 1
      ? [
          [
            dateAfter(today, (at + 1) * every),
            one(mean),
            `${one(of.low80[at])} to ${one(of.high80[at])}`,
            `${one(of.low95[at])} to ${one(of.high95[at])}`,
          ],
        ]
      : [],
  );
}

const meanOfYear = ({ mean }: Ranges, year: number, every: number): number => {
  const values = mean.slice((year * weeksPerYear) / every, ((year + 1) * weeksPerYear) / every);
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
};

export function demandPicture({ answer, before, today, every }: PictureOf, offer: Offer, width: number): Drawing {
  const { demand } = answer.found;
  const years = [0, 1, 2].map((year) => one(meanOfYear(demand, year, every)));
  return rangesDrawing(
    {
      id: 'demand',
      sentence: `Places asked for, on average: ${years[0]} a week in the first year, ${years[1]} in the second, ${years[2]} in the third. There are ${one(offer.placesPerWeek)}.`,
      table: {
        caption: `Places asked for a week, each a mean of ${every} weeks`,
        head: ['until', 'on average', 'four in five futures', 'nineteen in twenty'],
        rows: rowsOf(today, every, demand),
      },
      ...demand,
      against: { value: offer.placesPerWeek, says: `${one(offer.placesPerWeek)} places a week` },
      before: before?.found.demand.mean,
      ticks: ticksOf(today, every, demand.mean.length, width),
      unit: 'places a week',
    },
    width,
  );
}

export function waitPicture({ answer, before, today, every }: PictureOf, targetWeeks: number, width: number): Drawing {
  const { wait } = answer.found;
  const last = wait.mean.length - 1;
  return rangesDrawing(
    {
      id: 'wait',
      sentence: `Somebody who joins at the end of the three years waits ${one(wait.mean[last])} weeks on average, in four of five futures ${one(wait.low80[last])} to ${one(wait.high80[last])}; the target is ${targetWeeks}.`,
      table: {
        caption: 'Weeks that somebody who joins waits',
        head: ['until', 'on average', 'four in five futures', 'nineteen in twenty'],
        rows: rowsOf(today, every, wait),
      },
      ...wait,
      against: { value: targetWeeks, says: `target: ${targetWeeks} weeks` },
      before: before?.found.wait.mean,
      ticks: ticksOf(today, every, wait.mean.length, width),
      unit: 'weeks of waiting',
    },
    width,
  );
}
