/**
 * Planning an infusion day: the shared day instances against the best plans known, which general solvers found in a minute of
 * processor time each. `npm run bench -- plan-day`; every plan is passed by our referee and counted by another checker. Where
 * a general constraint solver is at hand it is given the same days in the same run: 60 s each, or what SOLVER_SECONDS says.
 */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import {
  type Day,
  type Objective,
  type Plan,
  boundFor,
  broken,
  compareObjectives,
  planAtOnce,
  planDay,
  readDay,
  replan,
} from '../packages/planning/src/index.ts';
import type { Bench, Figure } from './figure.ts';
import { type ConstraintSolver, constraintSolver, solverSeconds } from './peers/constraint-solver.ts';
import { type Check, type DayBySolver, type SharedDay, dayBySolver } from './peers/day-by-solver.ts';
import { afterMilliseconds, shortestMilliseconds, timed } from './processor-time.ts';
import { peersFolder } from './shared-peers.ts';

const own = new URL('days/', import.meta.url);
const smallDay = 16;
const budgetMilliseconds = { small: 50, other: 250 };
const proofMilliseconds = 1_000;
const unlimited = 100_000_000;
const repeats = 20;
const MILLISECONDS_PER_SECOND = 1_000;
const secondsADay = solverSeconds(60);

type Instance = {
  readonly day: Day;
  readonly raw: SharedDay;
  readonly best: Objective;
  readonly isBestProven: boolean;
};

function instanceAt(file: URL): Instance {
  const text = readFileSync(file, 'utf8');
  const read = readDay(text);
  if (!read.ok) throw new Error(read.problems.map(({ at, says }) => `${at}: ${says}`).join('\n'));
  const raw = JSON.parse(text) as SharedDay & { best: { waitMin: number; makespanMin: number; proven: boolean } };
  const { waitMin, makespanMin, proven } = raw.best;
  const { day } = read;
  const ticks = (minutes: number): number => minutes / day.minutesPerTick;
  return {
    day,
    raw,
    best: { unseen: 0, overtime: 0, wait: ticks(waitMin), finish: ticks(makespanMin) },
    isBestProven: proven,
  };
}

/** Our own copies, and those beside the product that we have no copy of. */
function instances(): Instance[] {
  const files = new Map(readdirSync(own).map((name) => [name, new URL(name, own)]));
  const others = peersFolder === undefined ? undefined : new URL('day-instances/', peersFolder);
  if (others !== undefined && existsSync(others))
    for (const name of readdirSync(others)) if (!files.has(name)) files.set(name, new URL(name, others));
  return [...files.keys()].toSorted().map((name) => instanceAt(files.get(name) ?? new URL(name, own)));
}

const timesForCheck = (plan: Plan): unknown[] =>
  plan.map((times) => {
    if (times === null) return undefined;
    const [obs, chk, can, inf, rem] = times.starts;
    const { arrives: arr, preparation: prep, secondCheck: sec, watchedIn } = times;
    return { arr, obs, chk, can, inf, rem, dis: times.starts.at(-1), prep, sec, chair: watchedIn === 'chair' };
  });

async function otherChecker(): Promise<Check | undefined> {
  const file = peersFolder === undefined ? undefined : new URL('day-lib.mjs', peersFolder);
  if (file === undefined || !existsSync(file)) return undefined;
  const { check } = (await import(file.href)) as { check: Check };
  return check;
}

function mustPass({ day, raw }: Instance, plan: Plan, objective: Objective, check: Check | undefined): void {
  const [first] = broken(day, plan);
  if (first !== undefined) throw new Error(`${day.id}: ${first.says}`);
  const counted = check?.(raw, timesForCheck(plan));
  if (counted !== undefined && (counted.wait !== objective.wait || counted.makespan !== objective.finish))
    throw new Error(`${day.id}: the other checker counts ${counted.wait} and ${counted.makespan}`);
}

type Row = {
  readonly id: string;
  readonly visits: number;
  readonly objective: Objective;
  readonly best: Objective;
  readonly isBestProven: boolean;
  readonly isProven: boolean;
  readonly proofMilliseconds: number;
  readonly atLeast: Objective;
  readonly firstMilliseconds: number;
  /** Without reading and without the proof. */
  readonly milliseconds: number;
  readonly beside: DayBySolver | undefined;
};

async function runOne(
  instance: Instance,
  check: Check | undefined,
  solver: ConstraintSolver | undefined,
): Promise<Row> {
  const { day, best, isBestProven } = instance;
  const visits = day.visits.length;
  const firstMilliseconds = shortestMilliseconds(repeats, () => planAtOnce(day));
  const budget = visits <= smallDay ? budgetMilliseconds.small : budgetMilliseconds.other;
  const beside =
    solver === undefined || check === undefined
      ? undefined
      : await dayBySolver(solver, instance.raw, secondsADay, check);
  const search = timed(() =>
    planDay(day, { seed: 1, limit: { iterations: unlimited, stop: afterMilliseconds(budget) } }),
  );
  const found = search.result;
  mustPass(instance, found.plan, found.objective, check);
  const proof = timed(() =>
    boundFor(day, found.plan, { contradictions: unlimited, stop: afterMilliseconds(proofMilliseconds - budget) }),
  );
  mustPass(instance, proof.result.plan, proof.result.objective, check);
  return {
    id: day.id,
    visits,
    objective: found.objective,
    best,
    isBestProven,
    isProven: proof.result.isProven,
    proofMilliseconds: proof.milliseconds,
    atLeast: proof.result.atLeast,
    firstMilliseconds,
    milliseconds: search.milliseconds,
    beside,
  };
}

