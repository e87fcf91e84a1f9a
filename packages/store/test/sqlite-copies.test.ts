/** Copies and putting them back, other forms of the tables, and who may hold the notes. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { openSqliteReader, restoreSqlite, type Store } from '../src/index.ts';
import { migrations } from '../src/sqlite/schema.ts';
import { withSqlite } from './support/laboratories.ts';
import { withScratch } from './support/scratch-store.ts';
import { booking, nine, wardRows, weighing } from './support/ward.ts';

const acceptance = { by: 'service-lead', reason: 'the ward computer was stolen', at: nine };

async function weigh(store: Store, from: number, until: number): Promise<void> {
  for (let index = from; index <= until; index += 1) await store.act(weighing(`w${index}`, `p${index % 3}`));
}

test('a copy taken while people write is whole, vouched for by an anchor of its own, and opens', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 50);
    const state = { writing: true };
    const writers = Array.from({ length: 8 }, async (_, writer) => {
      for (let index = 0; state.writing; index += 1)
        await store.act(booking(`b${writer}-${index}`, `s${writer}`, `p${writer}`, index));
    });
    const copies = [];
    for (let index = 0; index < 5; index += 1) copies.push(await store.backup(`${place.path}.copy-${index}`));
    state.writing = false;
    await Promise.all(writers);
    for (const copy of copies) {
      const opened = await place.open({ path: copy.path });
      expect(await opened.verify()).toMatchObject({ ok: true, entries: copy.entries, commit: copy.commit });
      await opened.close();
    }
    expect(copies[0]?.commit).toBeGreaterThanOrEqual(50);
    expect((await store.tail()).commit).toBeGreaterThan(copies[0]?.commit ?? Infinity);
    await store.close();
  }));

test('a copy never replaces a file, and a copy of damaged notes is thrown away', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 5);
    writeFileSync(`${place.path}.taken`, 'something');
    await expect(store.backup(`${place.path}.taken`)).rejects.toMatchObject({ problem: 'already-there' });
    withSqlite(place.path, (database) =>
      database.exec(`drop trigger entry_never_changes; update entry set staff = 'x' where seq = 1`),
    );
    await expect(store.backup(`${place.path}.copy`)).rejects.toMatchObject({ problem: 'damaged' });
    expect(
      readdirSync(dirname(place.path)).filter((name) => name.includes('copy') || name.includes('incoming')),
    ).toEqual([]);
    await store.close();
  }));

test('a copy put back says what was lost, keeps what it replaced, and goes on from there', () =>
  withScratch(async (place) => {
    let store = await place.open();
    await weigh(store, 1, 4);
    await store.backup(`${place.path}.monday`);
    await weigh(store, 5, 7);
    await expect(
      restoreSqlite({ from: `${place.path}.monday`, path: place.path, projection: wardRows, acceptance }),
    ).rejects.toMatchObject({ problem: 'in-use' });
    await store.close();

    const done = await restoreSqlite({
      from: `${place.path}.monday`,
      path: place.path,
      projection: wardRows,
      acceptance,
    });
    expect(done).toMatchObject({ commit: 5, entries: 4, says: expect.stringMatching(/^3 commits are missing/) });
    const replaced = openSqliteReader({ path: String(done.replaced), projection: wardRows });
    expect(await replaced.tail()).toMatchObject({ commit: 7 });
    await replaced.close();

    store = await place.open();
    // What was lost is sent again by those who still have it, once each.
    await weigh(store, 1, 7);
    expect(await store.verify()).toMatchObject({ ok: true, entries: 7, commit: 8 });
    await store.close();
  }));

test('a damaged copy is not put back, and what is there stays', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 4);
    await store.backup(`${place.path}.monday`);
    await weigh(store, 5, 5);
    await store.close();
    withSqlite(`${place.path}.monday`, (database) =>
      database.exec(`drop trigger entry_never_changes; update entry set staff = 'x' where seq = 1`),
    );
    await expect(
      restoreSqlite({ from: `${place.path}.monday`, path: place.path, projection: wardRows, acceptance }),
    ).rejects.toMatchObject({ problem: 'damaged' });
    const again = await place.open();
    expect(await again.verify()).toMatchObject({ ok: true, commit: 5 });
    await again.close();
  }));

test('a copy put back where nothing is left begins again, and says so', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 4);
    await store.backup(`${place.path}.monday`);
    await store.close();
    const path = `${place.path}.new-machine`;
    const done = await restoreSqlite({ from: `${place.path}.monday`, path, projection: wardRows, acceptance });
    expect(done).toMatchObject({ commit: 5, says: expect.stringMatching(/^There were no notes in this place before/) });
    expect('replaced' in done).toBe(false);
    const opened = await place.open({ path });
    expect(await opened.verify()).toMatchObject({ ok: true, entries: 4 });
    await opened.close();
  }));

const later = [...migrations, { version: 2, statements: ['create table extra (name text) strict'] }];

test('a newer version brings the tables forward, after keeping a copy of the old form', () =>
  withScratch(async (place) => {
    let store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    store = await place.open({ migrations: later });
    expect(await store.setting('schema version')).toBe('2');
    expect(await store.verify()).toMatchObject({ ok: true, commit: 3 });
    await store.close();
    await expect(place.open()).rejects.toMatchObject({
      problem: 'newer-software',
      message: expect.stringContaining('Start the newer version'),
    });
    const old = openSqliteReader({ path: `${place.path}.before-form-2`, projection: wardRows });
    expect(await old.verify()).toMatchObject({ ok: true, commit: 3 });
    expect(await old.setting('schema version')).toBe('1');
    await old.close();
  }));

test('a step that fails half way leaves the old form whole and usable', () =>
  withScratch(async (place) => {
    let store = await place.open();
    await weigh(store, 1, 3);
    await store.close();
    const failing = [
      ...migrations,
      { version: 2, statements: ['create table extra (name text) strict', 'create table entry (twice text)'] },
    ];
    await expect(place.open({ migrations: failing })).rejects.toThrow('already exists');
    store = await place.open();
    expect(await store.setting('schema version')).toBe('1');
    expect(
      withSqlite(place.path, (database) =>
        database.prepare(`select name from sqlite_master where name = 'extra'`).all(),
      ),
    ).toEqual([]);
    await weigh(store, 4, 4);
    await store.close();
  }));

test('a second writing process is refused with a sentence; reading is not; a killed holder holds nothing', () =>
  withScratch(async (place) => {
    const child = spawn(
      process.execPath,
      [fileURLToPath(new URL('drills/clients.ts', import.meta.url)), place.path, `${place.path}.history`, '1', '1'],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    await once(child.stdout, 'data');
    await expect(place.open()).rejects.toMatchObject({
      problem: 'in-use',
      message: `These notes are in use by process ${child.pid}. Ask the running server instead, or stop it first.`,
    });
    const reader = openSqliteReader({ path: place.path, projection: wardRows });
    expect((await reader.verify()).ok).toBe(true);
    await reader.close();
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
    const store = await place.open();
    await expect(place.open()).rejects.toMatchObject({
      problem: 'in-use',
      message: expect.stringContaining(`process ${process.pid}`),
    });
    await store.close();
  }));

test('a reader of notes that are not there says so and makes no file', () =>
  withScratch(async (place) => {
    expect(() => openSqliteReader({ path: place.path, projection: wardRows })).toThrow('There are no notes at');
    expect(existsSync(place.path)).toBe(false);
  }));

test('bytes turned over in the database file are refused at the start or found by verify', () =>
  withScratch(async (place) => {
    const store = await place.open();
    await weigh(store, 1, 60);
    await store.close();
    const whole = readFileSync(place.path);
    const anchor = readFileSync(`${place.path}.anchor`);
    // Every place where a stored text of the notes lies: turn one bit in each of forty of them.
    const needle = Buffer.from('nurse-adeyemi');
    const places: number[] = [];
    for (let at = whole.indexOf(needle); at !== -1; at = whole.indexOf(needle, at + 1)) places.push(at);
    expect(places.length).toBeGreaterThanOrEqual(60);
    for (const at of places.slice(0, 40)) {
      const damaged = Buffer.from(whole);
      damaged.writeUInt8(damaged.readUInt8(at + 3) ^ 1, at + 3);
      for (const ending of ['-wal', '-shm']) rmSync(`${place.path}${ending}`, { force: true });
      writeFileSync(place.path, damaged);
      writeFileSync(`${place.path}.anchor`, anchor);
      const opened = await place.open();
      expect(await opened.verify()).toMatchObject({
        ok: false,
        firstBad: { says: 'This entry was changed after it was written.' },
      });
      await opened.close();
    }
  }));
