/**
 * A general constraint solver (Chuffed, in MiniZinc's WebAssembly build) beside ours: run by the peers' own script, where that
 * script and the package are at hand. It may have so many seconds of processor time, whatever else the machine does.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { peersFolder } from '../shared-peers.ts';
import { peerPackages } from './packages.ts';

type Message = {
  readonly type: string;
  readonly cpu: number;
  readonly status?: string;
  readonly output?: { readonly default: string };
};

export type SolverRun = {
  /** What the model prints of its last solution; undefined: none was found. */
  readonly last: string | undefined;
  readonly isProven: boolean;
  /** Processor time until its last solution; undefined: none was found. */
  readonly secondsToLast: number | undefined;
  /** Processor time from the start of the solver, without loading the package. */
  readonly seconds: number;
};

export type ConstraintSolver = {
  readonly name: string;
  readonly solve: (model: string, data: string, seconds: number) => Promise<SolverRun>;
};

const { SOLVER_SECONDS } = process.env;

/** What the solver may have for one instance: as many seconds as SOLVER_SECONDS says, for a run that is not to take an hour. */
export const solverSeconds = (usual: number): number => Number(SOLVER_SECONDS ?? usual);

const WALL_PER_PROCESSOR_SECOND = 12;
const millisecondsPerSecond = 1_000;

/** The solver, or undefined where it is absent. */
export function constraintSolver(): ConstraintSolver | undefined {
  const packages = peerPackages('minizinc');
  const script = peersFolder === undefined ? undefined : fileURLToPath(new URL('mzn-wasm.mjs', peersFolder));
  if (packages === undefined || script === undefined || !existsSync(script) || peersFolder === undefined)
    return undefined;
  const manifest = join(packages, 'node_modules/minizinc/package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
  const models = peersFolder;
  return {
    name: `Chuffed in the package minizinc ${version}`,
    solve: (model, data, seconds) => run(packages, script, fileURLToPath(new URL(model, models)), data, seconds),
  };
}

/** Ended by the system when its processor time is used up: what it had said until then counts. */
function run(packages: string, script: string, model: string, data: string, seconds: number): Promise<SolverRun> {
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-solver-'));
  const file = join(folder, 'instance.dzn');
  writeFileSync(file, data);
  const wall = String(seconds * WALL_PER_PROCESSOR_SECOND * millisecondsPerSecond);
  const args = [script, '--solver', 'chuffed', '-a', '-f', '--time-limit', wall, model, file];
  const limited = `ulimit -t ${seconds}; exec "$0" "$@"`;
  const child = spawn('sh', ['-c', limited, process.execPath, ...args], {
    env: { ...process.env, PEERS_DIR: packages },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  let text = '';
  child.stdout.setEncoding('utf8').on('data', (part: string) => (text += part));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', () => {
      rmSync(folder, { recursive: true });
      const lines = text.split('\n').filter((line) => line.startsWith('{') && line.endsWith('}'));
      const messages = lines.map((line) => JSON.parse(line) as Message);
      const ended = messages.find(({ type }) => type === 'exit');
      const last = messages.findLast(({ type }) => type === 'solution');
      resolve({
        last: last?.output?.default,
        secondsToLast: last?.cpu,
        isProven: messages.some(({ status }) => status === 'OPTIMAL_SOLUTION'),
        seconds: ended?.cpu ?? seconds,
      });
    });
  });
}
