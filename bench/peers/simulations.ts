/**
 * General simulation libraries beside ours, by the peers' own scripts: SimPy where Python has it, simscript where the package is at
 * hand. Each plays the same chain of visits and counts its own processor time.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { peersFolder } from '../shared-peers.ts';
import { peerPackages } from './packages.ts';

const days = 200;

const scriptCalled = (name: string): string | undefined => {
  const file = peersFolder === undefined ? undefined : fileURLToPath(new URL(name, peersFolder));
  return file !== undefined && existsSync(file) ? file : undefined;
};

/** Visits a second of processor time; undefined where either the script or SimPy is absent. */
export function simpyVisitsPerSecond(): number | undefined {
  const script = scriptCalled('des.py');
  if (script === undefined) return undefined;
  // Where the system's packages are is not where every python3 looks.
  for (const python of ['/usr/bin/python3', 'python3']) {
    const { stdout } = spawnSync(python, [script, String(days)], { encoding: 'utf8' });
    const found = /'visitsPerCpuS': (\d+)/.exec(stdout ?? '');
    if (found !== null) return Number(found[1]);
  }
  return undefined;
}

/** The same of the npm library, its script copied to where it finds the package. */
export function simscriptVisitsPerSecond(): number | undefined {
  const script = scriptCalled('des-simscript.mjs');
  const packages = peerPackages('simscript');
  if (script === undefined || packages === undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-simulation-'));
  try {
    const copy = join(folder, 'des-simscript.mjs');
    copyFileSync(script, copy);
    symlinkSync(join(packages, 'node_modules'), join(folder, 'node_modules'));
    const { stdout } = spawnSync(process.execPath, [copy, String(days)], { encoding: 'utf8' });
    const found = /"visitsPerCpuS":(\d+)/.exec(stdout);
    return found === null ? undefined : Number(found[1]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
