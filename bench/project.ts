/**
 * Plain project scheduling: the sample of PSPLIB files beside the product, which are not ours to give on. `npm run bench --
 * project` says so when they are absent. Beside each set: a general constraint solver given 30 s a file, in its own run.
 */
import { existsSync, readFileSync } from 'node:fs';
import { type Project, brokenIn, readProject, scheduleProject } from '../packages/planning/src/index.ts';
import type { Bench, Figure } from './figure.ts';
import { afterMilliseconds, timed } from './processor-time.ts';
import { peersFolder } from './shared-peers.ts';

const unlimited = 100_000_000;

const sets = [
  { name: 'j30', milliseconds: 50, beside: 'a general solver: all at best known, 0.98 s each' },
  { name: 'j60', milliseconds: 300, beside: 'a general solver: 1.65 %, 5.3 s each' },
  { name: 'j120', milliseconds: 1_000, beside: 'a general solver: 6.52 %, 21.7 s each' },
] as const;

type Known = { readonly file: string; readonly best: number };

/** The second number of a range is the best length known. */
function knownFiles(folder: URL): Known[] {
  const lines = readFileSync(new URL('best.csv', folder), 'utf8').trim().split('\n').slice(1);
  return lines.map((line) => {
    const [file = '', best = ''] = line.split(',');
    return { file, best: Number(best.split('..').at(-1)) };
  });
}

function projectIn(folder: URL, file: string): Project {
  const read = readProject(readFileSync(new URL(file, folder), 'utf8'));
  if (!read.ok) throw new Error(`${file}: ${read.problems.join(', ')}`);
  return read.project;
}

const isOf = (file: string, set: string): boolean =>
  file.startsWith(set) && (set.length > 3 || !file.startsWith('j120'));

export const bench: Bench = async () => {
  const folder = peersFolder === undefined ? undefined : new URL('psplib/', peersFolder);
  if (folder === undefined || !existsSync(folder)) {
    console.log('  the PSPLIB files are absent: nothing measured');
    return [];
  }
  const figures: Figure[] = [];
  const files = knownFiles(folder);
  for (const { name, milliseconds, beside } of sets) {
    const own = files.filter(({ file }) => isOf(file, name));
    const gaps: number[] = [];
    let spent = 0;
    const [warm] = own;
    if (warm !== undefined)
      scheduleProject(projectIn(folder, warm.file), 1, {
        iterations: unlimited,
        stop: afterMilliseconds(milliseconds),
      });
    for (const { file, best } of own) {
      const project = projectIn(folder, file);
      const run = timed(() =>
        scheduleProject(project, 1, { iterations: unlimited, stop: afterMilliseconds(milliseconds) }),
      );
      const [broken] = brokenIn(project, run.result.starts);
      if (broken !== undefined) throw new Error(`${file}: ${broken}`);
      spent += run.milliseconds;
      gaps.push(run.result.length / best - 1);
      if (run.result.length !== best)
        console.log(`  ${file}  ${run.result.length}, best known ${best}, ${run.result.schedules} schedules`);
    }
    figures.push(
      {
        what: `${name}: mean gap to the best known, ${gaps.filter((gap) => gap <= 0).length} of ${own.length} at it`,
        value: (gaps.reduce((a, b) => a + b, 0) / own.length) * 100,
        unit: '%',
        beside,
      },
      { what: `${name}: processor time a file`, value: spent / own.length, unit: 'ms' },
    );
  }
  return figures;
};
