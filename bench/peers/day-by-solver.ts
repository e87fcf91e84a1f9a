/**
 * One of the shared days given to the general constraint solver: the same instance, in the words of the peers' model. What it
 * answers is counted by the peers' checker.
 */
import type { Objective } from '../../packages/planning/src/index.ts';
import type { ConstraintSolver } from './constraint-solver.ts';

export type Check = (raw: unknown, times: unknown) => { readonly wait: number; readonly makespan: number };

type Patient = {
  readonly first: boolean;
  readonly inf: number;
  readonly est: number;
  readonly lct: number;
  readonly fixedArrival: boolean;
};

export type SharedDay = {
  readonly chairs: number;
  readonly seats: number;
  readonly nurse: readonly number[];
  readonly prep: readonly number[];
  readonly check: readonly number[];
  readonly patients: readonly Patient[];
};

export type DayBySolver = {
  /** Undefined: it found no plan in its time. */
  readonly objective: Objective | undefined;
  readonly isProven: boolean;
  readonly seconds: number;
  readonly secondsToLast: number | undefined;
};

const stepsOfModel = ['obs', 'chk', 'can', 'prep', 'sec', 'inf', 'rem', 'dis', 'seat'] as const;
type Answer = Record<(typeof stepsOfModel)[number], readonly number[]>;

function dataFor({ chairs, seats, nurse, prep, check, patients }: SharedDay): string {
  const list = (values: readonly unknown[]): string => `[${values.join(',')}]`;
  const of = (pick: (patient: Patient) => unknown): string => list(patients.map((patient) => pick(patient)));
  return [
    `n=${patients.length};chairs=${chairs};seats=${seats};nurse=${list(nurse)};prep=${list(prep)};check=${list(check)};`,
    `first=${of(({ first }) => first)};dinf=${of(({ inf }) => inf)};est=${of(({ est }) => est)};`,
    `lct=${of(({ lct }) => lct)};fix=${of(({ fixedArrival }) => fixedArrival)};`,
  ].join('\n');
}

const timesIn = (answer: Answer, { patients }: SharedDay): unknown[] =>
  patients.map(({ fixedArrival, est }, at) => {
    const own = Object.fromEntries(stepsOfModel.map((step) => [step, answer[step][at]]));
    return { ...own, arr: fixedArrival ? est : own['obs'], chair: own['seat'] === 0 };
  });

export async function dayBySolver(
  solver: ConstraintSolver,
  day: SharedDay,
  seconds: number,
  check: Check,
): Promise<DayBySolver> {
  const run = await solver.solve('day.mzn', dataFor(day), seconds);
  const counted = run.last === undefined ? undefined : check(day, timesIn(JSON.parse(run.last) as Answer, day));
  return {
    objective:
      counted === undefined ? undefined : { unseen: 0, overtime: 0, wait: counted.wait, finish: counted.makespan },
    isProven: run.isProven,
    seconds: run.seconds,
    secondsToLast: run.secondsToLast,
  };
}
