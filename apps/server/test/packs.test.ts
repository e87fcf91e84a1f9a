/**
 * A pack is scanned for a dose: what the server reads off the code, and that it believes no screen about it. The day 00 rule and
 * "usable through the date": GS1 General Specifications, "Expiration date". Hazards 23, 26, 37, 38.
 */
import type { PackReadingView, Problem, StockView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  lineNow,
  listPacks,
  listToday,
  packCode,
  packNumbers,
  planToday,
  readyToPrepare,
  startInfusion,
} from './support/at-the-chair.ts';
import { type OwnServer, ownServer, problemOf, setUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await listPacks(server);
  await planToday(server);
  const people = [
    ['p1', 'Wanda', 'Ferreira', '1944-09-30', '999 204 7802'],
    ['p2', 'Olive', 'Tranter', '1939-02-11', '999 204 7810'],
    ['p3', 'Edda', 'Marrow', '1947-07-19', '999 204 7829'],
  ] as const;
  for (const [index, [patient, given, family, born, number]] of people.entries()) {
    await listToday(server, patient, index + 1, { given, family, born, number });
    await readyToPrepare(server, patient, index + 1);
  }
});
afterAll(() => server.close());

const read = async (code: string, patient = 'p1'): Promise<PackReadingView> => {
  const answer = await server.ask(`/api/people/${patient}/pack`, { method: 'POST', as: 'nurse', body: { code } });
  expect(answer.statusCode).toBe(200);
  return answer.json<PackReadingView>();
};
const troubles = async (code: string): Promise<string[]> => (await read(code)).troubles.map(({ name }) => name);
const pack = (more: Record<string, unknown> = {}) => ({
  product: 'zoledronic acid 5 mg in 100 mL',
  batch: 'PA-2391',
  expiresOn: '2028-04-30',
  minutes: 30,
  identifiers: ['full name', 'birth date'],
  clearAndColourless: true,
  scan: { code: packCode(), productNumber: packNumbers.ours, serial: 'S1042' },
  ...more,
});
const prepare = (more: Record<string, unknown> = {}, patient = 'p1') =>
  server.act('nurse', lineNow(server, patient, 'preparation', pack(more)));
const nameOf = (problem: Problem): string | undefined => problem.refusals?.[0]?.name;

describe('what a scan says', () => {
  test('product, batch, expiry and serial, and the code as it is kept', async () => {
    expect(await read(packCode())).toEqual({
      pack: {
        code: packCode().replace('\u001D', '\u241D'),
        productNumber: packNumbers.ours,
        product: 'zoledronic acid 5 mg in 100 mL',
        batch: 'PA-2391',
        expiresOn: '2028-04-30',
        serial: 'S1042',
        lookAt: ['No packs of batch PA-2391 were received here: read the batch on the pack.'],
      },
      troubles: [],
    });
  });

  test('a month without a day may be used through its last day, and is worth a look', async () => {
    const { pack: found, troubles: none } = await read(packCode({ expiry: '261100' }));
    expect(found?.expiresOn).toBe('2026-11-30');
    expect(found?.lookAt.join()).toContain('month only');
    expect(none).toEqual([]);
  });

  test.each([
    ['not GS1', 'PA-2391'],
    ['nothing scanned', ''],
    ['cut short', '01095060001343'],
    ['wrong check digit', '010950600013435310A'],
    ['no such date', packCode({ expiry: '280431' })],
    ['separator missing', packCode().replace('\u001D', '')],
    ['not-in-the-formulary', packCode({ productNumber: packNumbers.stranger })],
    ['wrong-product', packCode({ productNumber: packNumbers.fourMilligrams })],
    ['pack-expired', packCode({ expiry: '261124' })],
  ])('%s: refused at the scan', async (name, code) => expect(await troubles(code)).toEqual([name]));

  test('today is the last day on which a pack with today’s date may be used', async () =>
    expect(await troubles(packCode({ expiry: '261125' }))).toEqual([]));

  test('a serial that is not in the code is worth a look where packs carry one', async () => {
    const { pack: found } = await read(packCode().split('\u001D')[0] ?? '');
    expect(found?.serial).toBeUndefined();
    expect(found?.lookAt.join()).toContain('the separator may be missing');
  });
});

