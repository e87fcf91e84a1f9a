/**
 * A year of places filled: the generated years that the general-purpose solvers were given, from options to sessions, with
 * our own lower bound. `npm run bench -- fill-sessions`. The solvers' figures are those of their own run (HiGHS 1.15.1, linear
 * relaxation and integer optimum); they are not run here.
 */
import { type FillProblem, changeOne, fillingOf, sessionsOf } from '../packages/planning/src/index.ts';
import { knownYears, yearOfPlaces } from '../packages/planning/test/oracle/year.ts';
import type { Bench, Figure } from './figure.ts';
import { timed } from './processor-time.ts';

const tries = 3_000;
const rounds = 5;
const changes = 200;

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
  }
  figures.push({
    what: 'peak memory of this process, generator included',
    value: process.resourceUsage().maxRSS / 1024,
    unit: 'MiB',
  });
  return figures;
};
