/** What the anchor file is for: a database that lost its end looks healthy from the inside. */
import { existsSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { acceptSqliteRestore, openSqliteStore, type Store } from '../src/index.ts';
import { withSqlite } from './support/laboratories.ts';
import { copyStore, withScratch, type Scratch } from './support/scratch-store.ts';
import { below, seeded } from './support/seeded.ts';
import { nine, wardRows, weighing } from './support/ward.ts';

const acceptance = { by: 'service-lead', reason: 'the disk failed; compared with the day sheet of Tuesday', at: nine };

async function weigh(store: Store, from: number, until: number): Promise<void> {
  for (let index = from; index <= until; index += 1)
    expect((await store.act(weighing(`w${index}`, 'p1'))).outcome).toBe('recorded');
}

const startAt = async (path: string): Promise<string> => {
  try {
    const store = await openSqliteStore({ path, projection: wardRows });
    const { commit } = await store.tail();
    await store.close();
    return `commit ${commit}`;
  } catch (cause) {
    return cause instanceof Error ? cause.message : String(cause);
  }
};

/** Ten commits, the last five still in the write-ahead log, and the files as they lay on disk then. */
async function tenCommits(place: Scratch): Promise<string> {
  let store = await place.open();
  await weigh(store, 1, 5);
  await store.close();
  store = await place.open();
  await weigh(store, 6, 10);
  const kept = place.keep('as-it-was.db');
  await store.close();
  return kept;
}

test('a process that ended between commit and anchor is made good at the next start', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 2);
    const behind = readFileSync(`${place.path}.anchor`);
    await weigh(store, 3, 3);
    await store.close();
    writeFileSync(`${place.path}.anchor`, behind);
    expect(await startAt(place.path)).toBe('commit 3');
    // Level again: the copy that would now be too old is refused.
    expect(readFileSync(`${place.path}.anchor`)).not.toEqual(behind);
  }));

test('an older copy put back is refused, and it is said how many commits are missing', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 4);
    const copy = `${place.path}.monday`;
    await store.backup(copy);
    await weigh(store, 5, 11);
    await store.close();
    copyStore(copy, place.path, ['', '-wal']);
    expect(await startAt(place.path)).toMatch(
      /^7 commits are missing: the notes end at commit 4, but commit 11 had been acknowledged\./,
    );
  }));

test('a write-ahead log cut short anywhere is refused or complete, never silently shorter', () =>
  withScratch(async (place) => {
    const kept = await tenCommits(place);
    const length = readFileSync(`${kept}-wal`).length;
    const random = seeded(10);
    const answers = new Set<string>();
    for (let cut = 0; cut < 40; cut += 1) {
      const bytes = cut === 0 ? length : 1 + below(random, length);
      copyStore(kept, place.path);
      truncateSync(`${place.path}-wal`, length - bytes);
      const answer = await startAt(place.path);
      expect(answer).toMatch(/^(1 commit is|\d commits are) missing/);
      answers.add(answer);
    }
    // Cuts of many lengths lose different numbers of commits, each counted.
    expect(answers.size).toBeGreaterThan(3);
    copyStore(kept, place.path);
    expect(await startAt(place.path)).toBe('commit 10');
  }));

test('the database without its write-ahead log is refused', () =>
  withScratch(async (place) => {
    const kept = await tenCommits(place);
    copyStore(kept, place.path);
    rmSync(`${place.path}-wal`);
    expect(await startAt(place.path)).toMatch(/^5 commits are missing/);
  }));

test('a write to the anchor torn at any byte leaves the place beside it, and the start goes on', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 6);
    const before = readFileSync(`${place.path}.anchor`);
    await weigh(store, 7, 7);
    await store.close();
    const after = readFileSync(`${place.path}.anchor`);
    const changed = after.findIndex((byte, at) => byte !== before[at]);
    const until = after.findLastIndex((byte, at) => byte !== before[at]) + 1;
    expect(until - changed).toBeGreaterThan(60);
    for (let torn = changed; torn <= until; torn += 5) {
      const file = Buffer.from(before);
      after.copy(file, changed, changed, torn);
      writeFileSync(`${place.path}.anchor`, file);
      expect(await startAt(place.path)).toBe('commit 7');
    }
  }));

