/** Where things are in a checkout. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Refused } from './words.mjs';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const modules = join(root, 'node_modules');

const pinnedMajor = 26;

/** The package that carries the pinned Node for this machine. */
function runtimePackage() {
  const system = process.platform === 'win32' ? 'win' : process.platform;
  // The one package of the five that is named differently.
  const prefix = system === 'darwin' && process.arch === 'arm64' ? 'node-bin' : 'node';
  return `${prefix}-${system}-${process.arch}`;
}

/** The Node that the product runs on: the pinned one, or this one where it is new enough and there is no package for the machine. */
export function pinnedNode() {
  const binary = join(modules, runtimePackage(), 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  if (existsSync(binary)) return binary;
  if (Number(process.versions.node.split('.')[0]) >= pinnedMajor) return process.execPath;
  throw new Refused(
    `There is no packaged Node ${pinnedMajor} for ${process.platform} ${process.arch}. Install Node ${pinnedMajor} or newer yourself and run this again.`,
  );
}

/** The script a package's command runs, so that it can be started with the pinned Node and not with whatever is on the path. */
export function commandOf(packageName, command = packageName) {
  const folder = join(modules, packageName);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return join(folder, typeof bin === 'string' ? bin : bin[command]);
}
