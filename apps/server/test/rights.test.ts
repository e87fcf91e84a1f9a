import { routes } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type RouteName, whoMay } from '../src/who-may-read.ts';
import {
  type OwnServer,
  ownServer,
  people,
  problemOf,
  referralOf,
  setUp,
  type Somebody,
} from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('p1'));
});
afterAll(async () => server.close());

const names = Object.keys(routes) as RouteName[];
const somebodies = Object.keys(people) as Somebody[];
const addressOf = (name: RouteName): string => routes[name].path.replace(':patient', 'p1').replace(':session', 's1');
/** Routes that would end the session used by the sweep, or keep the connection open. */
const apart = new Set<RouteName>(['signOut', 'events', 'signIn', 'firstAdministrator']);

describe('who may ask what', () => {
  test('every route of the contract stands in the table and is served', async () => {
    expect(Object.keys(whoMay).toSorted()).toEqual([...names].toSorted());
    const unserved = names.filter(
      (name) => !server.app.hasRoute({ method: routes[name].method, url: routes[name].path }),
    );
    expect(unserved).toEqual([]);
  });

  test('nothing but the start page of the interface answers someone who is not signed in', async () => {
    const answered: RouteName[] = [];
    for (const name of names) {
      const answer = await server.app.inject({
        method: routes[name].method,
        url: addressOf(name),
        ...(routes[name].method === 'POST' ? { payload: {} } : {}),
      });
      // An empty sign-in is refused for its form before anyone is asked who they are.
      if (answer.statusCode !== 401) answered.push(name);
      else problemOf(answer);
    }
    expect(answered).toEqual(['status', 'firstAdministrator', 'signIn', 'openApi']);
  });

  test('the sweep: each route answers exactly the roles it is for (ASVS 8.2.1)', async () => {
    const wrong: string[] = [];
    for (const name of names.filter((one) => !apart.has(one))) {
      const allowed = whoMay[name];
      for (const somebody of somebodies) {
        const answer = await server.ask(addressOf(name), {
          method: routes[name].method,
          as: somebody,
          ...(routes[name].method === 'POST' ? { body: {} } : {}),
        });
        const may =
          allowed === 'anyone' || people[somebody].roles.some((role) => (allowed as readonly string[]).includes(role));
        if (may === (answer.statusCode === 403)) wrong.push(`${name} as ${somebody}: ${answer.statusCode}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('an administrator sees no patient, by any route that names one', async () => {
    for (const name of [
      'people',
      'person',
      'visit',
      'notes',
      'letter',
      'today',
      'session',
      'sessions',
      'recall',
      'pharmacy',
      'search',
      'flips',
      'waitingRows',
    ] as const) {
      const answer = await server.ask(addressOf(name), {
        method: routes[name].method,
        as: 'administrator',
        ...(routes[name].method === 'POST' ? { body: { text: 'Ark' } } : {}),
      });
      expect(`${name} ${answer.statusCode}`).toBe(`${name} 403`);
      expect(answer.body).not.toContain('Arkwright');
    }
  });

  test('rights are looked at before what was sent is read', async () => {
    const answer = await server.ask('/api/staff', { method: 'POST', as: 'nurse', body: { nonsense: true } });
    expect(answer.statusCode).toBe(403);
  });
});

describe('who looked', () => {
  test('is written down once for a screen that stays open, and read only by those who watch over the records', async () => {
    for (let time = 0; time < 3; time += 1) await server.ask('/api/people/p1', { as: 'assistant' });
    const looks = await server.atHand.looks.of('p1');
    const byAssistant = looks.filter(({ staff }) => server.atHand.accounts.nameOf(staff) === people.assistant.name);
    expect(byAssistant.filter(({ what }) => what === 'person')).toHaveLength(1);
    const asAuditor = await server.ask('/api/people/p1/notes', { as: 'auditor' });
    expect(asAuditor.body).toContain('Who looked');
    const asNurse = await server.ask('/api/people/p1/notes', { as: 'nurse' });
    expect(asNurse.body).not.toContain('Who looked');
  });
});
