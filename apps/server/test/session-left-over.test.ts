/** What a session leaves over: held while it is open, never closed, a handover nobody took on, a second session of the day. */
import type { SessionDayView, TodayView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { listToday, openToday, planToday, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, people, sessionOn, setUp, thornbeck } from './support/own-server.ts';

let server: OwnServer;
const clock = movableClock('2026-11-25T08:40');
const morning = 'thornbeck-2026-11-25';
const [anHour, aDay] = [60, 24 * 60];

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server);
  await planToday(server, 2);
  await listToday(server, 'wilhelmina', 1, wilhelmina);
  await server.done('pharmacist', {
    name: 'receive packs',
    body: {
      unit: 'thornbeck',
      batch: 'PA-2391',
      product: 'zoledronic acid 5 mg in 100 mL',
      expiresOn: '2028-04-30',
      packs: 12,
    },
  });
  await openToday(server);
});
afterAll(() => server.close());

const today = (): Promise<TodayView> => server.read<TodayView>('/api/today?unit=thornbeck');
const day = (): Promise<SessionDayView> => server.read<SessionDayView>(`/api/sessions/${morning}/day`);
const staffOf = (somebody: keyof typeof people): string =>
  server.atHand.accounts.named(people[somebody].username)?.staff ?? '';

test('who is expected later is told as expected, and once their time has passed as not come', async () => {
  expect((await day()).missing).toMatchObject([{ patient: 'wilhelmina', what: 'not come', comesAt: '09:00' }]);
  clock.moveOn(anHour);
  expect((await day()).missing.map(({ comesAt }) => comesAt)).toEqual([undefined]);
});

test('of a batch only the packs that lie at this unit are asked for; others come after', async () => {
  const more = { product: 'zoledronic acid 5 mg in 100 mL', expiresOn: '2027-02-28', packs: 4 };
  await server.done('administrator', {
    name: 'set unit',
    unit: 'saltmere',
    body: { ...thornbeck, name: 'Saltmere Day Unit' },
  });
  await server.done('pharmacist', { name: 'receive packs', body: { unit: 'saltmere', batch: 'PA-1111', ...more } });
  expect((await day()).batches.map(({ batch, isHere }) => [batch, isHere])).toEqual([
    ['PA-2391', true],
    ['PA-1111', false],
  ]);
});

test('a count that is not what the sum said says so; who is here written anew counts nothing again', async () => {
  const opening = async (counts: readonly { batch: string; packs: number }[]): Promise<void> => {
    const { opened } = await day();
    await server.done('nurse', {
      name: 'open session',
      session: morning,
      unit: 'thornbeck',
      body: {
        present: opened?.present.map(({ staff, role }) => ({ staff, role })),
        secondCheckers: opened?.secondCheckers.map(({ staff }) => staff),
        kit: { checkedBy: staffOf('checker'), complete: true, expiresOn: '2027-03-31' },
        chairs: 6,
        counts,
      },
    });
  };
  await opening([{ batch: 'PA-2391', packs: 11 }]);
  await opening([]);
  expect((await day()).opened?.counts).toEqual([{ batch: 'PA-2391', packs: 11, bySum: 12 }]);
});

test('a second session of the day is named beside the first', async () => {
  await server.done('clerk', sessionOn('thornbeck-afternoon', '2026-11-25'));
  const view = await today();
  expect([view.session, view.alsoToday]).toEqual([
    morning,
    [{ session: 'thornbeck-afternoon', opensAt: '08:30', closesAt: '17:00', listed: 0 }],
  ]);
});

test('a session that was never closed stands on the page of the next day', async () => {
  expect((await today()).leftOver).toEqual([]);
  clock.moveOn(aDay);
  expect((await today()).leftOver).toEqual([{ session: morning, on: '2026-11-25', state: 'open' }]);
});

test('closed the day after, its handover waits for whom it is for, and then nothing is left over', async () => {
  await server.done('clerk', {
    name: 'record',
    patient: 'wilhelmina',
    line: {
      kind: 'call',
      body: { route: 'telephone', about: 'place', reached: false, note: 'rang twice' },
      effectiveAt: '2026-11-26',
    },
  });
  await server.done('nurse', {
    name: 'close session',
    session: morning,
    body: { counts: [{ batch: 'PA-2391', packs: 11 }], handover: 'nothing', to: staffOf('checker') },
  });
  expect((await today()).leftOver).toEqual([
    {
      session: morning,
      on: '2026-11-25',
      state: 'closed, handover waits',
      to: { staff: staffOf('checker'), name: people.checker.name },
    },
  ]);
  await server.done('checker', { name: 'accept handover', session: morning });
  expect((await today()).leftOver).toEqual([]);
});
