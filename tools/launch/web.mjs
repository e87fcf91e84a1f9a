/** Builds the screens when their sources, or the packages they are made of, are not those of the last build. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { run, stoppedBy } from './children.mjs';
import { commandOf, modules, pinnedNode, root } from './place.mjs';
import { inTurn } from './turn.mjs';
import { Refused, say, seconds } from './words.mjs';

const web = join(root, 'apps', 'web');
const built = join(web, 'dist', 'index.html');
const proof = join(modules, '.cache', 'twelvemonth-web');
const notSources = new Set(['node_modules', 'dist', 'test']);

/** @returns {string[]} */
function filesUnder(folder) {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !notSources.has(entry.name))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? filesUnder(path) : [path];
    })
    .toSorted();
}

function fingerprint() {
  const hash = createHash('sha256');
  for (const file of [join(root, 'package-lock.json'), ...filesUnder(web), ...filesUnder(join(root, 'packages'))]) {
    const content = readFileSync(file);
    hash.update(`${file.slice(root.length)} ${content.length}\n`).update(content);
  }
  return hash.digest('hex');
}

const proven = (print) => existsSync(built) && existsSync(proof) && readFileSync(proof, 'utf8') === print;

export async function ensureWebBuilt() {
  if (proven(fingerprint())) return;
  await inTurn('web', async ({ alsoHeldBy }) => {
    const print = fingerprint();
    if (proven(print)) return;
    say('building the screens ...');
    const began = performance.now();
    rmSync(proof, { force: true });
    const code = await run(pinnedNode(), [commandOf('vite'), 'build', '--logLevel', 'warn'], {
      cwd: web,
      stdio: 'inherit',
      onStart: (child) => alsoHeldBy(child.pid),
    });
    if (stoppedBy() !== undefined) throw new Refused('stopped while the screens were being built.');
    if (code !== 0) throw new Refused(`the screens could not be built (code ${code}): see above.`);
    mkdirSync(dirname(proof), { recursive: true });
    writeFileSync(proof, print);
    say(`screens built in ${seconds(began)}`);
  });
}
