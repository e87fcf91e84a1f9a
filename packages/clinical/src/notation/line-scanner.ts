/**
 * Reads one line from left to right and remembers how far it got and what it wanted there, so that a mistake is told at
 * its place. Nothing here knows a kind of entry.
 */
import { type PlainDate, parseDay, parseShortDate, plainDate } from '../calendar/day.ts';

export type Found<Value> = { readonly value: Value };

export type LineScanner = {
  readonly text: string;
  at: number;
  /** The farthest place at which something else was wanted, and what. */
  wantedAt: number;
  wanted: string[];
};

export const scannerOf = (text: string): LineScanner => ({ text, at: 0, wantedAt: 0, wanted: [] });

export function want(scanner: LineScanner, what: string): undefined {
  if (scanner.at > scanner.wantedAt) {
    scanner.wantedAt = scanner.at;
    scanner.wanted = [];
  }
  if (scanner.at === scanner.wantedAt && !scanner.wanted.includes(what)) scanner.wanted.push(what);
  return undefined;
}

function skipSpace(scanner: LineScanner): void {
  while (scanner.text[scanner.at] === ' ' || scanner.text[scanner.at] === '\t') scanner.at += 1;
}

export const atEnd = (scanner: LineScanner): boolean => {
  skipSpace(scanner);
  return scanner.at >= scanner.text.length;
};

/** Takes what a sticky pattern matches here, or leaves the place as it was. */
export function take(scanner: LineScanner, pattern: RegExp, what: string): string | undefined {
  skipSpace(scanner);
  pattern.lastIndex = scanner.at;
  const match = pattern.exec(scanner.text);
  if (match === null) return want(scanner, what);
  scanner.at += match[0].length;
  return match[0];
}

const isWordCharacter = (character: string | undefined): boolean =>
  character !== undefined && /[A-Za-z0-9_-]/.test(character);

/** Takes exactly these words (single spaces in them stand for any spacing), ending at a word's end. */
export function takeWords(scanner: LineScanner, words: string, what = `"${words}"`): boolean {
  const start = scanner.at;
  skipSpace(scanner);
  for (const part of words.split(' ')) {
    skipSpace(scanner);
    if (!scanner.text.startsWith(part, scanner.at)) {
      want(scanner, what);
      scanner.at = start;
      return false;
    }
    scanner.at += part.length;
  }
  if (isWordCharacter(words[words.length - 1]) && isWordCharacter(scanner.text[scanner.at])) {
    scanner.at = start;
    want(scanner, what);
    return false;
  }
  return true;
}

/** The longest of several wordings that stands here. */
export function takeOneOf(scanner: LineScanner, wordings: readonly string[]): string | undefined {
  for (const wording of wordings.toSorted((a, b) => b.length - a.length)) {
    if (
      takeWords(scanner, wording, wordings.length > 12 ? 'one of the known words' : `one of: ${wordings.join(' | ')}`)
    ) {
      return wording;
    }
  }
  return undefined;
}

/** Quoted as JSON quotes, so that any text can be written on one line. */
export const quoted = (text: string): string => JSON.stringify(text);

export function takeQuoted(scanner: LineScanner): Found<string> | undefined {
  const start = scanner.at;
  const text = take(scanner, /"(?:[^"\\]|\\.)*"/y, 'a text in "double quotes"');
  if (text === undefined) return undefined;
  try {
    return { value: JSON.parse(text) as string };
  } catch {
    scanner.at = start;
    return want(scanner, 'a text in "double quotes" in which \\ stands before " or \\');
  }
}

export function takeDate(scanner: LineScanner): Found<PlainDate> | undefined {
  const start = scanner.at;
  const text = take(scanner, /\d{4}-\d{2}-\d{2}(?![\dT])|\d{1,2} +[A-Za-z]{3,9} +\d{4}/y, 'a date such as 3 Mar 2026');
  if (text === undefined) return withoutYear(scanner);
  const day = parseDay(text) ?? parseShortDate(text.replace(/ +/g, ' '));
  if (day !== undefined) return { value: plainDate(day) };
  scanner.at = start;
  return want(scanner, `a date that exists (${text} does not)`);
}

/** "3 Mar weight ...": a day and a month that stand there without their year. */
function withoutYear(scanner: LineScanner): undefined {
  const yearless = /^\s*(\d{1,2} +(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*)(?![a-z])/i.exec(
    scanner.text.slice(scanner.at),
  )?.[1];
  return yearless === undefined ? undefined : want(scanner, `the year of ${yearless}, which is never guessed`);
}

/** One plain word: what needs no quotes. */
export const isPlainWord = (text: string): boolean => /^(?:-(?=\d))?[A-Za-z0-9][A-Za-z0-9._/:-]*$/.test(text);

export function takePlainWord(scanner: LineScanner): Found<string> | undefined {
  const text = take(scanner, /(?:-(?=\d))?[A-Za-z0-9][A-Za-z0-9._/:-]*/y, 'a word, or a text in "double quotes"');
  return text === undefined ? undefined : { value: text };
}

export function takeLabel(scanner: LineScanner): string | undefined {
  return take(scanner, /#[A-Za-z0-9._-]{1,80}/y, 'a label such as #a')?.slice(1);
}

/** A comment begins with a semicolon outside quotes. */
export function withoutComment(line: string): string {
  let inQuotes = false;
  for (let index = 0; index < line.length; index += 1) {
    const character = line[index];
    if (inQuotes && character === '\\') index += 1;
    else if (character === '"') inQuotes = !inQuotes;
    else if (character === ';' && !inQuotes) return line.slice(0, index);
  }
  return line;
}
