/** Starts a server and says how to stop it. The command line and the tests start it the same way. */
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unitOf } from '@twelvemonth/clinical';
import type { AtHand } from './at-hand.ts';
import { buildApp } from './app.ts';
import { certificateViewOf, readTls } from './certificate.ts';
import { systemClock, unknownZones, wallNow } from './clock.ts';
import { type ServeOptions, addressRefused, onlyThisMachine } from './command-line.ts';
import { keepDaySheets } from './documents/kept-day-sheets.ts';
import { keepDemoTime, openDemo } from './demo/open-demo.ts';
import { eventStreams } from './events.ts';
import { makeListsAgain } from './lists-made-again.ts';
import type { Channels } from './messages/channel.ts';
import { everyMinute } from './every-minute.ts';
import { sendApproved } from './messages/by-itself.ts';
import { gatewayWordListener } from './messages/gateway-word.ts';
import { takeInReturned } from './messages/returned.ts';
import { eMailChannel } from './messages/e-mail.ts';
import { textMessageChannel } from './messages/text-message.ts';
import { ownPageListener } from './own-page/listener.ts';
import { openNotes } from './register/notes.ts';
import { noteLookAlikes } from './register/note-look-alikes.ts';
import { openPeople } from './register/people.ts';
import { openUnits } from './register/units.ts';
import { CannotStart, daySheetFolder, markedAs, openNotesStore, ownFolder } from './service-folder.ts';
import { openAccounts } from './sign-in/accounts.ts';
import { countedAttempts } from './sign-in/attempts.ts';
import { sharedSigning } from './sign-in/shared-signing.ts';
import { lookLog } from './sign-in/looks.ts';

export type Running = {
  /** Where it answers: `http://127.0.0.1:4310`. */
  readonly url: string;
  readonly atHand: AtHand;
  /** What a person at the keyboard should read. */
  readonly greeting: readonly string[];
  /** Ends the streams, finishes what was begun, closes the notes. */
  readonly close: () => Promise<void>;
  /** Resolves once closed. */
  readonly ended: Promise<void>;
};

export type Watching = { readonly say: (line: string) => void; readonly isStopping: () => boolean };

const root = fileURLToPath(new URL('..', import.meta.url));

