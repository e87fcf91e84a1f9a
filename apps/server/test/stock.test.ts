/** Stock of a unit and the batch trace as the screens read them. Hazards 37, 38. */
import type { BatchesOfPersonView, StockView, TraceView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lineNow, listToday, planToday, readyToPrepare, packRead as pack } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, referralOf, setUp } from './support/own-server.ts';
import { tellsBatch } from './support/tells-batch.ts';

let server: OwnServer;

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await server.done('pharmacist', {
    name: 'receive packs',
    body: { unit: 'thornbeck', batch: 'PA-2391', product: pack.product, expiresOn: '2028-04-30', packs: 12 },
  });
  await server.done(
    'clerk',
    referralOf('ward', { given: 'Olive', family: 'Tranter', born: '1939-02-11', number: '999 204 7810' }),
  );
  await server.done('nurse', {
    name: 'record',
    patient: 'ward',
    line: {
      kind: 'dose',
      body: { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: 'pa-2391' },
      effectiveAt: '2025-10-02',
    },
  });
  const who = { given: 'Wanda', family: 'Ferreira', born: '1944-09-30', number: '999 204 7802' };
  await listToday(server, 'here', 1, who);
  await readyToPrepare(server, 'here');
  await server.done('nurse', lineNow(server, 'here', 'preparation', pack));
});
afterAll(() => server.close());

const stock = (): Promise<StockView> => server.read<StockView>('/api/stock?unit=thornbeck');
const trace = (as: 'nurse' | 'checker' | 'pharmacist' = 'nurse'): Promise<TraceView> =>
  server.read<TraceView>('/api/stock/trace?batch=pa-2391', as);

test('twelve came in, one is opened: eleven by the sum, and two people have the batch in their notes', async () => {
  expect((await stock()).batches).toMatchObject([
    { batch: 'PA-2391', packs: 11, opened: 1, people: 2, expired: false, expiresOn: '2028-04-30' },
  ]);
});

test('whoever may be asked for the second check is told nothing of the batch, nor whoever prepared it, beside whom they stand', async () => {
  for (const as of ['checker', 'nurse'] as const) {
    expect((await trace(as)).people.map(({ patient }) => patient)).toEqual(['ward']);
    for (const url of ['/api/people/here/batches', '/api/people/here', '/api/people/here/visit']) {
      const answer = await server.ask(url, { as });
      expect([url, answer.statusCode, tellsBatch(answer.body)]).toEqual([url, 200, false]);
    }
  }
});

test('checked, the trace finds the ward’s dose and the pack that was opened, the newest first', async () => {
  const { preparation } = await server.read<VisitView>('/api/people/here/visit');
  const { product, minutes, identifiers } = pack;
  const reading = { product, minutes, identifiers, batchLastFour: '2391', expiryMonth: '2028-04' };
  await server.done('checker', { name: 'second check', patient: 'here', preparation: preparation?.entry, reading });
  expect((await trace()).people).toMatchObject([
    { patient: 'here', on: '2026-11-25', what: 'prepared for them today, not started' },
    { patient: 'ward', on: '2025-10-02', where: 'ward' },
  ]);
});

test('stopped: who had it, who was told, and the person’s own page of batches', async () => {
  await server.done('nurse', {
    name: 'stop batch',
    body: { batch: 'PA-2391', why: 'batch recall', actWithin: '48 hours', reason: 'particles' },
  });
  expect((await stock()).batches[0]).toMatchObject({ stops: [{ why: 'batch recall' }], told: 0, inUse: 1 });
  await server.done('clerk', {
    name: 'record',
    patient: 'ward',
    line: {
      kind: 'told-of-batch',
      body: { batch: 'PA-2391', how: 'telephone', note: 'well' },
      effectiveAt: '2026-11-25',
    },
  });
  expect((await stock()).batches[0]).toMatchObject({ told: 1 });
  const { people, stopped } = await trace();
  expect(stopped).toBe(true);
  expect(people.map(({ told }) => told?.how)).toEqual([undefined, 'telephone']);
  const { batches } = await server.read<BatchesOfPersonView>('/api/people/ward/batches');
  expect(batches).toMatchObject([{ batch: 'pa-2391', on: '2025-10-02', stopped: 'batch recall: particles' }]);
});

test('a count that differs from the sum keeps both', async () => {
  await server.done('nurse', { name: 'count packs', body: { unit: 'thornbeck', batch: 'PA-2391', packs: 10 } });
  expect((await stock()).batches[0]).toMatchObject({ packs: 10, counted: { packs: 10, saidThen: 11 } });
});
