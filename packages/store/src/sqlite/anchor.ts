/**
 * The anchor: number and hash of the last commit, in a small file outside the database. A database that lost its tail (an
 * older copy put back, a write-ahead log cut short) looks healthy from the inside; the anchor says how much is missing.
 *
 * Two places in the file are written in turn, each with its own checksum, so a write torn by a power cut leaves the other
 * one readable. They lie a page apart so that no disk sector holds both.
 */
import { closeSync, existsSync, openSync, readFileSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import type { CommitTail } from '../commit-chain.ts';
import { sha256 } from '../digest.ts';
import { StoreProblem } from '../store-problem.ts';
import { syncFolder, type Disk } from './disk.ts';

const placeBytes = 512;
const placeAt = [0, 4096] as const;
const mark = 'twelvemonth anchor 1';

export const anchorPath = (databasePath: string): string => `${databasePath}.anchor`;

export type AnchorReading =
  | { readonly found: 'missing' }
  | { readonly found: 'damaged' }
  | { readonly found: 'tail'; readonly tail: CommitTail; readonly place: 0 | 1 };

export function readAnchor(path: string): AnchorReading {
  if (!existsSync(path)) return { found: 'missing' };
  const bytes = readFileSync(path);
  const readings = ([0, 1] as const).flatMap((place) => {
    const tail = parsePlace(bytes.subarray(placeAt[place], placeAt[place] + placeBytes).toString('latin1'));
    return tail === undefined ? [] : [{ found: 'tail', tail, place } as const];
  });
  return readings.toSorted((left, right) => right.tail.commit - left.tail.commit)[0] ?? { found: 'damaged' };
}

/** Makes the file anew, both places alike, under another name first: there is never a moment without an anchor. */
export function writeNewAnchor(path: string, tail: CommitTail, disk: Disk): void {
  const incoming = `${path}.incoming`;
  const file = openSync(incoming, 'w');
  try {
    const whole = new Uint8Array(placeAt[1] + placeBytes);
    for (const at of placeAt) whole.set(placeText(tail), at);
    disk.write(file, whole, 0);
    disk.sync(file);
  } finally {
    closeSync(file);
  }
  renameSync(incoming, path);
  syncFolder(dirname(path));
}

export type Anchor = {
  /** Returns once the new tail is on disk. */
  readonly advance: (tail: CommitTail) => void;
  readonly close: () => void;
};

export function openAnchor(path: string, lastPlace: 0 | 1, disk: Disk): Anchor {
  const file = openSync(path, 'r+');
  let place = lastPlace;
  return {
    advance: (tail) => {
      place = place === 0 ? 1 : 0;
      disk.write(file, placeText(tail), placeAt[place]);
      disk.sync(file);
    },
    close: () => closeSync(file),
  };
}

/**
 * Whether the database continues what the anchor vouches for. Behind is lawful: the process ended between commit and
 * anchor, and nobody had been answered. Anything else stops the start.
 */
export function standingOfAnchor(
  reading: AnchorReading,
  tail: CommitTail,
  hashOf: (commit: number) => string | undefined,
): 'level' | 'behind' {
  if (reading.found === 'missing') {
    throw new StoreProblem(
      'anchor-missing',
      `The anchor file is missing, so it cannot be said whether the notes are complete up to commit ${tail.commit}. Put the anchor file back beside the database, or accept this copy with "restore --accept".`,
    );
  }
  if (reading.found === 'damaged') {
    throw new StoreProblem(
      'anchor-damaged',
      `The anchor file cannot be read, so it cannot be said whether the notes are complete up to commit ${tail.commit}. Accept this copy with "restore --accept" once you have compared it with the last day sheet.`,
    );
  }
  const missing = reading.tail.commit - tail.commit;
  if (missing > 0) {
    throw new StoreProblem(
      'commits-missing',
      `${missing === 1 ? '1 commit is' : `${missing} commits are`} missing: the notes end at commit ${tail.commit}, but commit ${reading.tail.commit} had been acknowledged. This is an older or damaged copy. Put the newest copy back, or accept this one with "restore --accept".`,
    );
  }
  if (hashOf(reading.tail.commit) !== reading.tail.hash) {
    throw new StoreProblem(
      'other-history',
      `Commit ${reading.tail.commit} of this database is not the one that had been acknowledged: the database and its anchor file do not belong together. Put the right copy back, or accept this one with "restore --accept".`,
    );
  }
  return missing === 0 ? 'level' : 'behind';
}

function placeText(tail: CommitTail): Uint8Array {
  const text = `${mark}\n${tail.commit}\n${tail.hash}\n`;
  return Buffer.from(`${text}${sha256(text)}\n`.padEnd(placeBytes), 'latin1');
}

function parsePlace(padded: string): CommitTail | undefined {
  const [head, commit = '', hash = '', checksum] = padded.split('\n');
  const whole = head === mark && /^\d{1,15}$/.test(commit) && sha256(`${mark}\n${commit}\n${hash}\n`) === checksum;
  return whole ? { commit: Number(commit), hash } : undefined;
}
