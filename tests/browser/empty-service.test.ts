/**
 * An empty, real service becomes one that may treat people: its administrator, staff, unit and a protocol that two people have
 * signed. The numbers the label leaves open are filled in by hand, with the suggestions the screen shows.
 */
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { password, people } from '../../apps/server/test/support/own-server.ts';
import { hands, signIn } from '../support/hands.ts';
import { type Service, checked, service } from '../support/service.ts';

let at: Service;
let admin: Page;
let lead: Page;
/** Holds both roles that may sign: still one person. */
let both: Page;
const drBoth = { username: 'dora.both', name: 'Dr Dora Both', roles: ['prescriber', 'pharmacist'] } as const;

beforeAll(async () => {
  at = await service({ staff: false });
  admin = await at.visitor();
});
afterAll(() => at.close());
afterEach(async () => {
  for (const page of [admin, lead, both])
    if (page !== undefined)
      await expect
        .poll(async () => page.getByText(/\bdemo/i).count(), { message: 'never looks like the demo' })
        .toBe(0);
});

it('the first visitor names the service and becomes its administrator', async () => {
  await admin.goto(at.url);
  const { fill, pick, press, sees } = hands(admin);
  await admin.getByRole('heading', { name: 'Set up this service' }).waitFor();
  await checked(admin, 'empty-first-administrator');
  await fill('What the service is called', 'Thornbeck infusions');
  await fill('Your name', people.administrator.name);
  await fill('Username', people.administrator.username);
  await pick('The protocol begins from', 'UK-like: the product text with UK guidance');
  await fill('Password', 'too short');
  await press('Begin');
  await sees(/12/);
  await fill('Password', password);
  await press('Begin');
  await admin.getByRole('heading', { name: 'Setting up' }).waitFor();
  await sees('No unit yet. Add the first one.');
  await checked(admin, 'empty-settings');
});

it('nobody else becomes an administrator that way', async () => {
  const next = await at.visitor();
  await next.goto(at.url);
  await next.getByRole('heading', { name: 'Sign in' }).waitFor();
  await expect.poll(async () => next.getByText('Set up this service').count()).toBe(0);
});

it('the administrator adds the staff, each with their roles', async () => {
  const { fill, press, tickIn } = hands(admin);
  const { administrator: _, ...others } = people;
  for (const { name, username, roles } of [...Object.values(others), drBoth]) {
    await press('Add someone');
    await fill('Name', name);
    await fill('Username', username);
    await fill('First password', password);
    for (const role of roles) await tickIn('Roles', role);
    await press('Add');
    await admin.getByRole('row', { name: `${name} ${username} ${roles.join(', ')}` }).waitFor();
  }
  await checked(admin, 'empty-staff');
});

it('a name for signing in that somebody has already is refused in words', async () => {
  const { fill, press, tickIn } = hands(admin);
  await press('Add someone');
  await fill('Name', 'Nora Nightshift');
  await fill('Username', people.nurse.username);
  await fill('First password', password);
  await tickIn('Roles', 'nurse');
  await press('Add');
  await admin.getByText('Somebody here already has this name for signing in.').first().waitFor();
  await press('Leave');
});

it('the service lead describes the unit: chairs, hours, days, closures, zone', async () => {
  lead = await at.visitor();
  await lead.goto(at.url);
  await signIn(lead, people.lead.username, password);
  await lead.getByText('This service has no unit yet.').waitFor();
  await checked(lead, 'empty-today-no-unit');
  const { fill, press, tickIn, follow, sees } = hands(lead);
  await follow('Settings');
  await press('Add a unit');
  await fill('Name', 'Thornbeck Day Unit');
  await fill('Telephone', '01632 960100');
  await fill('Opens at', '08:30');
  await fill('Closes at', '17:00');
  await fill('Chairs', '6');
  await fill('Minutes between arrivals', '20');
  await fill('Time zone', 'Europe/Nowhere');
  for (const day of ['Tue', 'Thu']) await tickIn('Session days', day);
  await fill('Closed days', '25 Dec 2026\n31 Feb 2027');
  await sees('No such date: 31 Feb 2027. Write 25 Dec 2026, one a line.');
  await fill('Closed days', '25 Dec 2026\n1 Jan 2027');
  await press('Record');
  await sees('no such time zone: write its name, as Europe/London');
  await checked(lead, 'empty-unit-refused');
  await fill('Time zone', 'Europe/London');
  await press('Record');
  await lead.getByRole('heading', { name: 'Thornbeck Day Unit' }).waitFor();
  await sees('6 chairs, 08:30 to 17:00, sessions on Tuesday, Thursday');
  await sees('Closed on 25 Dec 2026, 1 Jan 2027.');
  await sees(/no protocol in force/);
  await checked(lead, 'empty-unit');
});

