/**
 * One launcher at a time installs or builds in a checkout. The turn is a file that names the process that holds it (and the
 * npm it started); a file left behind by a process that is gone says that its work was interrupted.
 */
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { root } from './place.mjs';
import { say } from './words.mjs';

const pollMilliseconds = 200;
const clearingMilliseconds = 10_000;

function alive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** The living processes that hold the file; undefined if there is no file. */
function holdersOf(file) {
  try {
    return readFileSync(file, 'utf8').split('\n').filter(Boolean).map(Number).filter(alive);
  } catch (error) {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  }
}

function createdAnew(file, text) {
  try {
    writeFileSync(file, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
}

/** Removes a file whose holders are gone, under a second file, so that two clearers never remove a third one's new file. */
function clear(file) {
  const guard = `${file}.clearing`;
  if (!createdAnew(guard, `${process.pid}\n`)) {
    const age = Date.now() - (statSync(guard, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (age > clearingMilliseconds) rmSync(guard, { force: true });
    return false;
  }
  try {
    if (holdersOf(file)?.length !== 0) return false;
    rmSync(file, { force: true });
    return true;
  } finally {
    rmSync(guard, { force: true });
  }
}

/**
 * Waits for the turn, runs `work` and gives the turn back. `work` gets `{ interrupted, alsoHeldBy }`: whether somebody before
 * us died in the middle, and a function that names a child process which keeps the turn alive if we die.
 * If `work` throws, the file stays and the next one finds the work interrupted.
 */
export async function inTurn(name, work) {
  const file = join(root, `.turn-${name}`);
  const mine = `${process.pid}\n`;
  let interrupted = false;
  let said = false;
  while (!createdAnew(file, mine)) {
    const holders = holdersOf(file);
    if (holders?.length === 0) {
      // A file may be empty for the instant between its creation and its first line.
      await wait(pollMilliseconds);
      if (holdersOf(file)?.length === 0 && clear(file)) interrupted = true;
      continue;
    }
    if (!said && holders !== undefined) {
      say(`another start (process ${holders.join(', ')}) is at "${name}"; waiting for it`);
      said = true;
    }
    await wait(pollMilliseconds);
  }
  const alsoHeldBy = (pid) => writeFileSync(file, `${mine}${pid}\n`);
  const answer = await work({ interrupted, alsoHeldBy });
  rmSync(file, { force: true });
  return answer;
}
