/**
 * The demo service: made once, opened after. It lives on a date of its own, and its clock goes on from where it stopped:
 * while the server is off, no time passes in it.
 */
import { existsSync, renameSync } from 'node:fs';
import { type Day, addDays, day, plainDate, weekday } from '@twelvemonth/clinical';
import { demoStaff } from '@twelvemonth/demo';
import type { Store } from '@twelvemonth/store';
import { z } from 'zod';
import { type Clock, systemClock } from '../clock.ts';
import type { ServeOptions } from '../command-line.ts';
import { CannotStart, demoFolder, markedAs, openNotesStore, removeFolder } from '../service-folder.ts';
import type { Accounts } from '../sign-in/accounts.ts';
import { codeFingerprint } from '../code-fingerprint.ts';
import { type DemoSignIn, seedDemoStaff } from './demo-staff.ts';
import { makeDemo } from './make-demo.ts';

type Watching = { readonly say: (line: string) => void; readonly isStopping: () => boolean };
export type OpenDemo = {
  readonly store: Store;
  readonly clock: Clock;
  readonly seeded: (accounts: Accounts) => Promise<DemoSignIn>;
};

const zone = 'Europe/London';
const keptClock = z.object({ boot: z.string(), aheadOfWall: z.number() });
/** A session of the demo is in full swing at this time. */
const usualTime = '10:45';

/** Those who work at both units see the first one's day. */
const everyoneSomewhere = demoStaff.map((person) => ({ unit: demoStaff[0]?.unit ?? '', ...person }));

/** The local moment up to which the demo is told when it is made. */
export type DemoBeginning = { readonly on: Day; readonly time: string };

export async function openDemo(options: ServeOptions, watching: Watching): Promise<OpenDemo> {
  const begins = beginningOf(options);
  const store =
    options.postgres === undefined
      ? await openMade(options, begins, watching)
      : await openOnPostgres(options.postgres, options, begins, watching);
  try {
    const kept = await store.setting('demo-clock');
    const timedBy = kept === undefined ? undefined : keptClock.parse(JSON.parse(kept));
    const clock = systemClock({ at: await wentOnUntil(store, begins), zone, clock: timedBy });
    await store.setSetting('demo-ahead', String(Date.parse(clock.now()) - Date.parse(systemClock().now())));
    return { store, clock, seeded: async (accounts) => seedDemoStaff(accounts, everyoneSomewhere) };
  } catch (error) {
    await store.close();
    throw error;
  }
}

/** Thornbeck holds its sessions on Tuesdays and Thursdays: without a date of its own the demo lives on the last of them. */
export function beginningOf({ demoDate }: Pick<ServeOptions, 'demoDate'>): DemoBeginning {
  if (demoDate !== undefined) return { on: day(demoDate.slice(0, 10)), time: demoDate.slice(11) || usualTime };
  let { today } = systemClock().local(zone);
  while (weekday(today) !== 2 && weekday(today) !== 4) today = addDays(today, -1);
  return { on: today, time: usualTime };
}

async function openMade(options: ServeOptions, begins: DemoBeginning, watching: Watching): Promise<Store> {
  const { demoSeed, demoPeople } = options;
  const name = [
    demoSeed,
    plainDate(begins.on),
    ...(begins.time === usualTime ? [] : [begins.time.replace(':', '')]),
    ...(demoPeople === undefined ? [] : [`${demoPeople}-people`]),
  ].join('-');
  const folder = demoFolder(options.data, name);
  const print = codeFingerprint();
  if (!options.resetDemo && existsSync(folder)) {
    const store = await openNotesStore({ folder });
    const madeBy = await keptMark(store);
    if (madeBy === print) return store;
    await store.close();
    if (madeBy !== undefined) watching.say('The product has changed since this demo was made: it is made anew.');
  }
  // Made beside its place and moved there whole: a demo that was interrupted is never opened.
  const draft = `${folder}.being-made`;
  removeFolder(draft);
  // The rows beside the ledgers are made once at the end: making them with every act would take as long as the acts.
  await withStore(await openNotesStore({ folder: draft }, () => []), async (store) =>
    fill(store, options, begins, watching),
  );
  await withStore(await openNotesStore({ folder: draft }), async (store) => {
    await store.rebuild();
    await store.setSetting('demo-made-by', print);
  });
  removeFolder(folder);
  renameSync(draft, folder);
  return openNotesStore({ folder });
}

/** What made these notes, if they are a demo; notes of another kind are refused. */
async function keptMark(store: Store): Promise<string | undefined> {
  try {
    await markedAs(store, 'demo');
    return await store.setting('demo-made-by');
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function openOnPostgres(
  postgres: string,
  options: ServeOptions,
  begins: DemoBeginning,
  watching: Watching,
): Promise<Store> {
  const store = await openNotesStore({ postgres });
  const madeBy = await keptMark(store);
  try {
    if (madeBy !== undefined && !options.resetDemo) return store;
    if ((await store.tail()).commit > 0)
      throw new CannotStart(
        'This database holds a demo already, or half of one: give an empty database to make it anew.',
      );
    await fill(store, options, begins, watching);
    await store.setSetting('demo-made-by', codeFingerprint());
    return store;
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function withStore(store: Store, work: (store: Store) => Promise<void>): Promise<void> {
  try {
    await work(store);
  } finally {
    await store.close();
  }
}

async function fill(
  store: Store,
  { demoSeed, demoPeople }: ServeOptions,
  { on, time }: DemoBeginning,
  watching: Watching,
): Promise<void> {
  watching.say(`Making the demo of ${plainDate(on)}, seed ${demoSeed}. This is done once ...`);
  await markedAs(store, 'demo');
  const minuteOfDay = Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
  const clock = await makeDemo(store, { seed: demoSeed, today: on, minuteOfDay, people: demoPeople }, watching);
  if (clock !== undefined) {
    const aheadOfWall = clock.uptimeMilliseconds - Date.parse(clock.wall);
    await store.setSetting('demo-clock', JSON.stringify({ boot: clock.boot, aheadOfWall }));
  }
  await store.setSetting('service', 'Marlowe Vale');
}

/** The moment from which the clock goes on: the beginning, or where the last server stopped. */
async function wentOnUntil(store: Store, { on, time }: DemoBeginning): Promise<string> {
  const stopped = await store.setting('demo-stopped-at');
  const begins = `${plainDate(on)}T${time}`;
  return stopped !== undefined && stopped > begins ? stopped : begins;
}

/** Kept when the server stops, as a local moment. */
export async function keepDemoTime(store: Store, clock: Clock): Promise<void> {
  await store.setSetting('demo-stopped-at', clock.local(zone).moment.slice(0, 23));
  await store.setSetting('demo-ahead', '');
}
