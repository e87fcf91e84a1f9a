/** Whether two entries of a register may be one person under two numbers (practice hazard 63: split history, early dose). */
import { nameLetters } from './cell-name.ts';

export type PersonName = {
  readonly number: string;
  readonly family: string;
  readonly given: string;
  readonly formerNames: readonly string[];
  /** As recorded: `1941-06-02`, `1941-06` or `1941`. */
  readonly born: string;
};

/** A number as it is compared: figures and letters only. */
export const numberKey = (number: string): string => number.replaceAll(/[^\p{L}\p{N}]/gu, '').toUpperCase();

/** Fewest single-letter changes from one text to the other, swaps of neighbours counted as one; no further than `most`. */
export function lettersApart(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(change, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      row.push(least);
    }
    [before, above] = [above, row];
  }
  return above[b.length] ?? 0;
}

const near = (a: string, b: string): boolean => {
  const [x, y] = [nameLetters(a), nameLetters(b)];
  if (x === '' || y === '') return false;
  const most = Math.min(x.length, y.length) > 5 ? 2 : 1;
  return x === y || lettersApart(x, y, most) <= most;
};

/** One birth date may be the other's beginning: `1941` and `1941-06-02`. */
const birthsAgree = (a: string, b: string): boolean => a.startsWith(b) || b.startsWith(a);

export type Likeness = 'likely' | 'possible' | 'no';

/** How likely two people with different numbers are the same. Same birth date is needed for any likeness. */
export function likeness(a: PersonName, b: PersonName): Likeness {
  if (!birthsAgree(a.born, b.born)) return 'no';
  const families = [a.family, ...a.formerNames].some((one) =>
    [b.family, ...b.formerNames].some((other) => near(one, other)),
  );
  const initials = nameLetters(a.given)[0] !== undefined && nameLetters(a.given)[0] === nameLetters(b.given)[0];
  const wholeDates = a.born.length === 10 && b.born.length === 10;
  if (families && (near(a.given, b.given) || (initials && wholeDates))) return 'likely';
  if (near(a.family, b.given) && near(a.given, b.family)) return 'likely';
  return wholeDates && (families || near(a.given, b.given)) ? 'possible' : 'no';
}

/** Whether two rows under the same number can be about one person. */
export function samePerson(a: PersonName, b: PersonName): boolean {
  if (!birthsAgree(a.born, b.born)) return false;
  const families = [a.family, ...a.formerNames].some((one) =>
    [b.family, ...b.formerNames].some((other) => near(one, other)),
  );
  // A married name: the given name and a whole birth date still agree.
  return families || (near(a.given, b.given) && a.born.length === 10 && b.born.length === 10);
}
