/**
 * The minutes of watching that the screen asks for are those that the record asks about, also after part of a bag: it counted as
 * no dose, and a second dose was watched as a first. 30 and 15: numbers of the teaching protocol, common practice, no source.
 */
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { infusionRuns, lineNow, listToday, planToday, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, problemOf, setUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, 'first', 1, wilhelmina);
  const olive = { given: 'Olive', family: 'Tranter', born: '1939-02-11', number: '999 204 7810' };
  await listToday(server, 'later', 2, olive);
  const body = { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' };
  const line = { kind: 'dose', body, effectiveAt: '2025-10-02' };
  await server.done('nurse', { name: 'record', patient: 'later', line });
});
afterAll(() => server.close());

test.each([
  ['first', 30],
  ['later', 15],
] as const)('part of a %s dose: %i minutes, on the screen and when it is written', async (patient, minutes) => {
  await infusionRuns(server, patient);
  const stopped = { name: 'finish infusion', patient, milliliters: 1, stoppedBecause: 'pain' };
  await server.done('nurse', { ...stopped, incident: 'told Imre' });
  expect((await server.read<VisitView>(`/api/people/${patient}/visit`)).observeMinutes).toBe(minutes);
  await server.done('nurse', lineNow(server, patient, 'cannula-removed', { site: 'looks well' }));
  const shorter = await server.act('nurse', lineNow(server, patient, 'observed', { minutes: minutes - 1, well: true }));
  expect(problemOf(shorter).refusals?.[0]?.says).toContain(`the protocol watches ${minutes} after`);
  await server.done('nurse', lineNow(server, patient, 'observed', { minutes, well: true }));
});
