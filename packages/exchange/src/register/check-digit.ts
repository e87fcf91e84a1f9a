/**
 * Numbers of ten figures whose last one checks the others (modulus 11, the scheme of the English health service's
 * patient number; references: its published algorithm). Only remarked on, and only where nearly all numbers of the file
 * follow it: other hospitals' numbers may have ten figures by chance.
 */
import { reportInto } from './problem.ts';
import type { RowRead } from './row.ts';

/** Fewest numbers, and share of them, that must follow the scheme before those that do not are remarked on. */
const fewest = 20;
const share = 0.9;

export function followsCheckDigit(number: string): boolean {
  const figures = number.replaceAll(/\s|-/g, '');
  if (!/^\d{10}$/.test(figures) || /^(\d)\1{9}$/.test(figures)) return false;
  let sum = 0;
  for (let index = 0; index < 9; index += 1) sum += Number(figures[index]) * (10 - index);
  const check = (11 - (sum % 11)) % 11;
  return check !== 10 && check === Number(figures[9]);
}

export function checkCheckDigits(rows: readonly RowRead[]): void {
  const numbered = rows.filter((row) => row.person.number !== undefined);
  const following = numbered.filter((row) => followsCheckDigit(row.person.number ?? ''));
  if (following.length < fewest || following.length < numbered.length * share || following.length === numbered.length)
    return;
  const good = new Set(following);
  for (const row of numbered) {
    if (!good.has(row))
      reportInto(row.problems, row.row)(
        '',
        'number-check-digit',
        row.person.number ?? '',
        `the last figure of ${row.person.number} does not check the others, as it does in the other rows`,
        'check the number',
      );
  }
}
