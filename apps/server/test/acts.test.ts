import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PersonView } from '@twelvemonth/exchange';
import { type OwnServer, ownServer, referralOf, sessionOn, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
});
afterAll(async () => server.close());

describe('from the referral to the place', () => {
  test('a person is registered, worked up and booked, and every screen tells it', async () => {
    await server.done('clerk', referralOf('p1'));
    expect((await server.read<PersonView>('/api/people/p1')).standing.standing).toBe('referral received');
    await workUp(server, 'p1');
    await server.done('clerk', sessionOn('s1', '2026-11-26'));
    const booked = await server.done('clerk', { name: 'book', patient: 'p1', session: 's1', place: 2 });
    expect(booked.says).toContain('booked');
    const person = await server.read<PersonView>('/api/people/p1');
    expect(person.standing.standing).toBe('booked');
    expect(person.readiness?.verdict).toBe('ready');
  });
});
