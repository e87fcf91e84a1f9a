import { readFileSync } from 'node:fs';
import type { AcceptAnswer, DryRunAnswer, WaitingRow, peopleAnswer } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { type OwnServer, ownServer, problemOf, setUp } from './support/own-server.ts';

/** A register as another day clinic keeps it; its people are invented. */
const text = readFileSync(
  new URL('../../../packages/exchange/test/registers/day-clinic-semicolon.csv', import.meta.url),
  'utf8',
);
const file = { file: 'day-clinic.csv', text, unit: 'thornbeck' };

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
});
afterAll(async () => server.close());

const post = async <Answer>(url: string, body: unknown, as: 'clerk' | 'nurse' = 'clerk'): Promise<Answer> => {
  const answer = await server.ask(url, { method: 'POST', as, body });
  if (answer.statusCode !== 200) throw new Error(`${url}: ${answer.statusCode} ${answer.body}`);
  return answer.json<Answer>();
};
const registered = async (): Promise<number> => (await server.read<z.infer<typeof peopleAnswer>>('/api/people')).total;
const waiting = async (): Promise<WaitingRow[]> =>
  (await server.read<{ rows: WaitingRow[] }>('/api/import/waiting', 'clerk')).rows;

describe('bringing in a register', () => {
  let tried: DryRunAnswer;
  test('a dry run shows what would be written and writes nothing', async () => {
    tried = await post<DryRunAnswer>('/api/import/dry-run', file);
    expect(tried.rows).toBeGreaterThan(0);
    expect(tried.counts.newPeople).toBeGreaterThan(0);
    expect(tried.preview[0]?.lines.length).toBeGreaterThan(0);
    expect(await registered()).toBe(0);
    expect(await waiting()).toEqual([]);
  });

  test('every row is taken in or waits, and the same file again adds nothing', async () => {
    const accepted = await post<AcceptAnswer>('/api/import/accept', {
      ...file,
      mapping: tried.mapping,
      fingerprint: tried.fingerprint,
    });
    expect(accepted.people).toBe(tried.counts.newPeople);
    expect(accepted.waiting).toBe(tried.counts.rowsWaiting);
    expect(accepted.taken + accepted.waiting).toBe(tried.rows);
    expect(await registered()).toBe(accepted.people);
    expect(await waiting()).toHaveLength(accepted.waiting);
    const { commit } = await server.atHand.store.tail();
    const again = await post<AcceptAnswer>('/api/import/accept', {
      ...file,
      mapping: tried.mapping,
      fingerprint: tried.fingerprint,
    });
    expect(again).toMatchObject({ taken: 0, people: 0, facts: 0 });
    expect(await registered()).toBe(accepted.people);
    expect((await server.atHand.store.tail()).commit).toBe(commit);
    const dry = await post<DryRunAnswer>('/api/import/dry-run', file);
    expect(dry.counts).toMatchObject({ newPeople: 0, newFacts: 0 });
  });

  test('a file that is not the one tried out is refused', async () => {
    const answer = await server.ask('/api/import/accept', {
      method: 'POST',
      as: 'clerk',
      body: { ...file, text: `${text}\n`, mapping: tried.mapping, fingerprint: tried.fingerprint },
    });
    expect(answer.statusCode).toBe(409);
  });

  test('a row that waits is tried again and says what is still wrong, or is left out with a reason', async () => {
    const row = (await waiting()).find(({ cells }) => cells['Born'] !== '31.02.1944');
    if (row === undefined) throw new Error('the register has no row that waits');
    const { register, fingerprint } = row;
    const same = await server.ask('/api/import/settle', {
      method: 'POST',
      as: 'clerk',
      body: { outcome: 'try again', register, fingerprint, row: row.row, cells: row.cells },
    });
    expect(same.statusCode).toBe(422);
    expect(problemOf(same).refusals?.map(({ name }) => name)).toEqual(
      expect.arrayContaining(
        row.problems.filter(({ problem }) => problem !== 'waits-with-another-row').map(({ problem }) => problem),
      ),
    );
    await post('/api/import/settle', { outcome: 'left out', register, fingerprint, row: row.row, reason: 'not ours' });
    expect((await waiting()).map((one) => one.row)).not.toContain(row.row);
    const twice = await server.ask('/api/import/settle', {
      method: 'POST',
      as: 'nurse',
      body: { outcome: 'left out', register, fingerprint, row: row.row, reason: 'not ours, again' },
    });
    expect(problemOf(twice).refusals?.[0]?.name).toBe('row-already-settled');
  });

  test('a row corrected by hand is taken in', async () => {
    const row = (await waiting()).find(({ cells }) => cells['Born'] === '31.02.1944');
    if (row === undefined) throw new Error('the register has no row with a date that does not exist');
    const before = await registered();
    const { register, fingerprint } = row;
    const settled = await post<AcceptAnswer>('/api/import/settle', {
      outcome: 'try again',
      register,
      fingerprint,
      row: row.row,
      cells: { ...row.cells, Born: '28.02.1944' },
    });
    expect(settled).toMatchObject({ taken: 1, people: 1 });
    expect(await registered()).toBe(before + 1);
    expect((await waiting()).map((one) => one.row)).not.toContain(row.row);
  });

  test('a file that is no register is refused with the reason', async () => {
    const answer = await server.ask('/api/import/dry-run', {
      method: 'POST',
      as: 'clerk',
      body: { file: 'x.csv', text: 'hello', unit: 'thornbeck' },
    });
    expect(answer.statusCode).toBe(422);
    expect(problemOf(answer).refusals?.[0]?.remedy).toBeTruthy();
  });
});
