/** Each start comes back a year later, and the year after that: what recall does to the number of places needed. */

/** Infusions a year when the same number starts every year and these shares come back after dose 1, 2, ... */
export function infusionsPerYear(startsPerYear: number, returns: readonly number[]): number {
  let stay = 1;
  let infusions = startsPerYear;
  for (const share of returns) {
    stay *= share;
    infusions += startsPerYear * stay;
  }
  return infusions;
}

/** Share of those who start that have every dose of the course. */
export const completing = (returns: readonly number[]): number => returns.reduce((stay, share) => stay * share, 1);
