/**
 * Two browsers, each a program of its own, at a server that speaks TLS with a certificate of the unit's own authority: the day is
 * kept on the tablet, its network is cut in the middle of a step, and what was written is in the notes once and on the other screen.
 * That the certificate holds for whoever trusts the authority is proved in apps/cli/test/certificate.test.ts; these browsers are
 * told to accept its key, as a device is on which it was installed.
 */
import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newAuthority, newServerCertificate } from '../../apps/cli/src/certificate/certificates.ts';
import { listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { launch } from '../support/browser.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { hands, signIn } from '../support/hands.ts';
import { keptOn } from '../support/kept-on-device.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

const names = ['127.0.0.1'];
const now = Temporal.Now.instant();
const days = (count: number): string => now.add({ hours: 24 * count }).toString({ smallestUnit: 'second' });
const called = 'Twelvemonth of the tests';
const authority = newAuthority(called, names, { from: days(-1), until: days(100) });
const shown = newServerCertificate({ ...authority, called }, names, { from: days(-1), until: days(20) });

let at: Service;
let other: Browser;
let network: Awaited<ReturnType<typeof cuttableNetwork>>;
let nurse: Page;
let checker: Page;

beforeAll(async () => {
  at = await service({
    tls: { cert: `${shown.certificate}${authority.certificate}`, key: shown.key, authority: authority.certificate },
  });
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port, 'https');
  other = await launch({ trusts: authority.certificate });
  checker = await (await other.newContext({ viewport: tablet, locale: 'en-GB', serviceWorkers: 'block' })).newPage();
  await checker.goto(at.url);
  await signIn(checker, people.checker.username, password);
  nurse = await at.visitor(tablet, undefined, { keepsDay: true });
  await nurse.goto(network.url);
  await signIn(nurse, people.nurse.username, password);
}, 60_000);
afterAll(async () => {
  await network.close();
  await other.close();
  await at.close();
});

const counted = async (...kinds: string[]): Promise<number[]> => {
  const { entries } = await at.server.read<{ entries: { kind: string }[] }>('/api/people/wilhelmina');
  return kinds.map((one) => entries.filter(({ kind }) => kind === one).length);
};
const sync = async (where: Page): Promise<string> => (await where.getByLabel('Sync').textContent()) ?? '';

it('a browser that was not told to trust the authority does not come in', async () => {
  const stranger = await launch();
  try {
    await expect((await stranger.newPage()).goto(at.url)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID');
  } finally {
    await stranger.close();
  }
});

it('a certificate that ends soon is said on every screen, and in the settings', async () => {
  await hands(checker).sees(/This server’s certificate ends on .* \(days left: 20\)/);
});

it('the connection is a trusted one: the day is kept on the tablet', async () => {
  expect(await nurse.evaluate(() => window.isSecureContext)).toBe(true);
  await keptOn(nurse, 1);
});

it('cut in the middle of a step: what was asked arrives, its answer does not; the day is there and the step waits', async () => {
  await nurse.goto(`${network.url}/people/wilhelmina/visit`);
  const { sees, tick, press } = hands(nurse.getByRole('main'));
  await sees('Arrived');
  network.loseAnswers();
  await tick('full name');
  await tick('birth date');
  await press('They are here');
  await expect.poll(async () => counted('arrived')).toEqual([1]);
  network.cut();
  await expect.poll(async () => sync(nurse)).toMatch(/offline since .* · 1 waiting/);
  await nurse.reload();
  await sees('Observations');
});

it('the telephone rings meanwhile: red flags and what to do are there, and the call waits as well', async () => {
  await nurse.getByRole('link', { name: 'Advice call' }).click();
  const { tickIn, fill, pick, press, sees } = hands(nurse.getByRole('region', { name: 'Advice call' }));
  await sees(/Wilhelmina Arkwright-Poe/);
  await tickIn('Ask first: any of these?', 'shaking chills');
  await sees(/A doctor must see you today/);
  await fill('What they say, in their words', 'her daughter says she shivers');
  await pick('Who rings', 'family or carer');
  await fill('What you advised', 'her own doctor today');
  await pick('Who takes the red flag on', 'somebody else');
  await fill('Whom you told', 'Dr Press by telephone');
  await checked(nurse, 'call-offline', { settles: false });
  await press('Write the call down');
  await sees(/Kept on this device, not in the notes yet.*Dr Press by telephone has to have been told by you/);
  await expect.poll(async () => sync(nurse)).toMatch(/offline since .* · 2 waiting/);
});

it('when the network is back each is in the notes once, and the other browser has it', async () => {
  network.restore();
  await expect.poll(async () => sync(nurse)).toMatch(/online$/);
  expect(await counted('arrived', 'advice-call')).toEqual([1, 1]);
  await checker.goto(`${at.url}/people/wilhelmina/visit`);
  await hands(checker.getByRole('main')).sees('Observations');
});
