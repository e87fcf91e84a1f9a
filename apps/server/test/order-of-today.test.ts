/** Where people stand on Today: by their next act, with who has gone home last; who sits where; who is offered a place that came free. */
import type { SessionView, TodayView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { decidedToGo, lineNow, listToday, planToday, putOffAndGone } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, setUp } from './support/own-server.ts';

const session = 'thornbeck-2026-11-25';
let server: OwnServer;

beforeAll(async () => {
  server = await ownServer({ clock: movableClock('2026-11-25T08:50') });
  await setUp(server);
  await planToday(server, 4);
  for (const [index, [patient, given, family]] of [
    ['olive', 'Olive', 'Tranter'],
    ['wanda', 'Wanda', 'Ferreira'],
    ['edda', 'Edda', 'Marrow'],
  ].entries())
    await listToday(server, patient ?? '', index + 1, {
      given: given ?? '',
      family: family ?? '',
      born: `194${index}-09-30`,
      number: `999 205 700${index}`,
    });
});
afterAll(() => server.close());

const order = async (): Promise<string[]> =>
  (await server.read<TodayView>('/api/today?unit=thornbeck')).visits.map(({ patient }) => patient);

const arrive = (patient: string, chair: number): Promise<unknown> =>
  server.done(
    'nurse',
    lineNow(server, patient, 'arrived', { session, identifiers: ['full name', 'birth date'], chair }),
  );

test('before anybody has come: by the time they come', async () => {
  expect(await order()).toEqual(['olive', 'wanda', 'edda']);
});

test('whoever is in the unit and waits for an act stands before those still to come', async () => {
  await decidedToGo(server, 'edda', 2);
  expect(await order()).toEqual(['edda', 'olive', 'wanda']);
});

test('who has gone home stands last', async () => {
  await arrive('olive', 1);
  await putOffAndGone(server, 'olive');
  expect(await order()).toEqual(['edda', 'wanda', 'olive']);
});

test('a visit says which chair is theirs and who sits in the others; who has gone home sits nowhere', async () => {
  const wanda = await server.read<VisitView>('/api/people/wanda/visit');
  expect([wanda.chair, wanda.seated]).toEqual([undefined, [{ chair: 2, name: 'Edda Marrow' }]]);
  const edda = await server.read<VisitView>('/api/people/edda/visit');
  expect([edda.chair, edda.seated]).toEqual([2, []]);
});

test('who was put off this morning is not offered a place of the same day', async () => {
  const { couldCome } = await server.read<SessionView>(`/api/sessions/${session}`);
  expect(couldCome.map(({ patient }) => patient)).not.toContain('olive');
});

test('in the middle of a visit the answer says what was recorded, not when the next dose is due', async () => {
  const { says } = await server.done(
    'nurse',
    lineNow(server, 'edda', 'observations', { pulsePerMinute: 74, when: 'during' }),
  );
  expect(says).toBe('Recorded for Edda Marrow: observations.');
  const { seq } = await server.read<VisitView>('/api/people/edda/visit');
  const ask = {
    name: 'decide',
    patient: 'edda',
    decision: 'ask a prescriber',
    reasonCode: 'other',
    note: 'new palpitations',
  };
  const asked = await server.done('nurse', ask, { seen: { 'patient/edda': seq } });
  expect(asked.says).toBe('Recorded for Edda Marrow: ask a prescriber.');
});