test('an anchor that is missing, unreadable or of other notes stops the start, and each says so', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    const anchor = readFileSync(`${place.path}.anchor`);
    rmSync(`${place.path}.anchor`);
    expect(await startAt(place.path)).toMatch(/^The anchor file is missing/);
    writeFileSync(
      `${place.path}.anchor`,
      anchor.map((byte, at) => (at % 512 === 30 ? byte ^ 1 : byte)),
    );
    expect(await startAt(place.path)).toMatch(/^The anchor file cannot be read/);

    await withScratch(async (elsewhere) => {
      const other = await elsewhere.open();
      await other.act(weighing('x1', 'p9'));
      await other.close();
      copyStore(elsewhere.path, place.path, ['.anchor']);
    });
    expect(await startAt(place.path)).toMatch(/^Commit 1 of this database is not the one that had been acknowledged/);
    writeFileSync(`${place.path}.anchor`, anchor);
    expect(await startAt(place.path)).toBe('commit 3');
  }));

test('a database that is gone is not replaced by an empty one', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    rmSync(place.path);
    expect(await startAt(place.path)).toMatch(/^3 commits are missing: there is an anchor file but no database/);
    expect(existsSync(place.path)).toBe(false);
  }));

test('a damaged last commit stops the start', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    withSqlite(place.path, (database) =>
      database.exec(`drop trigger act_never_changes; update act set content_hash = 'x' where commit_number = 3`),
    );
    expect(await startAt(place.path)).toMatch(/^The last commit \(3\) is damaged/);
  }));

test('an accepted older copy says for ever who accepted it, why, and what was missing', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 4);
    await store.backup(`${place.path}.monday`);
    await weigh(store, 5, 6);
    await store.close();
    const oldAnchor = readFileSync(`${place.path}.anchor`);
    copyStore(`${place.path}.monday`, place.path, ['', '-wal']);
    const accepted = await acceptSqliteRestore({ path: place.path, projection: wardRows, acceptance });
    expect(accepted).toMatchObject({ commit: 5, entries: 4, says: expect.stringMatching(/^2 commits are missing/) });

    const again = await place.open();
    expect(await again.verify()).toMatchObject({ ok: true, commit: 5 });
    await weigh(again, 7, 7);
    await again.close();
    const row = withSqlite(place.path, (database) => database.prepare('select body from restore_accepted').get());
    expect(JSON.parse(String(row?.['body']))).toEqual({ ...acceptance, afterCommit: 4, says: accepted.says });
    // What was accepted is written over by nobody: changing the reason afterwards is found.
    withSqlite(place.path, (database) => {
      expect(() => database.exec(`update restore_accepted set body = replace(body, 'disk', 'cat')`)).toThrow(
        'only added',
      );
      database.exec(
        `drop trigger restore_accepted_never_changes; update restore_accepted set body = replace(body, 'disk', 'cat')`,
      );
    });
    const reopened = await place.open();
    expect(await reopened.verify()).toMatchObject({
      ok: false,
      firstBad: { says: expect.stringContaining('acceptance') },
    });
    await reopened.close();
    writeFileSync(`${place.path}.anchor`, oldAnchor);
    expect(await startAt(place.path)).toMatch(/^Commit 6 of this database is not the one/);
  }));

test('an acceptance needs a name and a reason, and a copy that is whole in itself', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    rmSync(`${place.path}.anchor`);
    const accept = (more: object) =>
      acceptSqliteRestore({ path: place.path, projection: wardRows, acceptance: { ...acceptance, ...more } });
    await expect(accept({ by: ' ' })).rejects.toThrow('a name and a reason');
    await expect(accept({ reason: '' })).rejects.toThrow('a name and a reason');
    withSqlite(place.path, (database) =>
      database.exec(`drop trigger entry_never_changes; update entry set body = '{}' where seq = 2`),
    );
    await expect(accept({})).rejects.toMatchObject({ problem: 'damaged' });
  }));
