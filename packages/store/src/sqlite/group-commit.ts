/**
 * Group commit. Everything waiting when the event loop turns shares one transaction, one sync of the log and one sync of
 * the anchor; each piece of work has its own savepoint, and nobody is answered before both syncs have returned.
 *
 * After a failed sync nothing is known about the disk: a second sync may falsely succeed (the lesson PostgreSQL drew in
 * 2018). So nobody is answered "saved" and nothing more is written until a restart reads what is really there.
 */
import type { DatabaseSync } from 'node:sqlite';
import type { Subject } from '@twelvemonth/clinical';
import { nextCommit, type ActRecord, type CommitTail } from '../commit-chain.ts';
import type { CommitNotice } from '../contract.ts';
import type { Anchor } from './anchor.ts';
import type { Disk } from './disk.ts';
import { isBusy, sqliteCode } from './process-lock.ts';
import type { WriteStatements } from './statements.ts';
import type { Turnstile } from './turnstile.ts';

/** What a piece of work did. With `act`, it is part of the next commit; `grown` names the ledgers it added to. */
export type Done<T> = {
  readonly value: T;
  readonly act?: ActRecord;
  readonly grown?: readonly { readonly subject: Subject; readonly seq: number }[];
};
/** Runs inside the transaction. `commit` is the number the commit will have. */
export type Work<T> = (commit: number) => Done<T>;

export type GroupCommit = {
  /** Answers once the work is on disk; `unsaved` makes the answer if that cannot be said. Rejects if the work threw. */
  readonly submit: <T>(work: Work<T>, unsaved: (says: string) => T) => Promise<T>;
  readonly readOnly: () => { readonly says: string } | undefined;
  /** Waits until everything submitted so far has been answered. */
  readonly drained: () => Promise<void>;
  readonly tail: () => CommitTail;
};

type Waiting = {
  readonly run: (commit: number) => Done<unknown>;
  readonly answer: (value: unknown) => void;
  readonly reject: (cause: unknown) => void;
  readonly unsaved: (says: string) => void;
};

/** More than this wait for the next turn, so that reading is not held up for long. */
const mostInOneCommit = 256;

export function groupCommit(parts: {
  readonly database: DatabaseSync;
  readonly write: WriteStatements;
  readonly anchor: Anchor;
  readonly disk: Disk;
  readonly turnstile: Turnstile;
  readonly tail: CommitTail;
  /** Some of the transaction did not happen: whatever was remembered from inside it may be untrue. */
  readonly forget: () => void;
  readonly committed: (notice: CommitNotice) => void;
}): GroupCommit {
  const { database, write, anchor, disk, turnstile } = parts;
  const savepoint = database.prepare('savepoint work');
  const release = database.prepare('release work');
  let tail = parts.tail;
  let waiting: Waiting[] = [];
  let armed = false;
  let readOnly: { readonly says: string } | undefined;
  let idle: (() => void)[] = [];

  const arm = (): void => {
    if (armed) return;
    armed = true;
    setImmediate(() => {
      armed = false;
      if (turnstile.taken()) turnstile.onceFree(flush);
      else flush();
    });
  };

  function flush(): void {
    const group = waiting.slice(0, mostInOneCommit);
    waiting = waiting.slice(mostInOneCommit);
    if (group.length > 0) commitGroup(group);
    if (waiting.length > 0) arm();
    else for (const wake of idle.splice(0)) wake();
  }

  function commitGroup(group: readonly Waiting[]): void {
    if (readOnly !== undefined) {
      for (const one of group) one.unsaved(readOnly.says);
      return;
    }
    const answers: (() => void)[] = [];
    const acts: ActRecord[] = [];
    const grown = new Map<Subject, number>();
    let next: CommitTail;
    try {
      disk.begin(database);
      for (const one of group) {
        const done = inSavepoint(one);
        if (done === undefined) continue;
        answers.push(() => one.answer(done.value));
        if (done.act !== undefined) {
          write.act(tail.commit + 1, acts.length, done.act);
          acts.push(done.act);
        }
        for (const { subject, seq } of done.grown ?? []) grown.set(subject, seq);
      }
      next = acts.length === 0 ? tail : nextCommit(tail, acts);
      if (next !== tail) write.commit(next);
      disk.commit(database);
    } catch (cause) {
      undo(group, cause);
      return;
    }
    if (next !== tail) {
      try {
        anchor.advance(next);
      } catch (cause) {
        stopWriting(
          group,
          `The last saving could not be confirmed, because the anchor file could not be written (${messageOf(cause)}).`,
        );
        return;
      }
      tail = next;
    }
    for (const answer of answers) answer();
    if (grown.size > 0)
      parts.committed({ commit: tail.commit, subjects: [...grown].map(([subject, seq]) => ({ subject, seq })) });
  }

  /** Undefined: the work threw, was undone alone and has been told so. Throws if the whole transaction is lost. */
  function inSavepoint(one: Waiting): Done<unknown> | undefined {
    savepoint.run();
    try {
      const done = one.run(tail.commit + 1);
      release.run();
      return done;
    } catch (cause) {
      if (!database.isTransaction || isDiskTrouble(cause)) throw cause;
      database.exec('rollback to work; release work');
      parts.forget();
      one.reject(cause);
      return undefined;
    }
  }

  function undo(group: readonly Waiting[], cause: unknown): void {
    parts.forget();
    let undone = true;
    try {
      if (database.isTransaction) database.exec('rollback');
    } catch {
      undone = false;
    }
    if (undone && isBusy(cause)) {
      for (const one of group) one.unsaved('Not saved: another program is holding the notes. Try again in a moment.');
    } else if (undone && isFull(cause)) {
      for (const one of group)
        one.unsaved('Not saved: the disk is full. Reading goes on; saving works again as soon as there is room.');
    } else {
      stopWriting(
        group,
        `The last saving could not be confirmed, because the disk or the database reported a fault (${messageOf(cause)}).`,
      );
    }
  }

  function stopWriting(group: readonly Waiting[], why: string): void {
    parts.forget();
    readOnly = {
      says: `${why} Nothing more can be saved until the service is restarted; then send it again: sending twice does no harm.`,
    };
    for (const one of group) one.unsaved(readOnly.says);
  }

  return {
    submit: (work, unsaved) =>
      new Promise((resolve, reject) => {
        waiting.push({
          run: work,
          answer: (value) => resolve(value as Parameters<typeof resolve>[0]),
          reject,
          unsaved: (says) => {
            try {
              resolve(unsaved(says));
            } catch (cause) {
              reject(cause);
            }
          },
        });
        arm();
      }),
    readOnly: () => readOnly,
    drained: () =>
      new Promise((resolve) => {
        if (waiting.length === 0) resolve();
        else idle.push(resolve);
      }),
    tail: () => tail,
  };
}

/** SQLITE_IOERR 10, SQLITE_CORRUPT 11, SQLITE_FULL 13, SQLITE_NOTADB 26: not one act's fault but everybody's. */
const isDiskTrouble = (error: unknown): boolean => [10, 11, 13, 26].includes(sqliteCode(error) ?? 0);
const isFull = (error: unknown): boolean => sqliteCode(error) === 13;
const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
