/**
 * A year of places filled: the generated years that the general-purpose solvers were given, from options to sessions, with
 * our own lower bound. `npm run bench -- fill-sessions`. Where the solver is at hand it fills the same years in the same run; else
 * its figures are those of another (HiGHS 1.15.1, linear relaxation and integer optimum).
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serialize } from 'node:v8';
import { type FillProblem, changeOne, fillingOf, sessionsOf } from '../packages/planning/src/index.ts';
import { knownYears, yearOfPlaces } from '../packages/planning/test/oracle/year.ts';
import type { Bench, Figure } from './figure.ts';
import { linearSolver } from './peers/linear-solver.ts';
import { timed } from './processor-time.ts';

const tries = 3_000;
const rounds = 5;
const changes = 200;
const bytesPerMegabyte = 1_000_000;
const MILLISECONDS_PER_SECOND = 1_000;
/** Up to this many visits the general solver is asked for the whole optimum; above, for the relaxation alone. */
const mostWhole = 1_200;

type Alone = { readonly cost: number; readonly before: number; readonly most: number };

/** The same in a process that only reads the problem: what memory it takes. */
function alone(problem: FillProblem): Alone {
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-fill-'));
  try {
    const file = join(folder, 'problem');
    writeFileSync(file, serialize(problem));
    const script = fileURLToPath(new URL('alone/fill-one.ts', import.meta.url));
    const { stdout, stderr } = spawnSync(process.execPath, [script, file, String(tries)], { encoding: 'utf8' });
    if (stdout === '') throw new Error(stderr);
    return JSON.parse(stdout) as Alone;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Copies, because a filling takes its problem over. */
const copyOf = ({ places, kind, options }: FillProblem): FillProblem => ({
  places: { ...places, has: places.has.map((has) => has.slice()) },
  kind: kind.slice(),
  options: {
    first: options.first.slice(),
    end: options.end.slice(),
    node: options.node.slice(),
    cost: options.cost.slice(),
  },
});

/** One person later by two sessions, many times; the middle one by the clock. */
function changeMilliseconds(problem: FillProblem): number {
  const own = copyOf(problem);
  let filling = fillingOf(own, tries);
  const { first, end, node, cost } = own.options;
  const times = Array.from({ length: changes }, (_, index) => {
    const visit = (index * 7_919) % own.kind.length;
    const cells = [...node.subarray(first[visit], end[visit])];
    const costs = [...cost.subarray(first[visit], end[visit])];
    const began = performance.now();
    filling = changeOne(
      filling,
      visit,
      cells.slice(Math.min(2, cells.length - 1)),
      costs.slice(Math.min(2, costs.length - 1)),
    );
    return performance.now() - began;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(changes * 0.95)] ?? Number.NaN;
}

export const bench: Bench = async () => {
  const figures: Figure[] = [];
  const solver = linearSolver();
  if (solver === undefined) console.log('  the general linear solver is absent: its figures are of another run');
  for (const { visits, relaxed, optimum } of knownYears) {
    const problem = yearOfPlaces(visits);
    let milliseconds = Number.POSITIVE_INFINITY;
    let filling = fillingOf(copyOf(problem), tries);
    for (let round = 0; round < rounds; round += 1) {
      const copy = copyOf(problem);
      const run = timed(() => fillingOf(copy, tries));
      milliseconds = Math.min(milliseconds, run.milliseconds);
      filling = run.result;
    }
    const unplaced = sessionsOf(filling).filter((session) => session === problem.places.sessions).length;
    const known = optimum === undefined ? `linear relaxation ${relaxed}` : `optimum ${optimum}, relaxation ${relaxed}`;
    figures.push(
      {
        what: `cost of a year of ${visits} visits, ${unplaced} without a place; own lower bound ${filling.atLeast}`,
        value: filling.cost,
        unit: 'days',
        beside: `elsewhere: ${known}`,
      },
      { what: `processor time of it, best of ${rounds}`, value: milliseconds, unit: 'ms' },
      { what: 'one person changed, 95 in 100 take no longer', value: changeMilliseconds(problem), unit: 'ms' },
    );
    const kind = visits <= mostWhole ? 'whole' : 'relaxed';
    const other = solver?.fill(visits, kind);
    if (solver !== undefined && other !== undefined)
      figures.push({
        what: `times the processor time of ours, ${solver.name}, ${kind === 'whole' ? 'integer optimum' : 'linear relaxation'} ${other.cost.toFixed(0)}`,
        value: (other.seconds * MILLISECONDS_PER_SECOND) / milliseconds,
        unit: 'times',
        beside: `${other.seconds.toFixed(2)} s`,
      });
    const { before, most } = alone(problem);
    figures.push({
      what: 'most memory of a process that only reads it and fills',
      value: most / bytesPerMegabyte,
      unit: 'MB',
      beside: `${(before / bytesPerMegabyte).toFixed(0)} MB once it is read${visits === 20_000 ? '; goal: 200' : ''}`,
    });
  }
  return figures;
};
