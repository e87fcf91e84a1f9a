/**
 * The few calls on which durability rests, in one place: tests count them and make each of them fail in turn. A promise to
 * the nurse ("saved") is only as good as the order of these calls.
 */
import { closeSync, fdatasyncSync, fsyncSync, openSync, writeSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';

export type Disk = {
  readonly begin: (database: DatabaseSync) => void;
  /** Returns once the transaction is on disk (`synchronous=FULL` syncs the write-ahead log). */
  readonly commit: (database: DatabaseSync) => void;
  readonly write: (file: number, bytes: Uint8Array, position: number) => void;
  readonly sync: (file: number) => void;
};

export const realDisk: Disk = {
  begin: (database) => database.exec('begin immediate'),
  commit: (database) => database.exec('commit'),
  write: (file, bytes, position) => {
    const written = writeSync(file, bytes, 0, bytes.length, position);
    if (written !== bytes.length) throw new Error(`wrote ${written} of ${bytes.length} bytes`);
  },
  sync: (file) => fdatasyncSync(file),
};

/** Makes a file's name durable, not only its content. Windows cannot open a folder; its file system journals names itself. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const file = openSync(folder, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

export function syncFile(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
