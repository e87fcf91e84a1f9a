/** A batch is stopped while packs of it are prepared and run: whoever is at the chair is told, and nobody whose check is to come. */
import type { StockView, TodayView, TraceView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  infusionRuns,
  lineNow,
  listToday,
  planToday,
  readyToPrepare,
  packRead as pack,
} from './support/at-the-chair.ts';
import { type OwnServer, ownServer, problemOf, referralOf, setUp } from './support/own-server.ts';
import { tellsBatch } from './support/tells-batch.ts';

let server: OwnServer;
const dose = (patient: string, on: string, batch?: string) => ({
  name: 'record',
  patient,
  line: {
    kind: 'dose',
    body: { medicine: 'zoledronic acid 5 mg', setting: 'ward', ...(batch === undefined ? {} : { batch }) },
    effectiveAt: on,
  },
});

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await server.done('pharmacist', {
    name: 'receive packs',
    body: { unit: 'thornbeck', batch: 'PA-2391', product: pack.product, expiresOn: '2028-04-30', packs: 12 },
  });
  const wanda = { given: 'Wanda', family: 'Ferreira', born: '1944-09-30', number: '999 204 7802' };
  await listToday(server, 'runs', 1, wanda);
  await infusionRuns(server, 'runs');
  const edda = { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' };
  await listToday(server, 'prepared', 2, edda);
  await readyToPrepare(server, 'prepared', 2);
  await server.done('nurse', lineNow(server, 'prepared', 'preparation', pack));
  const olive = { given: 'Olive', family: 'Tranter', born: '1939-02-11', number: '999 204 7810' };
  await server.done('clerk', referralOf('ward', olive));
  await server.done('nurse', dose('ward', '2025-10-02', ' pa-23 91'));
  await server.done('nurse', dose('ward', '2024-10-01', 'PA-2391'));
  await server.done('nurse', dose('ward', '2026-11-25'));
});
afterAll(() => server.close());

const visit = (patient: string, as: 'nurse' | 'checker' = 'nurse') =>
  server.read<VisitView>(`/api/people/${patient}/visit`, as);
const today = () => server.read<TodayView>('/api/today?unit=thornbeck');
const trace = () => server.read<TraceView>('/api/stock/trace?batch=pa-2391');

test('before the stop nothing is said, and the trace knows what runs', async () => {
  expect((await today()).stoppedPacks).toEqual([]);
  expect((await visit('runs')).stoppedPack).toBeUndefined();
  expect((await trace()).people.map(({ patient, what }) => [patient, what])).toEqual([
    ['runs', 'running now'],
    ['ward', 'zoledronic acid 5 mg'],
  ]);
  // Whose pack waits for its second check is not told before; that one waits is.
  expect((await trace()).waitForCheck).toBe(1);
});

test('somebody who had it twice stands there once, with both days; a dose without a batch is named beside', async () => {
  const { people, withoutBatch } = await trace();
  expect(people.find(({ patient }) => patient === 'ward')).toMatchObject({
    on: '2025-10-02',
    also: [{ on: '2024-10-01', where: 'ward' }],
  });
  expect(withoutBatch).toMatchObject([{ patient: 'ward', on: '2026-11-25', where: 'ward' }]);
  const { withoutBatch: own } = await server.read<{ withoutBatch: unknown[] }>('/api/people/ward/batches');
  expect(own).toMatchObject([{ on: '2026-11-25' }]);
});

test('stopped: told on Today and at each chair, with the batch only where the check has been made', async () => {
  await server.done('pharmacist', {
    name: 'stop batch',
    body: {
      batch: 'pa-2391',
      why: 'batch recall',
      actWithin: 'at once',
      reason: 'particles in PA-2391',
    },
  });
  expect((await today()).stoppedPacks.map(({ patient, state }) => [patient, state])).toEqual([
    ['runs', 'runs'],
    ['prepared', 'prepared'],
  ]);
  expect((await visit('runs')).stoppedPack?.says).toBe(
    'Batch PA-2391: batch recall since 25 Nov 2026, particles in PA-2391',
  );
  expect((await visit('prepared')).stoppedPack).toMatchObject({ state: 'prepared' });
  for (const url of ['/api/people/prepared/visit', '/api/today?unit=thornbeck']) {
    const answer = await server.ask(url, { as: 'checker' });
    // What runs was checked: only the pack that waits for its check says nothing.
    const says = answer.body.replaceAll('Batch PA-2391: batch recall since 25 Nov 2026, particles in PA-2391', '');
    expect([url, answer.statusCode, tellsBatch(says)]).toEqual([url, 200, false]);
  }
  const [row] = (await server.read<StockView>('/api/stock?unit=thornbeck')).batches;
  expect(row).toMatchObject({ inUse: 2, people: 3, told: 0, diedUntold: 0 });
});

test('once paused it does not run again; what was given is written', async () => {
  await server.done('nurse', { name: 'pause infusion', patient: 'runs', reason: 'batch recalled' });
  expect((await visit('runs')).stoppedPack?.state).toBe('stands still');
  const resumed = problemOf(
    await server.act('nurse', {
      name: 'resume infusion',
      patient: 'runs',
      alongTheLine: 'vented set, no air, clamp shut',
    }),
  );
  expect(resumed.refusals?.map(({ name }) => name)).toEqual(['batch-stopped']);
});

test('somebody who died untold is not counted as still to tell', async () => {
  await server.done('clerk', {
    name: 'record',
    patient: 'ward',
    line: { kind: 'died', body: { source: 'family doctor' }, effectiveAt: '2026-11-25' },
  });
  const [row] = (await server.read<StockView>('/api/stock?unit=thornbeck')).batches;
  expect(row).toMatchObject({ people: 3, told: 0, diedUntold: 1 });
  expect((await trace()).people.find(({ patient }) => patient === 'ward')?.died).toBe('2026-11-25');
});

test('written without its hyphen it is asked about, and a stop of either spelling holds both', async () => {
  const body = { batch: 'PA2391', why: 'quarantine', reason: 'cartons dented' };
  const asked = problemOf(await server.act('pharmacist', { name: 'stop batch', body }));
  expect(asked.refusals).toMatchObject([
    { name: 'is-it-right', says: 'You typed batch PA2391; there is a batch PA-2391 here: is it the same one?' },
  ]);
  const received = { unit: 'thornbeck', batch: 'PA2391', product: pack.product, expiresOn: '2028-04-30', packs: 2 };
  const first = problemOf(await server.act('pharmacist', { name: 'receive packs', body: received }));
  expect(first.refusals?.map(({ name }) => name)).toEqual(['is-it-right']);
  const says = asked.refusals?.map((one) => one.says) ?? [];
  await server.done('pharmacist', { name: 'receive packs', body: received, confirms: says });
  // Nobody stopped PA2391 itself: the recall of PA-2391 holds it.
  const { entry } = (await visit('prepared')).preparation ?? { entry: '' };
  await server.done('nurse', { name: 'withdraw', patient: 'prepared', entry, reason: 'recalled' });
  const again = lineNow(server, 'prepared', 'preparation', { ...pack, batch: 'PA2391' });
  expect(problemOf(await server.act('nurse', again)).refusals?.map(({ name }) => name)).toEqual(['batch-stopped']);
  expect((await trace()).alike).toEqual(['PA2391']);
});
