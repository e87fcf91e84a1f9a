/**
 * The process is killed while thirty clients write, again and again, and the histories are judged by a separate checker.
 * This proves what happens when a process dies. It cannot prove what happens when the power goes, because the system's
 * own memory survives a killed process: for that, see the counted syncs and the cut logs.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { appendFileSync, existsSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { judgeHistory, type HistoryLine, type StoredEntry } from './drills/history-checker.ts';
import { endHalfLine, readHistory } from './drills/history-file.ts';
import { withSqlite } from './support/laboratories.ts';
import { copyStore, withScratch } from './support/scratch-store.ts';
import { seeded } from './support/seeded.ts';

const seed = 20_261_125;
const kills = 20;
/** On a quick disk the moment between commit and answer is short: then more kills are needed until one falls into it. */
const killsAtMost = 120;

/** Waits for the history to grow, so that every round gets somewhere however slow the disk is. */
async function grownBy(path: string, bytes: number): Promise<void> {
  const size = (): number => (existsSync(path) ? statSync(path).size : 0);
  for (const until = size() + bytes; size() < until;) await new Promise((then) => setTimeout(then, 1));
}

/** Read from a copy of the files as the kill left them, so that the store itself is the first to recover the originals. */
const readStored = (path: string): StoredEntry[] => {
  copyStore(path, `${path}.judged`);
  return withSqlite(
    `${path}.judged`,
    (database) =>
      database.prepare('select subject, seq, id, act, kind, body, hash from entry').all() as unknown as StoredEntry[],
  );
};

test(
  `killed ${kills} times and more while thirty clients write: nothing acknowledged is lost, nothing half written, nothing twice (seed ${seed})`,
  { timeout: 300_000 },
  () =>
    withScratch(async (place) => {
      const random = seeded(seed);
      const historyPath = `${place.path}.history`;
      let swallowed = false;
      for (let round = 0; round < kills || (!swallowed && round < killsAtMost); round += 1) {
        const child = spawn(
          process.execPath,
          [
            fileURLToPath(new URL('drills/clients.ts', import.meta.url)),
            place.path,
            historyPath,
            String(seed),
            String(round),
          ],
          {
            stdio: ['ignore', 'pipe', 'inherit'],
          },
        );
        const gone = once(child, 'exit');
        // Some are killed while they start, most while they write.
        const started = await Promise.race([once(child.stdout, 'data'), gone.then(() => undefined)]);
        expect(String(started)).toBe('ready\n');
        await grownBy(historyPath, random() * 30_000);
        child.kill('SIGKILL');
        await gone;
        const soFar = readHistory<HistoryLine>(historyPath);
        expect(judgeHistory(soFar, readStored(place.path))).toEqual([]);
        swallowed = soFar.some(({ answer }) => answer === 'already-recorded');
      }
      const history = readHistory<HistoryLine>(historyPath);
      const answers = Map.groupBy(
        history.filter((line) => line.answer !== undefined),
        (line) => line.answer,
      );
      expect(answers.get('recorded')?.length).toBeGreaterThan(500);
      // Acts whose answer the kill swallowed were sent again and recognised: the interesting case did happen.
      expect(answers.get('already-recorded')?.length).toBeGreaterThan(0);
      expect(answers.get('read-only')).toBeUndefined();
      const store = await place.open();
      expect((await store.verify()).ok).toBe(true);
      await store.close();
    }),
);

test('a line that a kill has cut in half is read by nobody, and the next one is not joined to it', () =>
  withScratch((place) => {
    const path = `${place.path}.history`;
    endHalfLine(path);
    appendFileSync(path, '{"act":"a","what":["weigh","p1"]}\n{"act":"a","answ');
    endHalfLine(path);
    appendFileSync(path, '{"act":"b","what":["weigh","p2"]}\n');
    endHalfLine(path);
    expect(readHistory<HistoryLine>(path).map(({ act }) => act)).toEqual(['a', 'b']);
    expect(readFileSync(path, 'utf8').split('\n')).toHaveLength(4);
    return Promise.resolve();
  }));

test('the checker finds each thing it is there to find', () => {
  const entry = (act: string, subject: string, seq: number, more: Partial<StoredEntry> = {}): StoredEntry => ({
    subject,
    seq,
    act,
    id: `${act}-${subject}-${seq}`,
    hash: `${act}${seq}`,
    kind: 'note',
    body: '{}',
    ...more,
  });
  const told = ({ id, subject, seq, hash }: StoredEntry) => ({ id, subject, seq, hash });
  const one = entry('a', 'patient/p1', 1);
  const two = [
    entry('b', 'session/s1', 1, { kind: 'session-place-taken', body: '{"place":7}' }),
    entry('b', 'patient/p1', 2),
  ];
  const history: HistoryLine[] = [
    { act: 'a', what: ['weigh', 'p1'] },
    { act: 'a', answer: 'recorded', entries: [told(one)] },
    { act: 'b', what: ['book', 's1', 'p1', 7] },
  ];
  const stored = [one, ...two];
  expect(judgeHistory(history, stored)).toEqual([]);
  expect(judgeHistory(history, [])).toEqual([expect.stringContaining('lost: a')]);
  expect(judgeHistory(history, [{ ...one, hash: 'x' }, ...two])).toEqual([expect.stringContaining('changed')]);
  expect(judgeHistory(history, [one, ...two.slice(0, 1)])).toEqual([expect.stringContaining('half written: b')]);
  expect(judgeHistory(history, [...stored, entry('a', 'patient/p1', 3)])).toEqual([
    expect.stringContaining('twice: a'),
  ]);
  expect(judgeHistory(history, [...stored, entry('z', 'patient/p1', 3)])).toEqual(['nobody sent z']);
  expect(judgeHistory([...history, { act: 'a', answer: 'recorded', entries: [told(one)] }], stored)).toEqual([
    'a was called new twice',
  ]);
  expect(judgeHistory([...history, { act: 'a', answer: 'already-recorded', entries: [] }], stored)).toEqual([
    'a was answered in two ways',
  ]);
  expect(
    judgeHistory(
      [...history, { act: 'c', what: ['book', 's1', 'p2', 7] }],
      [...stored, { ...(two[0] as StoredEntry), act: 'c', seq: 2, id: 'c1' }, entry('c', 'patient/p2', 1)],
    ),
  ).toEqual(['a place was given to two people']);
  expect(judgeHistory(history, [one, { ...(two[0] as StoredEntry), seq: 2 }, two[1] as StoredEntry])).toEqual([
    'there is a gap in session/s1',
  ]);
});
