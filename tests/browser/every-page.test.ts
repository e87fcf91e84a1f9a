/** Every page, at the width of a tablet and of a desk: no accessibility violation, nothing wider than the screen, nothing too small for a finger. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { type Somebody, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina');
  await at.server.done(
    'clerk',
    referralOf('ada', { given: 'Ada', family: 'Brindle', born: '1940-02-29', number: '999 204 7721' }),
  );
  await at.server.done('nurse', {
    name: 'plan session',
    session: 'thornbeck-2026-11-25',
    body: {
      unit: 'thornbeck',
      on: '2026-11-25',
      zone: 'Europe/London',
      arriveAt: ['09:00', '09:20', '09:40'],
      opensAt: '08:30',
      closesAt: '17:00',
    },
  });
});
afterAll(() => at.close());

const pages: readonly (readonly [name: string, path: string])[] = [
  ['today', '/'],
  ['people', '/people'],
  ['new-person', '/people/new'],
  ['person', '/people/wilhelmina'],
  ['visit-not-listed', '/people/wilhelmina/visit'],
  ['bookings', '/people/wilhelmina/bookings'],
  ['batches-before-any-dose', '/people/wilhelmina/batches'],
  ['person-in-work-up', '/people/ada'],
  ['review-before-any-dose', '/people/wilhelmina/review'],
  ['deciding-before-any-talk', '/people/wilhelmina/deciding'],
  ['pack', '/people/wilhelmina/pack'],
  ['book', '/people/wilhelmina/book'],
  ['sessions', '/sessions'],
  ['plan-session', '/sessions/plan'],
  ['session', '/sessions/thornbeck-2026-11-25'],
  ['day-sheet-screen', '/sessions/thornbeck-2026-11-25/sheet'],
  ['session-day', '/sessions/thornbeck-2026-11-25/day'],
  ['session-times', '/sessions/thornbeck-2026-11-25/times'],
  ['from-paper', '/sessions/thornbeck-2026-11-25/paper'],
  ['calls', '/calls'],
  ['waiting-to-be-sent', '/waiting'],
  ['pharmacy', '/pharmacy'],
  ['stock', '/stock'],
  ['signature', '/signature'],
  ['letters', '/letters'],
  ['recall', '/recall'],
  ['aftercare', '/aftercare'],
  ['cohorts-before-any-dose', '/recall/cohorts'],
  ['ask-before-any-dose', '/people/ada/aftercare'],
  ['import', '/import'],
  ['import-waiting', '/import/waiting'],
  ['protocol', '/protocol'],
  ['settings', '/settings'],
];

describe.each([
  ['tablet', tablet],
  ['desk', desktop],
] as const)('at the width of a %s', (width, viewport) => {
  const opened = new Map<Somebody, Page>();
  /** One page for each person, sent from address to address: a new one costs three times as much. */
  async function pageOf(somebody: Somebody, path: string): Promise<Page> {
    const before = opened.get(somebody);
    const page = before ?? (await at.signedIn(somebody, path, viewport));
    if (before !== undefined) {
      await page.goto(`${at.url}${path}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    }
    opened.set(somebody, page);
    return page;
  }
  afterAll(async () => {
    for (const page of opened.values()) await page.context().close();
  });

  it.each(pages)('%s', async (name, path) => {
    await checked(await pageOf(name === 'settings' ? 'lead' : 'nurse', path), `${name}-${width}`);
  });
});
