/** The calendar file of a booked place: booked, moved, given up; what must not stand in it. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type OwnServer, ownServer, problemOf, referralOf, sessionOn, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
  await server.done('nurse', sessionOn('s1', '2026-12-03'));
  await server.done('nurse', sessionOn('s2', '2026-12-08'));
});
afterAll(() => server.close());

const file = () => server.ask('/api/people/wilhelmina/calendar', { as: 'clerk' });
const line = (body: string, name: string): string | undefined =>
  body.split('\r\n').findLast((one) => one.startsWith(`${name}:`) || one.startsWith(`${name};`));

it('goes with the place: the same event, a higher number, at last a cancellation', async () => {
  expect(problemOf(await file()).detail).toContain('No place is booked');
  await server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
  const booked = await file();
  expect(booked.headers['content-type']).toContain('text/calendar');
  expect(line(booked.body, 'DTSTART')).toBe('DTSTART;TZID=Europe/London:20261203T090000');
  const why = { reason: 'asked for another day', askedBy: 'the patient' };
  await server.done('clerk', { name: 'move', patient: 'wilhelmina', from: 's1', to: 's2', place: 1, ...why });
  const moved = (await file()).body;
  expect(line(moved, 'UID')).toBe(line(booked.body, 'UID'));
  expect([line(booked.body, 'SEQUENCE'), line(moved, 'SEQUENCE')]).toEqual(['SEQUENCE:0', 'SEQUENCE:2']);
  expect(line(moved, 'DTSTART')).toBe('DTSTART;TZID=Europe/London:20261208T090000');
  await server.done('clerk', { name: 'give up place', patient: 'wilhelmina', session: 's2', ...why });
  expect(line((await file()).body, 'METHOD')).toBe('METHOD:CANCEL');
});

it('names no medicine, no reason and no person', async () => {
  expect((await file()).body).not.toMatch(/zoledron|bone|osteo|drip|infusion|Wilhelmina|Arkwright|wilhelmina|999/i);
});
