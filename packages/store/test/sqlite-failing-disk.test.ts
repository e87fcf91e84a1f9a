/**
 * Every call on which durability rests is made to fail in turn: the first, the second, the third ... until a run finishes
 * clean (SQLite's own method, "How SQLite Is Tested", section 3: https://www.sqlite.org/testing.html).
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { ActOutcome } from '../src/index.ts';
import { realDisk, type Disk } from '../src/sqlite/disk.ts';
import { withScratch, type Scratch } from './support/scratch-store.ts';
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
  const first = outcomes.findIndex(({ outcome }) => outcome === 'read-only');
  expect(wasReadOnly).toBe(first !== -1);
  // After the first that could not be confirmed, nothing more is called saved.
  if (first !== -1)
    expect(new Set(outcomes.slice(first).map(({ outcome }) => outcome))).toEqual(new Set(['read-only']));
  return outcomes;
}

test.each(['before', 'after'] as const)(
  'whichever call fails (%s it was done), nothing acknowledged is lost and nothing is half written or written twice',
  async (when) => {
    const failedCalls = new Set<Call>();
    let clean = false;
    for (let failing = 1; !clean; failing += 1) {
      await withScratch(async (place) => {
        const { disk, failedAt } = failingDisk(failing, when);
        const outcomes = await actsOn(place, disk).catch((cause: Error) => {
          // The very first anchor could not be made: the store does not open, and says so.
          expect(cause.message).toMatch(/the disk failed/);
          return [];
        });
        const call = failedAt();
        if (call === undefined) clean = true;
        else failedCalls.add(call);
        const store = await place.open();
        const acknowledged = outcomes.filter(({ outcome }) => outcome === 'recorded').length;
        expect((await store.tail()).commit).toBeGreaterThanOrEqual(acknowledged);
        for (const [index, request] of requests.entries()) {
          const again = await store.act(request);
          expect(outcomes[index]?.outcome === 'recorded' ? again.outcome : 'any').not.toBe('recorded');
          expect(['recorded', 'already-recorded']).toContain(again.outcome);
        }
        expect(await store.verify()).toEqual({ ok: true, entries: 7, ledgers: 3, commit: 5 });
        await store.close();
      });
    }
    expect(failedCalls).toEqual(new Set(['begin', 'commit', 'write', 'sync']));
  },
);

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

const strace = spawnSync('strace', ['-V']).status === 0;
const child = fileURLToPath(new URL('drills/one-writer.ts', import.meta.url));

/** Runs one writer of twenty acts, one after the other, under strace, and returns what strace and the writer said. */
function traced(place: Scratch, options: readonly string[]): { readonly trace: string; readonly said: string } {
  const run = spawnSync(
    'strace',
    ['-f', '-qq', '-e', 'trace=fsync,fdatasync', ...options, process.execPath, child, place.path, '20'],
    { encoding: 'utf8' },
  );
  return { trace: run.stderr, said: run.stdout };
}

const named = (name: string): string => (strace ? name : `NOT RUN HERE (no strace): ${name}`);

test(named('the system itself counts at least two syncs for every acknowledged commit of a single writer'), () =>
  withScratch(async (place) => {
    if (!strace) return;
    const { trace, said } = traced(place, ['-c']);
    expect(said).toBe('recorded 20\n');
    // strace's table: % time, seconds, usecs/call, calls, [errors,] syscall.
    const rows = trace.split('\n').map((line) => line.trim().split(/\s+/));
    const syncs = rows
      .filter((row) => ['fsync', 'fdatasync'].includes(row.at(-1) ?? ''))
      .reduce((sum, row) => sum + Number(row[3]), 0);
    expect(syncs).toBeGreaterThanOrEqual(40);
  }),
);

test(
  named('an input/output error of any sync is never answered with "saved", and the notes are whole afterwards'),
  () =>
    withScratch(async (place) => {
      if (!strace) return;
      // SQLite syncs with fsync, the anchor with fdatasync; from the nth on, every one of them fails.
      for (const failing of [
        'fsync:error=EIO:when=3+',
        'fsync:error=EIO:when=12+',
        'fsync:error=EIO:when=25+',
        'fdatasync:error=EIO:when=6+',
      ]) {
        const { said } = traced(place, ['-e', `inject=${failing}`]);
        expect(said).toMatch(
          /^(recorded \d+\n)?(read-only|refused to open): .*(could not be confirmed|disk I\/O error|EIO)/m,
        );
        const store = await place.open();
        const acknowledged = Number(/^recorded (\d+)$/m.exec(said)?.[1] ?? 0);
        expect((await store.ledger('patient/p1')).length).toBeGreaterThanOrEqual(acknowledged);
        expect((await store.verify()).ok).toBe(true);
        await store.close();
      }
    }),
);
