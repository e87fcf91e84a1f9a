/** Who does what is next: who may check (practice page, question 5; hazard 25), and who is not to try again at a vein. */
import type { TodayView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  decidedToGo,
  lineNow,
  listToday,
  openToday,
  planToday,
  readyToPrepare,
  wilhelmina,
  packRead,
} from './support/at-the-chair.ts';
import { type OwnServer, ownServer, people, problemOf, setUp } from './support/own-server.ts';

const patient = 'wilhelmina';
let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  await openToday(server);
  await readyToPrepare(server, patient);
});
afterAll(() => server.close());

const mayCheck = async () => (await server.read<VisitView>(`/api/people/${patient}/visit`, 'nurse')).mayCheck;
const waits = async () =>
  (await server.read<TodayView>('/api/today?unit=thornbeck', 'nurse')).next.find((one) => one.patient === patient)
    ?.what;

test('whose cannula failed twice is asked for somebody else on the day’s page (question 10; hazard 32)', async () => {
  const next = async () =>
    (await server.read<TodayView>('/api/today?unit=thornbeck', 'nurse')).next.find((one) => one.patient === 'ada')
      ?.what;
  await listToday(server, 'ada', 2, { given: 'Ada', family: 'Brindle', born: '1941-02-03', number: '999 204 7721' });
  await decidedToGo(server, 'ada', 2);
  const tried = { site: 'left forearm', gauge: '22', tries: 1, placed: false };
  await server.done('nurse', lineNow(server, 'ada', 'cannula', tried));
  expect(await next()).toBe('place the cannula');
  await server.done('nurse', lineNow(server, 'ada', 'cannula', tried));
  expect(await next()).toBe(`place the cannula: somebody other than ${people.nurse.name}, whose tries failed`);
});

test('before anything is prepared nobody is named', async () => {
  expect(await mayCheck()).toBeUndefined();
  expect(await waits()).toBe('prepare and read the pack');
});

test('whom the opening does not name prepares nothing, by one line or by several sent together (hazard 35)', async () => {
  const line = lineNow(server, patient, 'preparation', packRead).line;
  for (const act of [
    { name: 'record', patient, line },
    { name: 'record together', patient, lines: [line] },
  ]) {
    const refused = await server.act('pharmacist', act);
    expect([act.name, problemOf(refused).refusals?.[0]?.name]).toEqual([act.name, 'not-in-the-opening']);
  }
});

test('what stands prepared names who may check it, on the day’s page and at the chair, and leaves its preparer out', async () => {
  await server.done('nurse', lineNow(server, patient, 'preparation', packRead));
  expect(await mayCheck()).toEqual([people.checker.name]);
  expect(await waits()).toBe(`second check: waiting for someone other than the preparer: ${people.checker.name}`);
});
