/**
 * The independent second check is blind: what was read of the pack stands in no answer to anybody, whoever asks and wherever they
 * stand, until another person's own reading agrees with it (safety page, hazard 26; practice 2e: a primed check is no check). The
 * readings here are ones that stand nowhere else: batch, serial, minutes.
 */
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lineNow, listToday, planToday, readyToPrepare, startInfusion, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, type Somebody, ownServer, setUp } from './support/own-server.ts';

const patient = 'v1';
const pack = {
  product: 'zoledronic acid 5 mg in 100 mL',
  batch: 'PA-7713',
  expiresOn: '2028-07-31',
  minutes: 37,
  identifiers: ['full name', 'number'],
  clearAndColourless: true,
};
/** 37 minutes in words, as a number, and as what they make of a pump. */
const told = [/PA-?7713/, /2028-07/, /Jul 2028/, /\b37 minutes/, /inutes":37\b/, /\b162(\.1)? mL/];

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  await readyToPrepare(server, patient);
});
afterAll(() => server.close());

const visit = (): Promise<VisitView> => server.read<VisitView>(`/api/people/${patient}/visit`);
const prepare = (more: object = {}): Promise<unknown> =>
  server.done('nurse', lineNow(server, patient, 'preparation', { ...pack, ...more }));
const check = async (more: object = {}): Promise<unknown> =>
  server.done('checker', {
    name: 'second check',
    patient,
    preparation: (await visit()).preparation?.entry,
    reading: {
      product: pack.product,
      batchLastFour: '7713',
      expiryMonth: '2028-07',
      pumpMillilitersPerHour: 162,
      identifiers: ['full name', 'birth date'],
      ...more,
    },
  });
const withdraw = async (): Promise<unknown> =>
  server.done('nurse', {
    name: 'withdraw',
    patient,
    entry: (await visit()).preparation?.entry,
    reason: 'the readings differ',
  });

/** Everything about the person that either may ask for, and what in it tells the reading. */
async function leaks(): Promise<string[]> {
  const found: string[] = [];
  for (const as of ['checker', 'nurse'] satisfies Somebody[])
    for (const url of [
      `/api/people/${patient}/visit`,
      `/api/people/${patient}`,
      `/api/people/${patient}/notes`,
      `/api/people/${patient}/batches`,
      '/api/stock/trace?batch=PA-7713',
      '/api/sessions/thornbeck-2026-11-25',
      '/api/sessions/thornbeck-2026-11-25/day-sheet',
      '/api/today',
    ]) {
      const answer = await server.ask(url, { as });
      expect([url, answer.statusCode]).toEqual([url, 200]);
      // The trace says the batch that was asked for, and that nobody had it.
      const body = url.includes('trace') ? answer.body.replace('"batch":"PA-7713"', '') : answer.body;
      found.push(...told.filter((words) => words.test(body)).map((words) => `${as} ${url}: ${words.source}`));
    }
  return found;
}

describe('until another reading agrees', () => {
  test('nothing tells what was read, not at the screen of whoever prepared it either', async () => {
    await prepare();
    expect(await leaks()).toEqual([]);
  });
  test('nor does what is refused: a start tried before the check, a step written with an old screen', async () => {
    const seen = { [`patient/${patient}`]: 1 };
    for (const answer of [
      await server.act('checker', startInfusion(patient)),
      await server.act('checker', lineNow(server, patient, 'cannula-removed', { site: 'looks well' }), { seen }),
    ]) {
      expect(answer.statusCode).toBeGreaterThanOrEqual(400);
      expect(told.filter((words) => words.test(answer.body))).toEqual([]);
    }
  });
  test('nor once it was corrected, and corrected again', async () => {
    for (const minutes of [40, 37]) {
      const amends = (await visit()).preparation?.entry;
      await server.done('nurse', { ...lineNow(server, patient, 'preparation', { ...pack, minutes }), amends });
    }
    expect(await leaks()).toEqual([]);
  });
  test('nor once the two differed, whose next reading it would be', async () => {
    await check({ batchLastFour: '7731' });
    expect((await visit()).check).toMatchObject({ agrees: false, differs: ['batch'] });
    expect(await leaks()).toEqual([]);
  });
  test('nor once it was withdrawn, before and after it is prepared anew', async () => {
    await withdraw();
    expect(await leaks()).toEqual([]);
    await prepare();
    expect(await leaks()).toEqual([]);
  });
  test('once they agree it is read by everybody, with how fast it is to run', async () => {
    expect((await visit()).checkedMinutes).toBeUndefined();
    await check();
    expect((await visit()).checkedMinutes).toBe(37);
    const { body } = await server.ask(`/api/people/${patient}/notes`, { as: 'checker' });
    expect(body).toContain('PA-7713');
  });
});