it('without a protocol in force nothing is said about any dose', async () => {
  await lead.getByRole('link', { name: 'Protocol' }).click();
  await lead.getByText('No version is in force at this unit: nothing can be said about any dose.').waitFor();
  await lead.getByRole('link', { name: 'People' }).click();
  await lead.getByText('Nobody is on the register of this unit.').waitFor();
  await checked(lead, 'empty-people');
});

async function begin(from: string | RegExp, version: string): Promise<void> {
  const { fill, press } = hands(both);
  await press('Begin a version');
  await both.getByRole('radio', { name: from }).check();
  await fill('Name of the new version', version);
  await fill('Title', 'Zoledronic acid 5 mg once a year at Thornbeck');
  await fill('To be reviewed by', '30 11 2027');
}

it('a version written with empty numbers cannot be signed', async () => {
  both = await at.visitor();
  await both.goto(`${at.url}/protocol`);
  await signIn(both, drBoth.username, password);
  await begin(/^starter: UK-like/, 'thornbeck-draft');
  await checked(both, 'empty-protocol-begin');
  await hands(both).press('Write this version');
  await both.getByText(/numbers are empty because the source is silent/).waitFor();
  await expect.poll(async () => both.getByRole('heading', { name: 'Sign this version' }).count()).toBe(0);
  await checked(both, 'empty-protocol-empty-numbers');
});

it('the numbers the source leaves open are filled in by hand', async () => {
  await begin(/^thornbeck-draft/, 'thornbeck-1');
  const suggested = both.getByRole('button', { name: /^take the suggested / });
  await expect.poll(async () => suggested.count()).toBeGreaterThan(10);
  while ((await suggested.count()) > 0) await suggested.first().click();
  await hands(both).press('Write this version');
  await both.getByRole('heading', { name: 'Sign this version' }).waitFor();
  await expect.poll(async () => both.getByText(/numbers are empty/).count()).toBe(0);
  await both
    .getByText(/suggestion accepted by Dr Dora Both/)
    .first()
    .waitFor();
});

it('one account alone cannot adopt, whatever its roles', async () => {
  const { fill, pick, press, sees } = hands(both);
  await pick('You sign as', 'clinician');
  await fill('In force from', '25 11 2026');
  await press('Sign');
  await sees(/signed as clinician by Dr Dora Both/);
  await pick('You sign as', 'pharmacist');
  await press('Sign');
  await sees(/^Not recorded/);
  await sees(/another person|someone else|two people|same person/i);
  await checked(both, 'empty-protocol-one-alone');
  await sees(/^Signed by one/);
});

it('the pharmacist signs as well, and it is in force', async () => {
  const pharmacist = await at.visitor();
  await pharmacist.goto(`${at.url}/protocol`);
  await signIn(pharmacist, people.pharmacist.username, password);
  const { pick, press, sees } = hands(pharmacist);
  await press(/^thornbeck-1/);
  await sees(/signed as clinician by Dr Dora Both/);
  await pick('You sign as', 'pharmacist');
  await press('Sign');
  await sees(/^In force from Wed 25 Nov 2026/);
  await checked(pharmacist, 'empty-protocol-in-force');
  const { versions } = await at.server.read<{
    versions: { version: string; state: string; signatures: { as: string; by: string }[] }[];
  }>('/api/protocols', 'auditor');
  const [adopted] = versions.filter(({ state }) => state === 'in force');
  expect(adopted?.version).toBe('thornbeck-1');
  expect(adopted?.signatures.map(({ as, by }) => [as, by])).toEqual([
    ['clinician', drBoth.name],
    ['pharmacist', people.pharmacist.name],
  ]);
});

it('the list of what a service needs is ticked off, and says what is left', async () => {
  await lead.getByRole('link', { name: 'Settings' }).click();
  const needs = lead.getByRole('region', { name: 'Setting up' }).getByRole('listitem');
  await expect.poll(() => needs.filter({ hasText: 'a protocol in force' }).textContent()).toMatch(/done$/);
  await expect
    .poll(async () => needs.filter({ hasNotText: /done$/ }).allTextContents())
    .toEqual([expect.stringMatching(/^a session to book into/), expect.stringMatching(/^people on the register/)]);
  await checked(lead, 'empty-settings-ready');
});
