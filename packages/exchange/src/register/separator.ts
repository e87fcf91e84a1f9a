/** Which character separates the cells: the one that cuts the first lines most evenly. */
import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import type { Separator } from './table.ts';

const candidates: readonly Separator[] = [',', ';', '\t', '|'];
const linesLookedAt = 40;

function evenness(text: string, separator: Separator): number {
  let widths: number[];
  try {
    widths = parse(text, {
      delimiter: separator,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_quotes: true,
      relax_column_count: true,
      to: linesLookedAt,
    })
      .filter((record) => record.some((cell) => cell.trim() !== ''))
      .map((record) => record.length);
  } catch (cause) {
    if (cause instanceof CsvError) return 0;
    throw cause;
  }
  const counts = new Map<number, number>();
  for (const width of widths) if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
  let best = 0;
  // Many lines of the same width weigh most; among equals the wider table.
  for (const [width, lines] of counts) best = Math.max(best, (lines / widths.length) * 1000 + width);
  return best;
}

/** The likeliest separator; a comma where nothing tells. */
export function separatorOf(text: string): Separator {
  let chosen: Separator = ',';
  let best = 0;
  for (const candidate of candidates) {
    const score = evenness(text, candidate);
    if (score > best) [chosen, best] = [candidate, score];
  }
  return chosen;
}