export async function start(options: ServeOptions, { say, isStopping }: Watching): Promise<Running> {
  const refused = addressRefused(options);
  if (refused !== undefined) throw new CannotStart(refused);
  const tls = readTls(options.tls);
  const https = tls !== undefined || options.behindProxy;
  const opened = options.kind === 'demo' ? await openDemo(options, { say, isStopping }) : await openOwn(options, say);
  const { store, clock } = opened;
  try {
    const notes = await openNotes(store);
    const accounts = await openAccounts(store, { https, now: clock.now });
    const demo = await opened.seeded?.(accounts);
    const events = eventStreams();
    const units = openUnits(notes, clock);
    const people = openPeople(notes, units, clock);
    let ownPageAddress: string | undefined;
    const atHand: AtHand = {
      store,
      clock,
      accounts,
      attempts: countedAttempts(),
      looks: lookLog(accounts, clock.now),
      ...sharedSigning(accounts, clock.now),
      events,
      notes,
      units,
      people,
      channels: channelsOf(options.messages),
      returnedFolder: options.messages.returned,
      ownPageAddress: () => ownPageAddress,
      certificate: tls?.cert,
      demo,
      version: versionOf(),
    };
    await refuseUnknownZones(atHand);
    const stopTelling = store.onCommit(events.tell);
    const app = await buildApp(atHand, {
      tls,
      behindProxy: options.behindProxy,
      onlyThisMachine: onlyThisMachine(options),
      screens: join(root, '..', 'web', 'dist'),
      log: { level: options.logRequests ? 'info' : 'warn' },
    });
    await app.listen({ host: options.host, port: options.port });
    const pages = options.pages === undefined ? undefined : await servePages(atHand, options, options.pages);
    ownPageAddress = pages?.address;
    const words = await listenForWords(options.messages);
    // What goes wrong here goes wrong again for whoever asks first, and is reported there.
    const warming = people
      .warmUp()
      .then(() => noteLookAlikes(atHand))
      .catch(() => undefined);
    const stopKeeping = keepDaySheets(atHand, daySheetFolder(options), say);
    const stopMessages = everyMinute(
      async (isStopping) => {
        if (options.messages.returned !== undefined) await takeInReturned(atHand, options.messages.returned);
        await sendApproved(atHand, isStopping);
      },
      (error) => say(`Messages cannot be seen to: ${String(error)}`),
    );
    const url = urlOf(app.server.address() as AddressInfo, tls !== undefined, options.host);
    let end = (): void => undefined;
    const ended = new Promise<void>((resolve) => {
      end = resolve;
    });
    let closing: Promise<void> | undefined;
    const close = async (): Promise<void> => {
      stopTelling();
      await stopMessages();
      await stopKeeping();
      people.close();
      events.endAll();
      await pages?.close();
      await words?.close();
      await app.close();
      await warming;
      notes.close();
      if (demo !== undefined && store.readOnly === undefined) await keepDemoTime(store, clock);
      await store.close();
      end();
    };
    return { url, atHand, greeting: greetingOf(url, atHand, options), close: () => (closing ??= close()), ended };
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function servePages(atHand: AtHand, options: ServeOptions, pages: NonNullable<ServeOptions['pages']>) {
  const tls = readTls(pages.tls);
  const app = await ownPageListener(atHand, {
    tls,
    behindProxy: options.behindProxy,
    onlyThisMachine: onlyThisMachine({ ...options, ...pages }),
    log: { level: options.logRequests ? 'info' : 'warn' },
  });
  await app.listen({ host: pages.host, port: pages.port });
  const address = pages.address ?? urlOf(app.server.address() as AddressInfo, tls !== undefined, pages.host);
  return { address, close: () => app.close() };
}

async function listenForWords({ returned, words }: ServeOptions['messages']) {
  if (returned === undefined || words === undefined) return undefined;
  const app = gatewayWordListener({ folder: returned, key: words.key });
  await app.listen({ host: '127.0.0.1', port: words.port });
  return app;
}

async function openOwn(options: ServeOptions, say: Watching['say']) {
  const store = await openNotesStore(
    options.postgres === undefined ? { folder: ownFolder(options.data) } : { postgres: options.postgres },
  );
  try {
    await markedAs(store, 'own');
    await makeListsAgain(store, say);
  } catch (error) {
    await store.close();
    throw error;
  }
  return { store, clock: systemClock(), seeded: undefined };
}

/** A demo has none: nobody in it is real, but a number may be. */
const channelsOf = ({ smtp, text }: ServeOptions['messages']): Channels => ({
  ...(smtp === undefined ? {} : { 'e-mail': eMailChannel(smtp.server, smtp.from) }),
  ...(text === undefined ? {} : { 'text message': textMessageChannel(text.url, text.key) }),
});

/** A unit whose zone this machine does not know has no local time: its dates would be wrong without anyone noticing. */
async function refuseUnknownZones({ notes }: AtHand): Promise<void> {
  const units = (await notes.all('unit')).flatMap((record) => unitOf(record) ?? []);
  const unknown = unknownZones(units.map(({ zone }) => zone));
  if (unknown.length > 0)
    throw new CannotStart(
      `This machine's time zone data does not know ${unknown.join(', ')}: install it, or correct the unit's zone.`,
    );
}

function versionOf(): string {
  const manifest: unknown = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return typeof manifest === 'object' && manifest !== null && 'version' in manifest ? String(manifest.version) : '';
}

/** An address that means every address of this machine is no address to type. */
const everyAddress = new Set(['0.0.0.0', '::']);

function urlOf({ port }: AddressInfo, tls: boolean, host: string): string {
  const named = everyAddress.has(host) ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  return `${tls ? 'https' : 'http'}://${named}:${port}`;
}

function greetingOf(
  url: string,
  { demo, accounts, ownPageAddress, certificate }: AtHand,
  options: ServeOptions,
): string[] {
  const lines = [`Twelvemonth answers at ${url}`];
  if (certificate !== undefined) lines.push(certificateViewOf(certificate, wallNow()).says);
  const pages = ownPageAddress();
  if (pages !== undefined) lines.push(`People's own pages answer at ${pages}, and nothing else does there.`);
  if (demo !== undefined) {
    lines.push(
      'This is the demo: every person in it is invented.',
      `Sign in as one of these, with the password "${demo.password}":`,
    );
    for (const username of demo.people) {
      const member = accounts.named(username);
      if (member !== undefined)
        lines.push(`  ${member.username.padEnd(16)} ${member.name} (${member.roles.join(', ')})`);
    }
  } else if (accounts.everyone().length === 0) {
    lines.push(
      `A service of your own, empty, kept in ${options.postgres === undefined ? ownFolder(options.data) : 'PostgreSQL'}. Open the address on this machine to become its administrator.`,
    );
  }
  lines.push('Stop it with Ctrl-C.');
  return lines;
}
