/** Says things in one language: words filled in, dates and times as people there read them. */
import { type Day, civilFromDay, longDate } from '@twelvemonth/clinical';
import type { PackLanguage } from './facts.ts';
import { type PackWords, wordsEnGB } from './words-en-gb.ts';
import { wordsEnUS } from './words-en-us.ts';

export const packWords: Readonly<Record<PackLanguage, PackWords>> = { 'en-GB': wordsEnGB, 'en-US': wordsEnUS };

export type Speaker = {
  readonly say: (key: keyof PackWords, values?: Readonly<Record<string, string>>) => string;
  /** A list whose items are written with a bar between them. */
  readonly items: (key: keyof PackWords) => readonly string[];
  readonly date: (day: Day) => string;
  readonly time: (time: string) => string;
};

export function speakerFor(language: PackLanguage): Speaker {
  const words = packWords[language];
  const { date, time } = ways[language];
  return {
    say: (key, values = {}) =>
      words[key].replaceAll(/\{(\w+)\}/g, (_, name: string) => {
        const value = values[name];
        if (value === undefined) throw new Error(`"${key}" wants ${name}`);
        return value;
      }),
    items: (key) => words[key].split('|'),
    date,
    time,
  };
}

const ways: Readonly<Record<PackLanguage, Pick<Speaker, 'date' | 'time'>>> = {
  'en-GB': { date: longDate, time: (time) => time },
  'en-US': { date: americanDate, time: twelveHours },
};

/** "Thursday, December 3, 2026" from "Thursday 3 December 2026" */
function americanDate(day: Day): string {
  const [weekday = '', number = '', month = ''] = longDate(day).split(' ');
  return `${weekday}, ${month} ${number}, ${civilFromDay(day).year}`;
}

/** "1:30 pm" from "13:30" */
function twelveHours(time: string): string {
  const [hours = '0', minutes = '00'] = time.split(':');
  const hour = Number(hours);
  return `${hour % 12 === 0 ? 12 : hour % 12}:${minutes} ${hour < 12 ? 'am' : 'pm'}`;
}
