/**
 * Makes sure that what is installed is what the lock file says, whole. The proof of a finished installation is a file inside
 * node_modules that carries the lock's fingerprint: `npm ci` empties the folder first, so the file cannot survive a new one.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run, stoppedBy } from './children.mjs';
import { modules, root } from './place.mjs';
import { inTurn } from './turn.mjs';
import { Refused, say, seconds } from './words.mjs';

const proof = join(modules, '.twelvemonth-lock');
const lockFile = join(root, 'package-lock.json');

/** Also differs by machine type, because node_modules copied to another one holds the wrong binaries. */
function fingerprint() {
  const hash = createHash('sha256').update(readFileSync(lockFile));
  return hash.update(`\n${process.platform} ${process.arch}`).digest('hex');
}

function packagesIn(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : undefined;
}

/** Whether every package npm says it installed is there, and agrees with the lock file; npm writes its own list last. */
function whole() {
  const installed = packagesIn(join(modules, '.package-lock.json'));
  if (installed === undefined) return false;
  const wanted = packagesIn(lockFile);
  // Our own packages come with the checkout; npm adds a link to each.
  const ours = (path) => wanted[path]?.link === true || !path.includes('node_modules');
  const same = (path) =>
    ours(path) ||
    (wanted[path] !== undefined &&
      wanted[path].version === installed[path]?.version &&
      wanted[path].integrity === installed[path]?.integrity);
  const there = (path) => existsSync(join(root, path, 'package.json'));
  return (
    Object.keys(wanted).every((path) => path === '' || wanted[path].optional === true || (same(path) && there(path))) &&
    Object.keys(installed).every((path) => same(path) && there(path))
  );
}

const proven = () => existsSync(proof) && readFileSync(proof, 'utf8') === fingerprint();

async function install(alsoHeldBy) {
  if (process.platform === 'win32' && process.execPath.startsWith(modules)) {
    throw new Refused('On Windows the running Node cannot replace itself: run "npm ci" once, then this again.');
  }
  say('installing what the lock file names (half a minute with a good connection) ...');
  const began = performance.now();
  rmSync(proof, { force: true });
  const npm = process.env['npm_execpath'];
  const args = ['ci', '--include=dev', '--include=optional', '--loglevel=error', '--no-audit', '--no-fund'];
  const options = { cwd: root, stdio: 'inherit', onStart: (child) => alsoHeldBy(child.pid) };
  const code =
    npm === undefined
      ? await run('npm', args, { ...options, shell: process.platform === 'win32' })
      : await run(process.env['npm_node_execpath'] ?? process.execPath, [npm, ...args], options);
  if (stoppedBy() !== undefined) throw new Refused('stopped during the installation; the next start does it again.');
  if (code !== 0)
    throw new Refused(`npm ci failed with code ${code}: see above. Without a network nothing can be installed.`);
  writeFileSync(proof, fingerprint());
  say(`installed in ${seconds(began)}`);
}

export async function ensureInstalled() {
  if (proven() && whole() && !existsSync(join(root, '.turn-install'))) return;
  await inTurn('install', async ({ interrupted, alsoHeldBy }) => {
    if (!interrupted && whole()) {
      if (!proven()) writeFileSync(proof, fingerprint()); // somebody ran npm by hand, completely
      return;
    }
    if (interrupted) say('an earlier installation did not finish');
    await install(alsoHeldBy);
  });
}
