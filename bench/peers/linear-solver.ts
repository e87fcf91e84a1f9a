/**
 * A general linear and integer solver (HiGHS, in WebAssembly) beside ours: the peers' own script fills the same generated year,
 * where that script and the package are at hand.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { peersFolder } from '../shared-peers.ts';
import { peerPackages } from './packages.ts';

export type SolverFigures = { readonly cost: number; readonly seconds: number };
export type LinearSolver = {
  readonly name: string;
  /** Undefined when it gave up. */
  readonly fill: (visits: number, kind: 'whole' | 'relaxed') => SolverFigures | undefined;
};

export function linearSolver(): LinearSolver | undefined {
  const packages = peerPackages('highs');
  const script = peersFolder === undefined ? undefined : fileURLToPath(new URL('bench-alloc.mjs', peersFolder));
  if (packages === undefined || script === undefined || !existsSync(script)) return undefined;
  const manifest = readFileSync(join(packages, 'node_modules/highs/package.json'), 'utf8');
  const { version } = JSON.parse(manifest) as { version: string };
  return {
    name: `HiGHS in the package highs ${version}`,
    fill(visits, kind) {
      const args = [script, String(visits), ...(kind === 'relaxed' ? ['--lp'] : [])];
      const { stdout } = spawnSync(process.execPath, args, {
        encoding: 'utf8',
        env: { ...process.env, PEERS_DIR: packages },
      });
      const line = stdout.split('\n').find((text) => text.startsWith('{'));
      const read = JSON.parse(line ?? '{}') as { obj?: number; solveCpu?: number };
      return read.obj === undefined || read.solveCpu === undefined
        ? undefined
        : { cost: read.obj, seconds: read.solveCpu };
    },
  };
}
