/** Two nurses at two tablets start one dose at the same moment: one does, the other reads who did; a double tap is one start. */
import { randomUUID } from 'node:crypto';
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listToday, packChecked, planToday, startInfusion, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, people, setUp } from './support/own-server.ts';

const patient = 'wilhelmina';
let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  await packChecked(server, patient);
});
afterAll(async () => server.close());

test('one start is written, whoever and however often', async () => {
  const { seq } = await server.read<VisitView>(`/api/people/${patient}/visit`);
  const start = startInfusion(patient);
  const seen = { [`patient/${patient}`]: seq };
  const tap = { id: randomUUID(), seen };
  const answers = await Promise.all([
    server.act('nurse', start, tap),
    server.act('nurse', start, tap),
    server.act('checker', start, { seen }),
  ]);
  const [first, again, other] = answers.map(({ statusCode }) => statusCode);
  expect(first).toBe(again);
  expect(new Set([first, other])).toEqual(new Set([200, 409]));
  const winner = first === 200 ? people.nurse.name : people.checker.name;
  const loser = answers.find(({ statusCode }) => statusCode === 409);
  expect(loser?.json<{ missed: unknown }>().missed).toEqual([
    expect.objectContaining({ kind: 'infusion-started', by: winner }),
  ]);
  const record = await server.atHand.notes.of('patient', patient);
  expect(record.all.filter(({ kind }) => kind === 'infusion-started')).toHaveLength(1);
});
