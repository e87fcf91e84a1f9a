/**
 * The address of a person's own page sent by the press that makes it: to who agreed, once, with neither medicine, name nor birth
 * date in it, and kept in no entry (hazard 48; common practice, no source).
 */
import type { HandedOverPage, OwnPageView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Answered, Outgoing } from '../src/messages/channel.ts';
import { type OwnServer, ownServer, referralOf, setUp } from './support/own-server.ts';

const sent: Outgoing[] = [];
let answer: Answered = { outcome: 'accepted' };
let server: OwnServer;
const contact = { telephone: '07700 900123', email: 'w@mail.example' };
const write = (kind: string, body: object) =>
  server.done('clerk', { name: 'record', patient: 'wilhelmina', line: { kind, body, effectiveAt: '2026-11-25' } });
const view = () => server.read<OwnPageView>('/api/people/wilhelmina/own-page');
const make = async (send: boolean): Promise<HandedOverPage> =>
  (
    await server.ask('/api/own-page', {
      method: 'POST',
      as: 'clerk',
      body: { patient: 'wilhelmina', expiresOn: '2026-12-03', send },
    })
  ).json<HandedOverPage>();

beforeAll(async () => {
  server = await ownServer({
    ownPageAddress: () => 'https://pages.thornbeck.example',
    channels: {
      'e-mail': async (message) => {
        sent.push(message);
        return answer;
      },
    },
  });
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
});
afterAll(() => server.close());

it('to nobody who was not asked: it says why, and the address is there to print', async () => {
  expect(await view()).toMatchObject({ notSent: expect.stringContaining('agree to be reminded') });
  const made = await make(true);
  expect([made.sent, sent]).toEqual([undefined, []]);
  expect(made.text).toContain(made.address);
  await write('contact', { ...contact, remindBy: ['text message'] });
  expect((await view()).notSent).toBe('no channel for text message is set up here: ring or write');
});

it('to who agreed: the very words that are printed, and the notes say that it went, not where the page is', async () => {
  await write('contact', { ...contact, remindBy: ['e-mail'] });
  expect(await view()).toMatchObject({ way: { channel: 'e-mail', to: 'w@mail.example' } });
  const made = await make(true);
  expect(made.sent).toEqual({ channel: 'e-mail', to: 'w@mail.example', outcome: 'accepted' });
  expect(sent.map(({ to, text }) => [to, text])).toEqual([['w@mail.example', made.text]]);
  expect(made.text).toContain(made.address);
  expect(made.text).not.toMatch(/zoledron|bone|osteo|drip|infusion|Arkwright|Wilhelmina|1941|999 204/i);
  const notes = (await server.ask('/api/people/wilhelmina/notes', { as: 'nurse' })).body;
  expect(notes).toContain('address of the own page sent by e-mail');
  expect(notes).not.toContain(made.address.split('/').at(-1));
});

it('one that was refused, or may not have gone, is work for somebody until they were spoken with', async () => {
  answer = { outcome: 'not known', because: 'no answer' };
  expect((await make(true)).sent).toMatchObject({ outcome: 'not known', because: 'no answer' });
  const pile = async () =>
    (await server.read<{ work: { what: string; count: number }[] }>('/api/today')).work.find(
      ({ what }) => what === 'messages that did not arrive',
    )?.count;
  expect(await pile()).toBe(1);
  await write('call', { route: 'telephone', about: 'place', reached: true });
  expect(await pile()).toBeUndefined();
});
