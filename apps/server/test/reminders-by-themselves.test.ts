/**
 * Approved reminders go on their day without a press: once, within the hours, and once only when the server is killed between
 * sending and writing down. The gateway answers as the contract says (apps/server/src/messages/text-message.ts).
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { addDays, entryText, plainDate } from '@twelvemonth/clinical';
import type { RemindersView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { systemClock } from '../src/clock.ts';
import type { Outgoing } from '../src/messages/channel.ts';
import { sendApproved } from '../src/messages/by-itself.ts';
import { ownFolder } from '../src/service-folder.ts';
import { type OwnServer, ownServer, referralOf, sessionOn, setUp, thornbeck, workUp } from './support/own-server.ts';

const main = fileURLToPath(new URL('../src/main.ts', import.meta.url));
const contact = { telephone: '07700 900123', remindBy: ['text message'] };
const reminders = { daysBefore: [28, 7, 2], fromTime: '08:00', untilTime: '20:00', byItself: true };
const line = (kind: string, body: object, effectiveAt: string) => ({
  name: 'record',
  patient: 'wilhelmina',
  line: { kind, body, effectiveAt },
});
const plansOf = async (server: OwnServer) => (await server.read<RemindersView>('/api/reminders')).plans;

/** Booked for a day, and the planned reminders approved by a clerk. */
async function bookedAndApproved(server: OwnServer, today: string, on: string): Promise<void> {
  await setUp(server, today);
  await server.done('lead', { name: 'set unit', unit: 'thornbeck', body: { ...thornbeck, reminders } });
  await server.done('clerk', { ...referralOf('wilhelmina'), on: today });
  await workUp(server, 'wilhelmina', today);
  await server.done('clerk', line('contact', contact, today));
  await server.done('nurse', sessionOn('s1', on));
  await server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
  const [plan] = (await plansOf(server)) ?? [];
  const { place, channel, to, days = [] } = plan ?? {};
  const daysBefore = days.map((one) => one.daysBefore);
  await server.done('clerk', line('reminders-plan', { is: 'approved', place, channel, to, daysBefore }, today));
}

describe('on its day', () => {
  const clock = movableClock('2026-11-20T09:00');
  const sent: Outgoing[] = [];
  let server: OwnServer;
  const today = (): string => plainDate(clock.local('Europe/London').today);
  const unitWith = (body: object) =>
    server.done('lead', { name: 'set unit', unit: 'thornbeck', body: { ...thornbeck, ...body } });
  beforeAll(async () => {
    server = await ownServer({
      clock,
      channels: {
        'text message': async (message) => {
          sent.push(message);
          return { outcome: 'accepted' };
        },
      },
    });
    await bookedAndApproved(server, '2026-11-20', '2026-12-03');
  });
  afterAll(() => server.close());

  it('is planned and approved, and not sent before', async () => {
    expect(await plansOf(server)).toMatchObject([
      { days: [{ daysBefore: 7 }, { daysBefore: 2 }], approved: { by: 'Clara Clerk', on: '2026-11-20' } },
    ]);
    expect(await sendApproved(server.atHand)).toBe(0);
  });
  it('goes once, within the hours, and names the approval it went by', async () => {
    clock.moveOn((6 * 24 - 2) * 60);
    expect([today(), await sendApproved(server.atHand)]).toEqual(['2026-11-26', 0]);
    clock.moveOn(90);
    await unitWith({ reminders: { ...reminders, byItself: false } });
    expect(await sendApproved(server.atHand), 'the unit turned it off').toBe(0);
    await unitWith({ reminders });
    expect(await sendApproved(server.atHand)).toBe(1);
    expect(await sendApproved(server.atHand)).toBe(0);
    expect(sent).toMatchObject([{ to: '07700 900123', text: expect.stringContaining('Thursday 3 December 2026') }]);
    const begun = (await server.atHand.people.of('wilhelmina'))?.record.facts.get('message-begun') ?? [];
    expect(begun.map((fact) => [fact.author.staff, entryText(fact)])).toEqual([
      ['the approved plan', expect.stringContaining('7 days before, by itself as approved')],
    ]);
  });
  it('moves with the place', async () => {
    await server.done('nurse', sessionOn('s2', '2026-12-10'));
    const why = { reason: 'asked for another day', askedBy: 'the patient' };
    await server.done('clerk', { name: 'move', patient: 'wilhelmina', from: 's1', to: 's2', place: 1, ...why });
    clock.moveOn(5 * 24 * 60);
    expect(await sendApproved(server.atHand), 'two days before the old place').toBe(0);
    clock.moveOn(2 * 24 * 60);
    expect(await sendApproved(server.atHand)).toBe(1);
    expect(sent.at(-1)?.text).toContain('Thursday 10 December 2026');
  });
  it('stops at once with a death', async () => {
    clock.moveOn(5 * 24 * 60);
    await server.done('nurse', line('died', { source: 'family doctor' }, today()), { role: 'nurse' });
    expect(await sendApproved(server.atHand)).toBe(0);
    expect([sent.length, await plansOf(server)]).toEqual([2, []]);
  });
});

it('killed between sending and writing down: never sent again, and a person is told that it may have gone out', async () => {
  const data = mkdtempSync(join(tmpdir(), 'twelvemonth-'));
  const folder = ownFolder(data);
  const clock = systemClock();
  const { today } = clock.local('Europe/London');
  // Takes what it is handed and never answers.
  let asked = 0;
  let taken = (): void => undefined;
  const isTaken = new Promise<void>((resolve) => (taken = resolve));
  const gateway = createServer((request) => {
    asked += 1;
    request.resume().on('end', taken);
  });
  await new Promise<void>((ready) => gateway.listen(0, '127.0.0.1', ready));

  const nineDaysAgo = plainDate(addDays(today, -9));
  const channels = { 'text message': async () => ({ outcome: 'accepted' }) as const };
  const before = await ownServer({ folder, clock: movableClock(`${nineDaysAgo}T09:00`), channels });
  await bookedAndApproved(before, nineDaysAgo, plainDate(addDays(today, 7)));
  const anyHour = { ...reminders, fromTime: '00:00', untilTime: '23:59' };
  await before.done('lead', { name: 'set unit', unit: 'thornbeck', body: { ...thornbeck, reminders: anyHour } });
  await before.atHand.store.setSetting('kind', 'own');
  await before.close({ keepsNotes: true });

  const { port } = gateway.address() as AddressInfo;
  const url = `http://127.0.0.1:${port}/send`;
  const child = spawn(process.execPath, [main, '--empty', '--data', data, '--port', '0', '--text-url', url], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, TWELVEMONTH_TEXT_KEY: 'a key' },
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  expect(await Promise.race([isTaken, ended.then(() => 'ended before it sent')])).toBeUndefined();
  child.kill('SIGKILL');
  await ended;
  gateway.closeAllConnections();
  gateway.close();

  let again = 0;
  const after = await ownServer({
    folder,
    clock,
    channels: {
      'text message': async () => {
        again += 1;
        return { outcome: 'accepted' };
      },
    },
    staff: false,
  });
  expect([await sendApproved(after.atHand), asked, again]).toEqual([0, 1, 0]);
  const { work } = await after.read<{ work: { what: string; count: number }[] }>('/api/today');
  expect(work).toContainEqual(expect.objectContaining({ what: 'messages that did not arrive', count: 1 }));
  expect(await plansOf(after)).toMatchObject([{ because: expect.stringContaining('somebody looks first') }]);
  await after.close();
  rmSync(data, { recursive: true, force: true });
});
