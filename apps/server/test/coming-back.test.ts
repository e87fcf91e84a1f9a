/** The recall of one person through the wire: practice page 1a rows 22 and 29, safety rules on the three kinds of no. */
import type { CohortView, ComingBackView, DecidingView, recallAnswer } from '@twelvemonth/exchange';
import { plainDate } from '@twelvemonth/clinical';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { z } from 'zod';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { type OwnServer, ownServer, referralOf, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
const clock = movableClock('2026-11-26T10:00');
const today = (): string => plainDate(clock.local('Europe/London').today);
const hers = () => server.read<ComingBackView>('/api/people/wilhelmina/coming-back');
const write = (kind: string, body: object, as: 'nurse' | 'clerk' = 'nurse') =>
  server.done(as, { name: 'record', patient: 'wilhelmina', line: { kind, body, effectiveAt: today() } });

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server, '2026-11-26');
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina', '2026-11-26');
  await write('dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' });
  await write('reaction', { what: 'aching, fever', severity: 'mild', days: 2 });
});
afterAll(() => server.close());

it('before the recall nothing is asked; the reaction stands ready for the next talk, here and on the sheet for deciding', async () => {
  const view = await hers();
  expect(view).toMatchObject({ due: '2027-11-26', checklist: [], tried: 'not tried yet', dosesGiven: 1 });
  expect(view.felt).toMatchObject([{ severity: 'mild', atTheChair: false }]);
  expect((await server.read<DecidingView>('/api/people/wilhelmina/deciding')).felt).toEqual(view.felt);
});

it('from ten weeks before: what is to ask, on the list too, and what each no would mean', async () => {
  // 70 days before 26 November 2027.
  clock.moveOn(295 * 24 * 60);
  expect(today()).toBe('2027-09-17');
  const view = await hers();
  expect(view.recallFrom).toBe('2027-09-17');
  expect(view.checklist.map(({ item, state }) => [item, state])).toEqual([
    ['still wanted', 'to ask'],
    ['bloods', 'to ask'],
    ['teeth', 'to ask'],
    ['weight', 'to ask'],
    ['vitamin D', 'to ask'],
    ['address', 'to ask'],
    ['after the last dose', 'answered'],
  ]);
  // Three different answers, three different dates: the demo sheet's 84, 28 and 365 days.
  expect(view.askAgain).toEqual({ thisDose: '2027-12-10', thisMedicine: '2027-10-15', allContact: '2028-09-16' });
  const { people } = await server.read<z.infer<typeof recallAnswer>>('/api/recall');
  expect(people).toMatchObject([
    { patient: 'wilhelmina', open: ['still wanted', 'bloods', 'teeth', 'weight', 'vitamin D', 'address'] },
  ]);
});

it('tries count by route; two in vain are enough to be said not to be reachable', async () => {
  await write('call', { route: 'telephone', about: 'recall', reached: false }, 'clerk');
  expect((await hers()).triedEnough).toBe(false);
  await write('call', { route: 'letter', about: 'recall', reached: false }, 'clerk');
  expect(await hers()).toMatchObject({
    triedEnough: true,
    tried: 'telephone: 1 try in vain, last on 17 Sep 2027; letter: 1 try in vain, last on 17 Sep 2027',
  });
});

it('whom we speak to stands on the list, with what they may be told', async () => {
  await write(
    'contact-person',
    { who: 'Heron House', relation: 'care home', mayBeTold: 'not asked yet', speakToFirst: true },
    'clerk',
  );
  const { people } = await server.read<z.infer<typeof recallAnswer>>('/api/recall');
  expect(people[0]?.speakTo).toEqual([
    'ring first: Heron House (care home), not asked whether they may be told: tell them nothing yet',
  ]);
});

it('a clerk does not end the recall; after a no to all contact nobody rings', async () => {
  const closed = {
    name: 'record',
    patient: 'wilhelmina',
    line: { kind: 'closed', body: { reason: 'no answer' }, effectiveAt: today() },
  };
  expect((await server.act('clerk', closed)).statusCode).toBe(403);
  await write('refusal', { to: 'all contact', words: 'no more letters' });
  expect((await hers()).noCall).toMatch(/no to all contact on 17 Sep 2027/);
});

it('who fell out where: she began in 2026, and stands behind the step with the day and the reason', async () => {
  const of = (query: string) => server.read<CohortView>(`/api/cohort${query}`);
  expect(await of('?year=2025')).toMatchObject({ years: [{ year: '2026', began: 1 }], began: 0 });
  const { curves, staying } = await of('?year=2026');
  expect(curves[0]).toMatchObject({ title: 'Coming for the second dose', people: 1 });
  expect(curves[0]?.who).toMatchObject([
    {
      patient: 'wilhelmina',
      end: 'fell out',
      from: '2026-11-26',
      on: '2027-09-17',
      days: 295,
      why: 'no to all contact: "no more letters"',
    },
  ]);
  expect(curves[1]?.people, 'nobody had a second dose').toBe(0);
  expect(staying?.who).toMatchObject([{ end: 'off treatment', days: 295 }]);
  // Seen for 295 days: nothing is drawn or read beyond.
  expect([curves[0]?.until, curves[0]?.rows.map(({ says }) => says)]).toEqual([295, ['6 months']]);
  expect(staying?.rows.map(({ says }) => says)).toEqual(['6 months']);
  expect(staying?.lines.map(({ says }) => says)).toEqual(['on treatment', 'off treatment', 'died']);
  expect((await server.ask('/api/cohort?year=next', { as: 'nurse' })).statusCode).toBe(422);
  expect((await server.ask('/api/cohort', { as: 'administrator' })).statusCode).toBe(403);
});

it('a year later the days for bloods have passed, and are told to nobody as if they were to come', async () => {
  const { bloodsBetween, due } = await hers();
  expect([due, bloodsBetween?.until.slice(0, 4)]).toEqual(['2027-11-26', '2027']);
  clock.moveOn(365 * 24 * 60);
  server.forget('nurse');
  expect((await hers()).bloodsBetween).toBeUndefined();
});
