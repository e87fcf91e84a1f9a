/**
 * Plain project scheduling: the sample of PSPLIB files beside the product, which are not ours to give on. `npm run bench --
 * project` says so when they are absent. Where a general constraint solver is at hand it is given 30 s of processor time a
 * file first (or what SOLVER_SECONDS says), and ours then gets a twentieth of what it took on that file; elsewhere a fixed
 * time, with figures of another run.
 */
import { existsSync, readFileSync } from 'node:fs';
import { type Project, brokenIn, readProject, scheduleProject } from '../packages/planning/src/index.ts';
import type { Bench, Figure } from './figure.ts';
import { type ConstraintSolver, type SolverRun, constraintSolver, solverSeconds } from './peers/constraint-solver.ts';
import { afterMilliseconds, timed } from './processor-time.ts';
import { peersFolder } from './shared-peers.ts';

const unlimited = 100_000_000;
const secondsAFile = solverSeconds(30);
const share = 20;
const MILLISECONDS_PER_SECOND = 1_000;

const sets = [
  { name: 'j30', milliseconds: 50, goal: 0, elsewhere: 'all at best known, 0.98 s each' },
  { name: 'j60', milliseconds: 300, goal: 0.5, elsewhere: '1.65 %, 5.3 s each' },
  { name: 'j120', milliseconds: 1_000, goal: 2.5, elsewhere: '6.52 %, 21.7 s each' },
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

/** The project as the shared model of the general solver reads it. */
function dataFor({ tasks, capacity }: Project): string {
  const horizon = tasks.reduce((sum, { length }) => sum + length, 0);
  const needs = capacity.map((_, resource) => tasks.map((task) => task.needs[resource] ?? 0).join(','));
  const after = tasks.map(({ successors }) => `{${successors.map((task) => task + 1).join(',')}}`);
  return [
    `n=${tasks.length};R=${capacity.length};hz=${horizon};d=[${tasks.map(({ length }) => length).join(',')}];`,
    `cap=[${capacity.join(',')}];r=[|${needs.join('|')}|];suc=[${after.join(',')}];`,
  ].join('\n');
}

const lengthIn = ({ last }: SolverRun): number | undefined =>
  last === undefined ? undefined : (JSON.parse(last) as { mk: number }).mk;

type Row = { readonly best: number; readonly length: number; readonly milliseconds: number };
type Beside = { readonly length: number | undefined; readonly seconds: number; readonly isProven: boolean };

function ours(folder: URL, { file, best }: Known, milliseconds: number): Row & { isProven: boolean } {
  const project = projectIn(folder, file);
  const limit = () => ({ iterations: unlimited, stop: afterMilliseconds(milliseconds) });
  // One warm-up, not counted.
  scheduleProject(project, 2, limit());
  const run = timed(() => scheduleProject(project, 1, limit()));
  const { starts, length, atLeast } = run.result;
  const [broken] = brokenIn(project, starts);
  if (broken !== undefined) throw new Error(`${file}: ${broken}`);
  return { best, length, milliseconds: run.milliseconds, isProven: atLeast === length };
}

async function beside(solver: ConstraintSolver | undefined, folder: URL, { file }: Known): Promise<Beside | undefined> {
  if (solver === undefined) return undefined;
  const run = await solver.solve('rcpsp.mzn', dataFor(projectIn(folder, file)), secondsAFile);
  return { length: lengthIn(run), seconds: run.seconds, isProven: run.isProven };
}

const gapOf = (rows: readonly { readonly best: number; readonly length: number }[]): number =>
  (rows.reduce((sum, { length, best }) => sum + length / best - 1, 0) / rows.length) * 100;

async function figuresOf(
  folder: URL,
  own: readonly Known[],
  { name, milliseconds, goal, elsewhere }: (typeof sets)[number],
  solver: ConstraintSolver | undefined,
): Promise<Figure[]> {
  const rows: Row[] = [];
  const others: (Beside & { readonly best: number })[] = [];
  let proven = 0;
  for (const known of own) {
    const other = await beside(solver, folder, known);
    const budget = other === undefined ? milliseconds : (other.seconds * MILLISECONDS_PER_SECOND) / share;
    const row = ours(folder, known, budget);
    rows.push(row);
    if (row.isProven) proven += 1;
    if (other !== undefined) others.push({ ...other, best: known.best });
    const said =
      other === undefined
        ? ''
        : `; ${other.length ?? 'nothing'}${other.isProven ? ' proven' : ''} in ${other.seconds.toFixed(2)} s by the general solver`;
    console.log(
      `  ${known.file.padEnd(12)} ${row.length}${row.isProven ? ' proven' : ''} in ${row.milliseconds.toFixed(0)} ms, best known ${known.best}${said}`,
    );
  }
  const found = others.flatMap(({ best, length }) => (length === undefined ? [] : [{ best, length }]));
  const seconds = others.reduce((sum, other) => sum + other.seconds, 0);
  const spent = rows.reduce((sum, row) => sum + row.milliseconds, 0);
  const says =
    solver === undefined
      ? `a general solver, elsewhere: ${elsewhere}`
      : `${solver.name}, at most ${secondsAFile} s: ${gapOf(found).toFixed(2)} %, ${others.filter(({ best, length }) => length === best).length} of ${own.length} at it, ${others.filter(({ isProven }) => isProven).length} proven`;
  return [
    {
      what: `${name}: mean gap to the best known, ${rows.filter(({ length, best }) => length <= best).length} of ${own.length} at it, ${proven} proven`,
      value: gapOf(rows),
      unit: '%',
      beside: `goal: ${goal}; ${says}`,
    },
    {
      what: `${name}: processor time a file`,
      value: spent / own.length,
      unit: 'ms',
      ...(solver === undefined
        ? {}
        : {
            beside: `1/${((seconds * MILLISECONDS_PER_SECOND) / spent).toFixed(0)} of the general solver's ${(seconds / own.length).toFixed(1)} s; goal: 1/${share}`,
          }),
    },
  ];
}

export const bench: Bench = async () => {
  const folder = peersFolder === undefined ? undefined : new URL('psplib/', peersFolder);
  if (folder === undefined || !existsSync(folder)) {
    console.log('  the PSPLIB files are absent: nothing measured');
    return [];
  }
  const solver = constraintSolver();
  if (solver === undefined) console.log('  the general constraint solver is absent: its figures are of another run');
  const files = knownFiles(folder);
  const figures: Figure[] = [];
  for (const set of sets)
    figures.push(
      ...(await figuresOf(
        folder,
        files.filter(({ file }) => isOf(file, set.name)),
        set,
        solver,
      )),
    );
  return figures;
};
