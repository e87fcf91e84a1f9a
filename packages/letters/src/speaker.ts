/** Says things in one language: words filled in, dates and times as people there read them. */
import { type Day, type LetterSheet, civilFromDay, inAmerican, longDate, shortDate } from '@twelvemonth/clinical';

export type Language = LetterSheet['language'];

export type Speaker<Key extends string> = {
  readonly say: (key: Key, values?: Readonly<Record<string, string | undefined>>) => string;
  /** A list whose items are written with a bar between them. */
  readonly items: (key: Key) => readonly string[];
  readonly date: (day: Day) => string;
  readonly time: (time: string) => string;
  /** "between Monday 2 June 2026 and Friday 6 June 2026"; of a single day "on Monday 2 June 2026". */
  readonly within: (days: DaySpan) => string;
};

export type DaySpan = { readonly from: Day; readonly until: Day };

export function speakerOf<Key extends string>(words: Readonly<Record<Key, string>>, language: Language): Speaker<Key> {
  const { date, time, within } = ways[language];
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
    within: (days) => within(days, date),
  };
}

type Ways = {
  readonly date: (day: Day) => string;
  readonly time: (time: string) => string;
  readonly within: (days: DaySpan, date: (day: Day) => string) => string;
};
const ways: Readonly<Record<Language, Ways>> = {
  'en-GB': { date: longDate, time: (time) => time, within: englishSpan },
  'en-US': { date: americanDate, time: twelveHours, within: englishSpan },
};

/** A single day is not a span: nobody says "between Monday and Monday". */
export function englishSpan({ from, until }: DaySpan, date: (day: Day) => string): string {
  return from === until ? `on ${date(from)}` : `between ${date(from)} and ${date(until)}`;
}

/** "Thursday, December 3, 2026" from "Thursday 3 December 2026" */
function americanDate(day: Day): string {
  const [weekday = '', number = '', month = ''] = longDate(day).split(' ');
  return `${weekday}, ${month} ${number}, ${civilFromDay(day).year}`;
}

/** "3 Dec 2026", or "Dec 3, 2026". */
export function shortDateIn(language: Language, day: Day): string {
  if (language === 'en-GB') return shortDate(day);
  const [number = '', month = '', year = ''] = shortDate(day).split(' ');
  return `${month} ${number}, ${year}`;
}

/** "Monday 2 June 2026", or "Monday, June 2, 2026". */
export const weekdayDateIn = (language: Language, day: Day): string => ways[language].date(day);

/** "2 June 1941", or "June 2, 1941". */
export function longDateIn(language: Language, day: Day): string {
  const [, number = '', month = '', year = ''] = longDate(day).split(' ');
  return language === 'en-GB' ? `${number} ${month} ${year}` : `${month} ${number}, ${year}`;
}

/** A sentence of ours in the words of a language. */
export const saidIn = (language: Language, says: string): string => (language === 'en-US' ? inAmerican(says) : says);

/** The paper a unit prints on, as a style sheet calls it. */
export const paperOf = (language: Language): 'A4' | 'letter' => (language === 'en-US' ? 'letter' : 'A4');

/** "1:30 pm" from "13:30" */
function twelveHours(time: string): string {
  const [hours = '0', minutes = '00'] = time.split(':');
  const hour = Number(hours);
  return `${hour % 12 === 0 ? 12 : hour % 12}:${minutes} ${hour < 12 ? 'am' : 'pm'}`;
}
