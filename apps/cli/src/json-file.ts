/** JSON from a file or from standard input, and what is wrong with it told field by field. */
import { readFileSync } from 'node:fs';
import type { FormatProblem } from '@twelvemonth/planning';
import { type Ending, cannotOpen, misused } from './ending.ts';

const standardInput = 0;

/** `-` is standard input. */
export function jsonFromFile(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path === '-' ? standardInput : path, 'utf8'));
  } catch (error) {
    throw error instanceof SyntaxError
      ? misused(`${path} is not JSON.`)
      : cannotOpen(`The file ${path} cannot be read.`);
  }
}

/** Every problem on a line of its own, with the field it is about. */
export const unusable = (path: string, problems: readonly FormatProblem[]): Ending =>
  misused(
    [
      `${path} cannot be used.`,
      ...problems.map(({ at, says }) => `  ${at === '' ? 'the whole file' : at}: ${says}.`),
    ].join('\n'),
  );