/** One person a quarter of an hour late, with the day two hours old; then one chair and one nurse fewer for the rest of it. */
function replanMilliseconds(day: Day): number {
  const { plan } = planDay(day, { seed: 1, limit: { iterations: 2_000 } });
  const now = 24;
  const late = plan.findIndex((times) => times !== null && times.arrives > now);
  const visits = day.visits.map((visit, index) =>
    index === late ? { ...visit, earliest: visit.earliest + 3 } : visit,
  );
  const fewer = (capacity: readonly number[]): number[] => capacity.map((count, tick) => count - (tick >= now ? 1 : 0));
  const changed: Day[] = [
    { ...day, visits },
    { ...day, chairs: fewer(day.chairs) },
    { ...day, nurses: fewer(day.nurses) },
  ];
  return Math.max(
    ...changed.map((one) =>
      shortestMilliseconds(repeats, () => replan(one, plan, { now, seed: 1, limit: { iterations: 100 } })),
    ),
  );
}

const minutesOf = ({ wait, finish }: Objective): string => `${wait * 5}/${finish * 5}`;

function solverWords({ objective, isProven, seconds, secondsToLast }: DayBySolver): string {
  const found = objective === undefined ? 'nothing' : `${minutesOf(objective)} at ${secondsToLast?.toFixed(2)} s`;
  return `; general solver ${found}${isProven ? ', proven' : ''}, ${seconds.toFixed(1)} s`;
}

function lineOf(row: Row): string {
  const order = compareObjectives(row.objective, row.best);
  const word = order < 0 ? 'better' : order > 0 ? 'WORSE' : 'equal';
  const known = `${minutesOf(row.best)}${row.isBestProven ? ' proven' : ''}`;
  const proof = row.isProven
    ? `proven in ${row.proofMilliseconds.toFixed(0)} ms`
    : `at least ${minutesOf(row.atLeast)}`;
  return `  ${row.id}  ${minutesOf(row.objective).padEnd(8)} known ${known.padEnd(15)} ${word.padEnd(6)} ${proof}, first plan ${row.firstMilliseconds.toFixed(2)} ms${row.beside === undefined ? '' : solverWords(row.beside)}`;
}

/** What the general solver did in the same run, where it ran. */
function figuresBeside(rows: readonly Row[], name: string): Figure[] {
  const pairs = rows.flatMap((row) => (row.beside === undefined ? [] : [{ row, beside: row.beside }]));
  const seconds = pairs.reduce((sum, { beside }) => sum + beside.seconds, 0);
  const toLast = pairs.reduce((sum, { beside }) => sum + (beside.secondsToLast ?? beside.seconds), 0);
  const ours = pairs.reduce((sum, { row }) => sum + row.milliseconds, 0) / MILLISECONDS_PER_SECOND;
  const order = ({ row, beside }: (typeof pairs)[number]): number =>
    beside.objective === undefined ? -1 : compareObjectives(row.objective, beside.objective);
  return [
    {
      what: `days at least as good as ${name} in the same run`,
      value: pairs.filter((pair) => order(pair) <= 0).length,
      unit: `of ${pairs.length} days`,
      beside: `better on ${pairs.filter((pair) => order(pair) < 0).length}; it may take ${secondsADay} s, and proves ${pairs.filter(({ beside }) => beside.isProven).length}`,
    },
    {
      what: 'its processor time against ours, all days together',
      value: seconds / ours,
      unit: 'times',
      beside: `${(toLast / ours).toFixed(1)} times until its last plan; ${seconds.toFixed(1)} s against ${ours.toFixed(2)} s`,
    },
  ];
}

export const bench: Bench = async () => {
  const check = await otherChecker();
  const solver = constraintSolver();
  if (check === undefined) console.log('  the other checker is absent: plans are passed by our referee alone');
  const all = instances();
  const [warm] = all;
  if (warm !== undefined)
    planDay(warm.day, { seed: 1, limit: { iterations: unlimited, stop: afterMilliseconds(budgetMilliseconds.other) } });
  const rows: Row[] = [];
  for (const instance of all) {
    const row = await runOne(instance, check, solver);
    console.log(lineOf(row));
    rows.push(row);
  }
  const largest = all.filter(({ day }) => day.visits.length === 48);
  const count = (holds: (row: Row) => boolean): number => rows.filter(holds).length;
  const of = `of ${rows.length} days`;
  const figures: Figure[] = [
    {
      what: 'days at the best known plan or better, 250 ms of processor (50 ms up to 16 people)',
      value: count((row) => compareObjectives(row.objective, row.best) <= 0),
      unit: of,
      beside: "best known: mostly a general solver's 60 s",
    },
    {
      what: 'optima proven elsewhere that are matched',
      value: count((row) => row.isBestProven && compareObjectives(row.objective, row.best) <= 0),
      unit: `of ${count((row) => row.isBestProven)} days`,
    },
    {
      what: 'own proof of the optimum within 1 s of processor, search included',
      value: count((row) => row.isProven),
      unit: of,
      beside: `proven elsewhere: ${count((row) => row.isBestProven)}`,
    },
    {
      what: 'first plan, slowest of the days',
      value: Math.max(...rows.map((row) => row.firstMilliseconds)),
      unit: 'ms',
      beside: 'goal: at most 1',
    },
  ];
  if (solver !== undefined && check !== undefined) figures.push(...figuresBeside(rows, solver.name));
  if (largest.length > 0)
    figures.push({
      what: 'the rest of a day of 48 people again after one is late, a chair or a nurse is lost; slowest',
      value: Math.max(...largest.map(({ day }) => replanMilliseconds(day))),
      unit: 'ms',
      beside: 'goal: at most 2',
    });
  return figures;
};