describe('what is written is what was scanned', () => {
  test.each([
    ['batch', { batch: 'PA-2392' }],
    ['expiry', { expiresOn: '2029-04-30' }],
    ['product number', { scan: { code: packCode(), productNumber: packNumbers.fourMilligrams, serial: 'S1042' } }],
    ['serial', { scan: { code: packCode(), productNumber: packNumbers.ours, serial: 'S9' } }],
    ['serial left out', { scan: { code: packCode(), productNumber: packNumbers.ours } }],
  ])('%s other than in the code: refused', async (_, more) => {
    const answer = await prepare(more);
    expect([answer.statusCode, nameOf(problemOf(answer))]).toEqual([422, 'scan-differs']);
  });
});

/** Whose pack it became. */
let winner = '';

describe('one pack, one person', () => {
  test('two nurses scan the same pack for two people in the same moment: one is prepared', async () => {
    const answers = await Promise.all([prepare({}, 'p1'), prepare({}, 'p2')]);
    const codes = answers.map(({ statusCode }) => statusCode).toSorted((a, b) => a - b);
    expect(codes).toEqual([200, 422]);
    winner = answers[0]?.statusCode === 200 ? 'p1' : 'p2';
    const refused = answers.find(({ statusCode }) => statusCode === 422);
    expect(refused === undefined ? undefined : nameOf(problemOf(refused))).toBe('pack-used-before');
    const asThird = await read(packCode(), 'p3');
    expect(asThird.troubles.map(({ name }) => name)).toEqual(['pack-used-before']);
    expect(await server.atHand.store.verify()).toMatchObject({ ok: true });
  });

  test('nobody who writes with an old screen is told what the preparer read', async () => {
    const stale = await server.act('checker', lineNow(server, winner, 'cannula-removed', { site: 'looks well' }), {
      seen: { [`patient/${winner}`]: 1 },
    });
    expect(stale.statusCode).toBe(409);
    expect(stale.body).toContain('what was read is shown once the second check has been made');
    expect(stale.body).not.toContain('PA-2391');
    expect(stale.body).not.toContain('S1042');
  });
});

describe('a batch that is stopped', () => {
  test('says so at the scan, on the stock list, and when somebody prepares all the same', async () => {
    const body = { batch: 'PA-2391', why: 'batch recall', actWithin: '48 hours', reason: 'particles' };
    await server.done('nurse', { name: 'stop batch', body });
    expect((await read(packCode({ serial: 'S7' }), 'p3')).troubles.map(({ name }) => name)).toEqual(['batch-stopped']);
    const { batches } = await server.read<StockView>('/api/stock?unit=thornbeck');
    expect(batches).toMatchObject([{ batch: 'PA-2391', stops: [{ why: 'batch recall', since: '2026-11-25' }] }]);
    const scan = { code: packCode({ serial: 'S7' }), productNumber: packNumbers.ours, serial: 'S7' };
    expect(nameOf(problemOf(await prepare({ scan }, 'p3')))).toBe('batch-stopped');
  });

  test('stopped after the preparation: the check may be made, the infusion is not started', async () => {
    const { preparation } = await server.read<{ preparation?: { entry: string } }>(`/api/people/${winner}/visit`);
    const reading = {
      product: 'zoledronic acid 5 mg in 100 mL',
      batchLastFour: '2391',
      expiryMonth: '2028-04',
      pumpMillilitersPerHour: 200,
      identifiers: ['full name', 'number'],
    };
    await server.done('checker', {
      name: 'second check',
      patient: winner,
      preparation: preparation?.entry,
      reading,
    });
    const start = await server.act('nurse', startInfusion(winner));
    expect(nameOf(problemOf(start))).toBe('batch-stopped');
  });
});
