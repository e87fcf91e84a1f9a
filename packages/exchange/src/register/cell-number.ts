/**
 * A measured value as people write it: comparator, number and, where the cell says it, its own unit. The figures stay as
 * written; nothing is rounded, no comma is turned into a point unless the mapping says that commas are points here.
 */
import { parseScaled, scaledText, type Comparator, type Measure } from '@twelvemonth/clinical';
import type { RegisterMapping } from './mapping.ts';
import type { ProblemName } from './problem.ts';
import { isSomeUnit, unitFromText } from './unit-words.ts';

export type NumberProblem = { readonly problem: ProblemName; readonly says: string; readonly remedy: string };
export type NumberRead =
  | {
      readonly comparator: Comparator;
      readonly value: string;
      /** Set when the cell itself says it. */ readonly ownUnit: string | undefined;
      readonly converted?: string;
    }
  | NumberProblem;

const problem = (name: ProblemName, says: string, remedy: string): NumberProblem => ({ problem: name, says, remedy });

/** "9st 4lb" as pounds, `5'4"` as inches, "1.62 m" as centimetres: exact conversions, told as such. */
function compound(measure: Measure, text: string): NumberRead | undefined {
  if (measure === 'weight') {
    const match = /^(\d{1,2})\s*st(?:one|ones)?\.?,?\s*(?:(\d{1,2})\s*(?:lbs?|pounds?)?\.?)?$/i.exec(text);
    if (match === null) return undefined;
    const pounds = Number(match[2] ?? 0);
    if (pounds > 13)
      return problem('number-not-read', `${text} has more than 13 pounds beside the stones`, 'correct the cell');
    const value = String(Number(match[1]) * 14 + pounds);
    return { comparator: '', value, ownUnit: 'lb', converted: `${text} is ${value} lb` };
  }
  if (measure !== 'height') return undefined;
  const feet = /^(\d)\s*(?:'|ft|feet|foot)\.?\s*(?:(\d{1,2}(?:\.\d)?)\s*(?:"|''|ins?|inch|inches)?)?$/i.exec(text);
  if (feet !== null) {
    const inches = parseScaled(feet[2] ?? '0') ?? 0;
    const value = scaledText((Number(feet[1]) * 12 * 10_000 + inches) as Parameters<typeof scaledText>[0]);
    return { comparator: '', value, ownUnit: 'in', converted: `${text} is ${value} in` };
  }
  const metres = /^([12][.,]\d{2})\s*m$/i.exec(text);
  if (metres === null) return undefined;
  const value = (metres[1] ?? '').replace(/[.,]/, '');
  return { comparator: '', value, ownUnit: 'cm', converted: `${text} is ${value} cm` };
}

/** Reads a cell of a measured column. An empty cell is the caller's to notice. */
export function readNumber(cell: string, measure: Measure, decimal: RegisterMapping['decimal']): NumberRead {
  const text = cell.replaceAll(/[\u00A0\u202F]/g, ' ').trim();
  const whole = compound(measure, text);
  if (whole !== undefined) return whole;
  const match = /^(<=|>=|<|>|≤|≥)?\s*([\d.,]+)\s*(.*)$/.exec(text);
  const figures = match?.[2] ?? '';
  const unitText = match?.[3] ?? '';
  const ownUnit = unitText === '' ? undefined : unitFromText(measure, unitText);
  if (match === null || !/\d/.test(figures) || (unitText !== '' && ownUnit === undefined))
    return notANumber(cell, text, measure, unitText);
  const value = figuresAsNumber(figures, decimal);
  if (typeof value !== 'string') return value;
  const comparator = (match[1] ?? '').replace('≤', '<=').replace('≥', '>=') as Comparator;
  return { comparator, value, ownUnit };
}

/** Why a text is no number: a letter among the figures, a unit of something else, or anything else. */
function notANumber(cell: string, text: string, measure: Measure, unitText: string): NumberProblem {
  const mixed = /^(?:<=|>=|<|>|≤|≥)?\s*([\d.,OolI]+)\s*(.*)$/.exec(text);
  const figures = mixed?.[1] ?? '';
  const after = mixed?.[2] ?? '';
  if (/\d/.test(figures) && /[OolI]/.test(figures) && (after === '' || unitFromText(measure, after) !== undefined)) {
    const meant = figures.replaceAll(/[Oo]/g, '0').replaceAll(/[lI]/g, '1');
    return problem(
      'letter-for-figure',
      `"${cell}" holds a letter where a figure should stand`,
      `if ${meant} is meant, write ${meant}`,
    );
  }
  if (unitText !== '' && isSomeUnit(unitText))
    return problem(
      'unit-of-something-else',
      `"${unitText}" is not a unit of ${measure}`,
      'check the cell and the column',
    );
  return problem(
    'number-not-read',
    `"${cell}" is not a number`,
    'write the number alone, with its unit if you wish, or clear the cell if nothing is known',
  );
}

function figuresAsNumber(figures: string, decimal: RegisterMapping['decimal']): string | NumberProblem {
  const other = decimal === '.' ? ',' : '.';
  if (figures.includes(other)) {
    return problem(
      decimal === '.' ? 'decimal-comma' : 'decimal-point',
      `"${figures}" has a ${decimal === '.' ? 'comma' : 'point'}, where this file writes a ${decimal === '.' ? 'point' : 'comma'}`,
      decimal === '.'
        ? 'if the whole file writes commas, say so in the mapping; otherwise correct the cell'
        : 'correct the cell, or the mapping',
    );
  }
  const pointed = figures.replace(',', '.');
  if (parseScaled(pointed) !== undefined) return pointed;
  // Zeros a spreadsheet added; a figure other than nought there would be more than a laboratory prints.
  const shortened = pointed.replace(/(\.\d{4})0+$/, '$1');
  if (parseScaled(shortened) !== undefined) return shortened;
  return /^\d+\.\d{5,}$/.test(pointed)
    ? problem(
        'too-many-decimals',
        `${figures} has more than four decimals`,
        'write the value as the laboratory printed it',
      )
    : problem('number-not-read', `"${figures}" is not a number`, 'write the number alone');
}
