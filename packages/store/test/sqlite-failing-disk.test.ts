/**
 * Every call on which durability rests is made to fail in turn: the first, the second, the third ... until a run finishes
 * clean (SQLite's own method, "How SQLite Is Tested", section 3: https://www.sqlite.org/testing.html).
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { ActOutcome } from '../src/index.ts';
import { realDisk, type Disk } from '../src/sqlite/disk.ts';
import { scratch, withScratch, type Scratch } from './support/scratch-store.ts';
import { booking, weighing } from './support/ward.ts';

type Call = keyof Disk;

/** Fails at the nth call, before or after the real one was made. From then on the disk is well again. */
function failingDisk(
  failing: number,
  when: 'before' | 'after',
): { readonly disk: Disk; readonly failedAt: () => Call | undefined } {
  let calls = 0;
  let failedAt: Call | undefined;
  const wrapped =
    <Arguments extends readonly unknown[]>(name: Call, real: (...given: Arguments) => void) =>
    (...given: Arguments): void => {
      calls += 1;
      const fails = calls === failing;
      if (!fails || when === 'after') real(...given);
      if (!fails) return;
      failedAt = name;
      throw new Error(`the disk failed (${name})`);
    };
  return {
    disk: {
      begin: wrapped('begin', realDisk.begin),
      commit: wrapped('commit', realDisk.commit),
      write: wrapped('write', realDisk.write),
      sync: wrapped('sync', realDisk.sync),
    },
    failedAt: () => failedAt,
  };
}

const requests = [
  weighing('w1', 'p1'),
  booking('b1', 's1', 'p1', 1),
  weighing('w2', 'p2'),
  booking('b2', 's1', 'p2', 2),
  weighing('w3', 'p1'),
];

async function actsOn(place: Scratch, disk: Disk): Promise<ActOutcome[]> {
  const store = await place.open({ disk });
  const outcomes: ActOutcome[] = [];
  for (const request of requests) outcomes.push(await store.act(request));
  const wasReadOnly = store.readOnly !== undefined;
  // Reading goes on, whatever the disk did to the writing.
  expect((await store.ledger('patient/p1')).length).toBeLessThanOrEqual(3);
  await store.close();
  // After the first that could not be confirmed, nothing more is called saved.
  const first = outcomes.findIndex(({ outcome }) => outcome === 'read-only');
  const after = first === -1 ? [] : outcomes.slice(first).map(({ outcome }) => outcome);
  expect({ wasReadOnly, after }).toEqual({ wasReadOnly: first !== -1, after: after.map(() => 'read-only') });
  return outcomes;
}

test.each(['before', 'after'] as const)(
  'whichever call fails (%s it was done), nothing acknowledged is lost and nothing is half written or written twice',
  async (when) => {
    const failedCalls = new Set<Call>();
    for (let failing = 1; ; failing += 1) {
      const call = await failAndStartAgain(failing, when);
      if (call === undefined) break;
      failedCalls.add(call);
    }
    expect(failedCalls).toEqual(new Set(['begin', 'commit', 'write', 'sync']));
  },
);

/** Which call failed; undefined if the run came to its end before that. */
async function failAndStartAgain(failing: number, when: 'before' | 'after'): Promise<Call | undefined> {
  const place = scratch();
  try {
    const { disk, failedAt } = failingDisk(failing, when);
    // If the very first anchor cannot be made, the store does not open at all.
    const outcomes = await actsOn(place, disk).catch((cause: Error) =>
      cause.message.startsWith('the disk failed') ? [] : Promise.reject(cause),
    );
    const store = await place.open();
    const acknowledged = outcomes.map(({ outcome }) => outcome === 'recorded');
    expect((await store.tail()).commit).toBeGreaterThanOrEqual(acknowledged.filter(Boolean).length);
    for (const [index, request] of requests.entries()) {
      const again = await store.act(request);
      // What was called saved is there already; what was not is saved now, or was saved unconfirmed.
      expect(acknowledged[index] === true ? ['already-recorded'] : ['recorded', 'already-recorded']).toContain(
        again.outcome,
      );
    }
    expect(await store.verify()).toEqual({ ok: true, entries: 7, ledgers: 3, commit: 5 });
    await store.close();
    return failedAt();
  } finally {
    place.clear();
  }
}

test('those waiting in the same group as the failure are all told that it could not be confirmed', () =>
  withScratch(async (place) => {
    let broken = false;
    const disk: Disk = {
      ...realDisk,
      sync: (file) => {
        if (broken) throw new Error('EIO');
        realDisk.sync(file);
      },
    };
    const store = await place.open({ disk });
    await store.act(weighing('w0', 'p1'));
    broken = true;
    const outcomes = await Promise.all(
      Array.from({ length: 20 }, (_, index) => store.act(weighing(`w${index + 1}`, 'p1'))),
    );
    expect(new Set(outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['read-only']));
    expect(store.readOnly?.says).toMatch(/could not be confirmed.*until the service is restarted/);
    await expect(store.setSetting('name', 'x')).rejects.toThrow('could not be confirmed');
    expect(
      await store.expireLedger('patient/p1', { by: ['a', 'b'], reason: 'x', at: '2026-11-25T09:00:00.000Z' }),
    ).toMatchObject({ outcome: 'read-only' });
    broken = false;
    // A second sync may falsely succeed: it is not even tried.
    expect((await store.act(weighing('w99', 'p1'))).outcome).toBe('read-only');
    await store.close();
  }));

