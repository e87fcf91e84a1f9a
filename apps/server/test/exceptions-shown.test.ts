/**
 * The safety page: a prescriber's exception has a named prescriber, a reason and an expiry, and is shown on the list. On Today, the
 * session's list, the visit and the day sheet. Hazard 61.
 */
import type { SessionView, TodayView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listToday, planToday, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, setUp } from './support/own-server.ts';

let server: OwnServer;
const says =
  "prescriber's exception for teeth and jaw: Petra Press, until 30 Nov 2026: socket healed, seen on 20 November";

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, 'p1', 1, wilhelmina);
  await server.done('prescriber', {
    name: 'record',
    patient: 'p1',
    line: {
      kind: 'prescriber-exception',
      body: { requirement: 'teeth and jaw', reason: 'socket healed, seen on 20 November', expiresOn: '2026-11-30' },
      effectiveAt: '2026-11-25',
    },
  });
});
afterAll(() => server.close());

test('on Today, also of somebody who is ready', async () => {
  const [row] = (await server.read<TodayView>('/api/today?unit=thornbeck')).visits;
  expect(row).toMatchObject({ verdict: 'ready', exceptions: [says] });
});

test('on the list of the session and at the visit', async () => {
  const { list } = await server.read<SessionView>('/api/sessions/thornbeck-2026-11-25');
  expect(list[0]?.who?.exceptions).toEqual([says]);
  expect((await server.read<VisitView>('/api/people/p1/visit')).exceptions).toEqual([says]);
});

test('on the day sheet', async () => {
  const { body } = await server.ask('/api/sessions/thornbeck-2026-11-25/day-sheet', { as: 'nurse' });
  expect(body).toContain('Petra Press, until 30 Nov 2026: socket healed, seen on 20 November');
});
