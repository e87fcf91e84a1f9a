/**
 * What can be wrong with a row, by name. A problem that blocks makes the row wait until someone settles it; the others are
 * shown and the row is taken in without what could not be read.
 */
import type { RowProblemView } from '../contract/import.ts';

/** Whether a problem holds the row back. Severity is decided here and nowhere else. */
const blocking = {
  // The row as such
  'too-many-cells': true,
  'broken-characters': true,
  'does-not-fit': true,
  'formula-text': false,
  // Who it is
  'number-missing': true,
  'number-twice': true,
  'number-check-digit': false,
  'name-missing': true,
  'name-order-supposed': false,
  'birth-date-missing': true,
  'birth-date-in-part': false,
  'age-implausible': true,
  'very-young': false,
  'sex-not-known': false,
  'sex-not-read': true,
  'rows-disagree': true,
  'waits-with-another-row': true,
  'number-of-another-person': true,
  'looks-like-someone': true,
  'may-be-someone': false,
  // Dates
  'date-not-read': true,
  'no-such-date': true,
  'two-dates': true,
  'date-in-part': true,
  'day-number': true,
  'in-the-future': true,
  'before-birth': true,
  'after-death': true,
  'before-the-medicine': true,
  'doses-near': false,
  'last-dose-not-the-last': false,
  'date-without-value': false,
  'value-without-date': false,
  // Numbers
  'number-not-read': true,
  'letter-for-figure': true,
  'decimal-comma': true,
  'decimal-point': true,
  'too-many-decimals': true,
  'unit-of-something-else': true,
  'unit-not-known': true,
  'impossible-value': true,
  'looks-like-other-unit': true,
  'unusual-value': false,
  converted: false,
  'weight-jump': false,
  'weight-like-other-unit': true,
  // Words
  'medicine-not-read': true,
  'word-not-read': false,
  'consent-not-brought-in': false,
  'differs-from-notes': true,
  'allergy-differs': true,
  'contact-differs': false,
} as const satisfies Readonly<Record<string, boolean>>;
export type ProblemName = keyof typeof blocking;

export type RowProblem = RowProblemView & { readonly problem: ProblemName };

const blocks = (name: ProblemName): boolean => blocking[name];

/** Collects the problems of one row. */
export type Report = (column: string, problem: ProblemName, cell: string, says: string, remedy: string) => void;

export function reportInto(problems: RowProblem[], row: number): Report {
  return (column, problem, cell, says, remedy) => {
    problems.push({ row, column, problem, says, remedy, cell, blocks: blocks(problem) });
  };
}
