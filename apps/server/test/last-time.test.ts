/** What the notes of last year tell whoever opens the visit, and how an entry that was written late shows itself. */
import type { PersonView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { decidedToGo, lineNow, listToday, planToday, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, setUp } from './support/own-server.ts';

const clock = movableClock('2026-11-25T09:05');
let server: OwnServer;

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server);
  await planToday(server);
  await listToday(server, 'wilhelmina', 1, wilhelmina);
});
afterAll(() => server.close());

it('the tries at the cannula, where it went in and by whom are told a year later (hazard 32)', async () => {
  const step = (kind: string, body: object): Promise<unknown> =>
    server.done('nurse', lineNow(server, 'wilhelmina', kind, body));
  await decidedToGo(server, 'wilhelmina', 3);
  await step('cannula', { site: 'left hand', gauge: '24', tries: 2, placed: false });
  await server.done(
    'checker',
    lineNow(server, 'wilhelmina', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true }),
  );
  clock.moveOn(365 * 24 * 60);
  server.forget('nurse');
  const { lastTime } = await server.read<VisitView>('/api/people/wilhelmina/visit');
  expect(lastTime).toEqual([
    'last visit Wednesday 25 November 2026, chair 3',
    'cannula 22 G, right forearm, 1 try, in place; 3 tries in all (Chris Check)',
  ]);
});

it('an entry written days after it was true says so; one of the day before does not (hazard 28)', async () => {
  const weighed = (effectiveAt: string): Promise<unknown> =>
    server.done('nurse', {
      name: 'record',
      patient: 'wilhelmina',
      line: {
        kind: 'weight',
        body: { quantity: { comparator: '', value: '64.0', unit: 'kg' }, method: 'measured' },
        effectiveAt,
      },
    });
  await weighed('2027-11-20');
  await weighed('2027-11-24');
  const { entries } = await server.read<PersonView>('/api/people/wilhelmina');
  const since = entries.filter(({ kind, on }) => kind === 'weight' && on > '2027');
  expect(since.map(({ on, late }) => [on, late])).toEqual([
    ['2027-11-24', false],
    ['2027-11-20', true],
  ]);
});
