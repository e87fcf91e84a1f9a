/** What Today says beside the list: who is late, who could come instead, when the last can have left. Sums by hand beside each. */
import type { TodayView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { lineNow, listToday, planToday, putOffAndGone, readyToPrepare } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, referralOf, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
const clock = movableClock('2026-11-25T09:05');

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server);
  await planToday(server, 2);
  const wanda = { given: 'Wanda', family: 'Ferreira', born: '1944-09-30', number: '999 204 7802' };
  const olive = { given: 'Olive', family: 'Tranter', born: '1939-02-11', number: '999 204 7810' };
  await listToday(server, 'wanda', 1, wanda);
  await listToday(server, 'olive', 2, olive);
  await server.done(
    'clerk',
    referralOf('edda', { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' }),
  );
  await workUp(server, 'edda');
});
afterAll(() => server.close());

const today = (): Promise<TodayView> => server.read<TodayView>('/api/today?unit=thornbeck');

test('nobody is late and no place is free: nobody is offered instead', async () => {
  const view = await today();
  expect([view.counts.late, view.couldCome]).toEqual([0, []]);
  // 3+5+8+1+6+1+3+2 to the start, 30 running, 3 removal, 30 watch after a first dose, 5 leaving: 97 minutes from 09:05.
  expect(view.finishEarliest).toBe('10:42');
});

test('a quarter of an hour past the arrival time somebody is late, and who could come is named', async () => {
  clock.moveOn(15);
  const view = await today();
  expect(view.visits.map(({ patient, late }) => [patient, late])).toEqual([
    ['wanda', 20],
    ['olive', 19],
  ]);
  expect(view.couldCome.map(({ name }) => name)).toEqual(['Edda Marrow']);
  expect(view.finishEarliest).toBe('10:57');
});

test('what is done is no longer ahead; who has gone home is not waited for', async () => {
  await readyToPrepare(server, 'wanda', 1);
  await server.done(
    'nurse',
    lineNow(server, 'olive', 'arrived', {
      session: 'thornbeck-2026-11-25',
      identifiers: ['full name', 'birth date'],
      chair: 2,
    }),
  );
  // Olive has all but the arrival before her: 97 - 3 = 94 minutes from 09:20.
  expect((await today()).finishEarliest).toBe('10:54');
  await putOffAndGone(server, 'olive');
  // Wanda: preparation 3, check 2, 30 running, removal 3, watch 30, leaving 5: 73 minutes from 09:20.
  expect((await today()).finishEarliest).toBe('10:33');
});

test('who is easily mistaken for another on the list is marked there; somebody of another day is not', async () => {
  const marked = async () => (await today()).visits.map(({ patient, nearNames }) => [patient, nearNames]);
  expect(await marked()).toEqual([
    ['wanda', []],
    ['olive', []],
  ]);
  const identity = { given: 'Olive', family: 'Fereira', born: '1939-02-11', sex: 'female', number: '999 204 7810' };
  await server.done('clerk', lineNow(server, 'olive', 'identity', identity));
  expect(await marked()).toEqual([
    ['wanda', ['Olive Fereira, born 11 February 1939']],
    ['olive', ['Wanda Ferreira, born 30 September 1944']],
  ]);
  const { nearNames } = await server.read<VisitView>('/api/people/olive/visit');
  expect(nearNames, 'and where her visit is open').toEqual(['Wanda Ferreira, born 30 September 1944']);
});
