/** Finds the line that names the columns, below any title lines, and gives every column a name of its own. */
import { meaningOfHeader } from './header-words.ts';

const linesLookedAt = 30;
const holdsFigures = (cell: string): boolean => /^[<>≤≥]?\d[\d.,/: -]*$/.test(cell);

/** How much a line looks like a header: words the register habit knows count most, figures count against it. */
function score(cells: readonly string[]): number {
  const filled = cells.filter((cell) => cell !== '');
  if (filled.length < 2) return Number.NEGATIVE_INFINITY;
  const known = filled.filter((cell) => cell.length <= 60 && meaningOfHeader(cell) !== undefined).length;
  const figures = filled.filter(holdsFigures).length;
  return known * 5 - figures * 5 + new Set(filled).size;
}

/** The index of the header among the first lines; undefined if no line has two cells. */
export function headerIndex(records: readonly (readonly string[])[]): number | undefined {
  let best: number | undefined;
  let bestScore = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < Math.min(records.length, linesLookedAt); index += 1) {
    const found = score(records[index] ?? []);
    if (found > bestScore) [best, bestScore] = [index, found];
  }
  return best;
}

/** Names for the columns: empty ones are numbered, repeated ones are told apart. Trailing empty columns are dropped. */
export function distinctNames(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex((cell) => cell !== '');
  const taken = new Set<string>();
  return cells.slice(0, last + 1).map((cell, index) => {
    const name = cell.replaceAll(/\s+/g, ' ').trim() || `column ${index + 1}`;
    let distinct = name;
    for (let again = 2; taken.has(distinct); again += 1) distinct = `${name} (${again})`;
    taken.add(distinct);
    return distinct;
  });
}