test('a full disk refuses to save, keeps reading, and saves again as soon as there is room', () =>
  withScratch(async (place) => {
    let pages = 0;
    const disk: Disk = {
      ...realDisk,
      begin: (database) => {
        // SQLite's own way to a full disk: no more pages than these.
        database.exec(`pragma max_page_count = ${pages === 0 ? 1_000_000 : pages}`);
        realDisk.begin(database);
      },
    };
    const store = await place.open({ disk });
    await store.act(weighing('w1', 'p1'));
    pages = 1;
    const long = Array.from({ length: 40 }, (_, index) => weighing(`long-${index}-${'x'.repeat(2_000)}`, `p${index}`));
    const outcomes = await Promise.all(long.map((request) => store.act(request)));
    expect(outcomes).toContainEqual({
      outcome: 'read-only',
      says: 'Not saved: the disk is full. Reading goes on; saving works again as soon as there is room.',
    });
    expect(outcomes.filter(({ outcome }) => outcome === 'recorded')).toEqual([]);
    expect(store.readOnly).toBeUndefined();
    expect(await store.ledger('patient/p1')).toHaveLength(1);
    pages = 0;
    const again = await Promise.all(long.map((request) => store.act(request)));
    expect(new Set(again.map(({ outcome }) => outcome))).toEqual(new Set(['recorded']));
    expect((await store.verify()).ok).toBe(true);
    await store.close();
  }));

test('every commit syncs the log and then the anchor, before anybody is answered', () =>
  withScratch(async (place) => {
    const order: string[] = [];
    const told =
      <Arguments extends readonly unknown[]>(name: Call, real: (...given: Arguments) => void) =>
      (...given: Arguments): void => {
        real(...given);
        order.push(name);
      };
    const disk: Disk = {
      begin: told('begin', realDisk.begin),
      commit: told('commit', realDisk.commit),
      write: told('write', realDisk.write),
      sync: told('sync', realDisk.sync),
    };
    const store = await place.open({ disk });
    order.length = 0;
    await store.act(weighing('w1', 'p1')).then(() => order.push('answered'));
    await Promise.all(Array.from({ length: 10 }, (_, index) => store.act(weighing(`g${index}`, 'p1'))));
    expect(order).toEqual(['begin', 'commit', 'write', 'sync', 'answered', 'begin', 'commit', 'write', 'sync']);
    await store.close();
  }));

/** Runs one writer of twenty acts, one after the other, under strace, and returns what strace and the writer said. */
function traced(place: Scratch, options: readonly string[]): { readonly trace: string; readonly said: string } {
  const child = fileURLToPath(new URL('drills/one-writer.ts', import.meta.url));
  const run = spawnSync(
    'strace',
    ['-f', '-qq', '-e', 'trace=fsync,fdatasync', ...options, process.execPath, child, place.path, '20'],
    { encoding: 'utf8' },
  );
  return { trace: run.stderr, said: run.stdout };
}

const strace = spawnSync('strace', ['-V']).status === 0;

if (strace) {
  test('the system itself counts at least two syncs for every acknowledged commit of a single writer', () =>
    withScratch(async (place) => {
      const { trace, said } = traced(place, ['-c']);
      expect(said).toBe('recorded 20\n');
      // strace's table: % time, seconds, usecs/call, calls, [errors,] syscall.
      const rows = trace.split('\n').map((line) => line.trim().split(/\s+/));
      const syncs = rows
        .filter((row) => ['fsync', 'fdatasync'].includes(row.at(-1) ?? ''))
        .reduce((sum, row) => sum + Number(row[3]), 0);
      expect(syncs).toBeGreaterThanOrEqual(40);
    }));

  // SQLite syncs with fsync, the anchor with fdatasync; from the nth on, every one of them fails.
  test.each([
    'fsync:error=EIO:when=3+',
    'fsync:error=EIO:when=20+',
    'fdatasync:error=EIO:when=6+',
    'fdatasync:signal=KILL:when=9',
  ])(
    'an input/output error of a sync is never answered with "saved", and the notes are whole afterwards: %s',
    (failing) =>
      withScratch(async (place) => {
        const { said } = traced(place, ['-e', `inject=${failing}`]);
        expect(said).not.toMatch(/^recorded 20/);
        const store = await place.open();
        const acknowledged = Number(/^recorded (\d+)$/m.exec(said)?.[1] ?? 0);
        expect((await store.ledger('patient/p1')).length).toBeGreaterThanOrEqual(acknowledged);
        expect((await store.verify()).ok).toBe(true);
        await store.close();
      }),
  );
} else {
  test('NOT RUN HERE (there is no strace): the system counts the syncs; the calls of the store are counted instead', () =>
    withScratch(async (place) => {
      let syncs = 0;
      const counting: Disk = {
        ...realDisk,
        commit: (database) => {
          realDisk.commit(database);
          // 2 is FULL: SQLite returns from a commit only when the log is synced.
          if (database.prepare('pragma synchronous').get()?.['synchronous'] === 2) syncs += 1;
        },
        sync: (file) => {
          realDisk.sync(file);
          syncs += 1;
        },
      };
      const store = await place.open({ disk: counting });
      for (let index = 0; index < 20; index += 1) await store.act(weighing(`w${index}`, 'p1'));
      await store.close();
      expect(syncs).toBeGreaterThanOrEqual(40);
    }));
}
