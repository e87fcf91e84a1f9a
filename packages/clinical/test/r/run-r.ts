/** R, where it is there: one call of a script beside this file. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const scriptNamed = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** What cannot be run here, in words, or undefined. Debian: r-base-core, r-cran-survival. */
export function missingFromR(packageName?: string): string | undefined {
  const probe = packageName === undefined ? 'q()' : `library(${packageName})`;
  const { error, status } = spawnSync('Rscript', ['--vanilla', '-e', probe], { encoding: 'utf8' });
  if (error !== undefined) return 'R is not here';
  return status === 0 ? undefined : `R is here, its package ${packageName} is not`;
}

/** A table as rows of text by column. */
export type Table = readonly Readonly<Record<string, string>>[];

export function fromR(input: Table, ...args: readonly string[]): Table {
  const columns = Object.keys(input[0] ?? {});
  const text = [columns, ...input.map((row) => columns.map((column) => row[column] ?? ''))]
    .map((cells) => cells.join('\t'))
    .join('\n');
  return printedByR('formulas.R', { args, input: `${text}\n` });
}

export function printedByR(
  script: string,
  { args = [], input = '' }: { readonly args?: readonly string[]; readonly input?: string } = {},
): Table {
  const { stdout, stderr, status } = spawnSync('Rscript', ['--vanilla', scriptNamed(script), ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (status !== 0) throw new Error(`R stopped: ${stderr}`);
  const [head = '', ...lines] = stdout.trimEnd().split('\n');
  const names = head.split('\t');
  return lines.map((line) => {
    const cells = line.split('\t');
    return Object.fromEntries(names.map((name, index) => [name, (cells[index] ?? '').trim()]));
  });
}
