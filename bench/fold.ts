/** What it costs to read a ledger: the fold that stands behind every screen and every decision. */
import { entriesFromDrafts, parseLedger, recordOf, type Entry } from '../packages/clinical/src/index.ts';
import { bestMilliseconds, type Bench } from './figure.ts';

const sizes = [200, 2_000, 20_000];

/** A long life in the notes: a weight and a creatinine a day, every tenth weight corrected. */
function longLedger(entries: number): Entry[] {
  const lines = Array.from({ length: entries }, (_, index) => {
    const day = `${1 + (index % 28)} Mar ${2000 + (Math.floor(index / 28) % 26)}`;
    if (index % 20 === 0) return `${day}   #w${index} weight 56.2 kg measured`;
    if (index % 20 === 10) return `${day}   weight 56.4 kg measured corrects #w${index - 10}`;
    return index % 2 === 0 ? `${day}   weight 56.2 kg measured` : `${day}   creatinine 88 umol/L`;
  });
  const read = parseLedger(lines.join('\n'));
  if (!read.ok) throw new Error(read.problems.map((problem) => `${problem.line}: ${problem.says}`).join('\n'));
  return entriesFromDrafts(read.drafts, { start: '2026-01-01T00:00:00.000Z' });
}

export const bench: Bench = async () => {
  const figures = [];
  for (const size of sizes) {
    const entries = longLedger(size);
    const milliseconds = await bestMilliseconds(() => recordOf('patient/person', entries));
    figures.push({ what: `fold a ledger of ${size} entries`, value: milliseconds, unit: 'ms' });
  }
  return figures;
};
