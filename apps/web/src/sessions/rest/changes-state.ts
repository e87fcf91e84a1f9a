/** What somebody says of the rest of the day that stands in no entry, as it is typed. */
import type { DayChanges, SoFar } from '@twelvemonth/planning';

export type ChangesTyped = {
  readonly nurses: number | undefined;
  readonly chairs: number | undefined;
  readonly checkers: number | undefined;
  /** By name, as typed. */
  readonly comes: Readonly<Record<string, string>>;
  readonly longer: Readonly<Record<string, number | undefined>>;
};

const isTime = (text: string): boolean => /^(?:[01]\d|2[0-3]):[0-5]\d$/.test(text);

/** By name: what was typed and is no time. */
export const notTimes = ({ comes }: ChangesTyped): readonly string[] =>
  Object.entries(comes).flatMap(([name, typed]) => (typed.trim() === '' || isTime(typed.trim()) ? [] : [name]));

export const changesOf = ({ nurses, chairs, checkers, comes, longer }: ChangesTyped): DayChanges => ({
  nurses,
  chairs,
  checkers,
  comes: new Map(
    Object.entries(comes).flatMap(([name, typed]) => (isTime(typed.trim()) ? [[name, typed.trim()]] : [])),
  ),
  runsLonger: new Map(
    Object.entries(longer).flatMap(([name, minutes]) => (minutes === undefined ? [] : [[name, minutes]])),
  ),
});

/** Told a time that has passed, and not here. */
export const isLateNow = (so: SoFar, told: string | undefined, time: string): boolean =>
  so.state === 'expected' && told !== undefined && told < time;
