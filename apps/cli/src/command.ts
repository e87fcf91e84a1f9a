/** What a command is, and how its options are read: what is not offered is refused, nothing is guessed. */
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { type Day, isPlainDate, day } from '@twelvemonth/clinical';
import { misused } from './ending.ts';

export type Output = {
  /** What was asked for: standard output. */
  readonly out: (text: string) => void;
  /** What a person should know beside it: standard error. */
  readonly aside: (text: string) => void;
  /** How far something is, each in place of the one before; only where somebody watches. Nothing: the line is empty again. */
  readonly passing?: (text: string) => void;
};

export type Command = {
  /** One line for the list of commands. */
  readonly summary: string;
  readonly help: string;
  readonly run: (args: readonly string[], output: Output) => Promise<number>;
};

type Options = NonNullable<ParseArgsConfig['options']>;

/** Reads options as `parseArgs` does; a mistake is told as one, with the way to the help. */
export function readOptions<const O extends Options>(args: readonly string[], options: O) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw misused(`${error instanceof Error ? error.message.split('. ')[0] : String(error)}.`);
  }
}

export function dateOption(name: string, text: string | undefined): Day | undefined {
  if (text === undefined) return undefined;
  if (!isPlainDate(text)) throw misused(`--${name} ${text} is not a date: write it as 2026-11-25.`);
  return day(text);
}

export function wholeOption(name: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most)
    throw misused(`--${name} is a whole number from ${least} to ${most}.`);
  return value;
}

/** Seeds are whole numbers of 31 bits. */
export const mostSeed = 2 ** 31 - 1;
