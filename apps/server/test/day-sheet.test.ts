/** The day sheet as the server makes and keeps it: what is known stands on it, what the preparer read does not. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepNewestDaySheets } from '../src/documents/kept-day-sheets.ts';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { lineNow, listToday, planToday, putOffAndGone, readyToPrepare, packRead } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, sessionOn, setUp } from './support/own-server.ts';

const session = 'thornbeck-2026-11-25';
let server: OwnServer;
let folder: string;
const clock = movableClock('2026-11-25T09:00');

beforeAll(async () => {
  server = await ownServer({ clock });
  folder = join(server.folder, 'day-sheets');
  await setUp(server);
  await planToday(server);
  await listToday(server, 'wanda', 2, {
    given: 'Wanda',
    family: 'Ferreira',
    born: '1944-09-30',
    number: '999 204 7802',
  });
  await listToday(server, 'ada', 1, { given: 'Ada', family: 'Brindle', born: '1941-02-03', number: '999 204 7721' });
  await readyToPrepare(server, 'wanda');
  await server.done('nurse', lineNow(server, 'wanda', 'preparation', packRead));
});
afterAll(() => server.close());

const sheet = async (): Promise<string> =>
  (await server.ask(`/api/sessions/${session}/day-sheet`, { as: 'clerk' })).body;

describe('the day sheet', () => {
  test('people in the order of their arrival, with what is known, and the number of the last commit', async () => {
    const html = await sheet();
    const { commit } = await server.atHand.store.tail();
    expect(html.indexOf('Ada Brindle')).toBeLessThan(html.indexOf('Wanda Ferreira'));
    for (const words of [
      '3 February 1941',
      '999 204 7721',
      'first dose',
      'no known allergies',
      `last commit ${commit}`,
      'A sheet of this day printed later stands instead of this one',
    ])
      expect(html).toContain(words);
    expect(html).toContain('as things stood on 25 Nov 2026');
    expect(html).toContain('along the line: <span class="box"></span>vented set, no air, clamp shut');
  });
  test('what is to be there with them stands on their card: booked, or still to be booked', async () => {
    await server.done('clerk', lineNow(server, 'ada', 'contact', { needs: ['hospital transport', 'hoist'] }));
    const booked = { answer: 'booked', what: 'transport', session, on: '2026-11-25', bookedWith: 'transport desk' };
    const { place } = await server.read<{ place: { arriveAt: string } }>('/api/people/ada');
    await server.done(
      'clerk',
      lineNow(server, 'ada', 'support-booking', { ...booked, arriveAt: place.arriveAt, at: '08:10' }),
    );
    const html = await sheet();
    expect(html).toContain('transport booked with transport desk for 25 Nov 2026 at 08:10');
    expect(html).toContain('hoist to be booked');
  });
  test('what was done says when and by whom, and nothing of what the preparer read', async () => {
    const html = await sheet();
    expect(html).toMatch(/In the notes: \d\d:\d\d Nora Nurse/);
    expect(html).not.toContain('2391');
    expect(html).not.toContain('2028');
  });
  test('who looks after them, the chair they sit in, and once they have gone home what came of it, without a card', async () => {
    const put = await sheet();
    expect(put).toContain('comes at 09:01 · chair 1');
    await server.done(
      'nurse',
      lineNow(server, 'ada', 'arrived', { session, identifiers: ['full name', 'birth date'], chair: 2 }),
    );
    await putOffAndGone(server, 'ada');
    const html = await sheet();
    expect(html).toMatch(/put off; gone home at \d\d:\d\d/);
    // On the list, and no page of her own any more.
    expect(put).toContain('<h2>Ada Brindle</h2>');
    expect(html).not.toContain('<h2>Ada Brindle</h2>');
    expect(html).toContain('<h2>Wanda Ferreira</h2>');
    expect(html).toContain('page 2 of 2');
  });
  test('an administrator sees no patient', async () => {
    expect((await server.ask(`/api/sessions/${session}/day-sheet`, { as: 'administrator' })).statusCode).toBe(403);
    expect((await server.ask('/api/sessions/none/day-sheet', { as: 'nurse' })).statusCode).toBe(404);
  });
});

describe('kept beside the notes', () => {
  test('today and the next session, made anew when the notes have grown', async () => {
    await server.done('clerk', sessionOn('thornbeck-2026-12-02', '2026-12-02'));
    await server.done('clerk', sessionOn('thornbeck-2026-12-09', '2026-12-09'));
    await keepNewestDaySheets(server.atHand, folder);
    const names = readdirSync(folder).toSorted();
    expect(names.map((name) => name.slice(0, 10))).toEqual(['2026-11-25', '2026-12-02']);
    const today = join(folder, names[0] ?? '');
    const before = readFileSync(today, 'utf8');
    await server.done('nurse', lineNow(server, 'ada', 'allergy', { answer: 'other', substance: 'latex' }));
    await keepNewestDaySheets(server.atHand, folder);
    expect(before).not.toContain('latex');
    expect(readFileSync(today, 'utf8')).toContain('allergic to latex');
  });
  test('nothing stays of a session that is cancelled', async () => {
    await server.done('nurse', { name: 'cancel session', session: 'thornbeck-2026-12-02', reason: 'no staff' });
    await keepNewestDaySheets(server.atHand, folder);
    expect(
      readdirSync(folder)
        .map((name) => name.slice(0, 10))
        .toSorted(),
    ).toEqual(['2026-11-25', '2026-12-09']);
  });
});

test('the day after, the list, the session and the sheet can still be read, to type it in', async () => {
  clock.moveOn(24 * 60);
  for (const path of ['', '/day', '/day-sheet'])
    expect((await server.ask(`/api/sessions/${session}${path}`, { as: 'nurse' })).statusCode).toBe(200);
});
