/**
 * Whether the server was reached by the last call, since when not, and what time it is there. One small store that banner and
 * sync state watch. The server's time is carried on by the device's clock: set a day wrong, it is as wrong at both ends.
 */
import { useSyncExternalStore } from 'react';
import { deviceMilliseconds, steadyMilliseconds } from '../clock.ts';

/** `awaySince`: milliseconds of world time by the server's clock, as far as known; undefined: reached. */
export type Connection = { readonly awaySince: number | undefined };

let connection: Connection = { awaySince: undefined };
/** The same by this device's clock. */
let awayAt: number | undefined;
/** Milliseconds from this device's clock to the server's. */
let aheadMilliseconds = 0;
const watchers = new Set<() => void>();

/** `keptAt`: what was shown instead is this old, by the device's clock. */
export function noteReached(now: boolean, keptAt = deviceMilliseconds()): void {
  if (now !== (awayAt === undefined)) tell(now ? undefined : keptAt);
}

function tell(at: number | undefined): void {
  awayAt = at;
  connection = { awaySince: at === undefined ? undefined : at + aheadMilliseconds };
  for (const watcher of watchers) watcher();
}

/** What the server's clock said to this page, and when by its even clock. */
let told: { readonly server: number; readonly steady: number } | undefined;

/** `keptAt`: it stood in an answer that was kept then, by this device's clock; such a one never speaks against a fresh one. */
export function noteServerTime(serverTime: string, keptAt?: number): void {
  if (keptAt !== undefined && told !== undefined) return;
  const server = Date.parse(serverTime);
  if (keptAt === undefined) told = { server, steady: steadyMilliseconds() };
  const ahead = server - (keptAt ?? deviceMilliseconds());
  const isNews = ahead !== aheadMilliseconds && awayAt !== undefined;
  aheadMilliseconds = ahead;
  if (isNews) tell(awayAt);
}
export const serverAheadMilliseconds = (): number => aheadMilliseconds;

/** Undefined: the server has told this page nothing yet. It stands still while the device sleeps. */
const steadyServerTime = (): number | undefined =>
  told === undefined ? undefined : told.server + steadyMilliseconds() - told.steady;

/** The server's time as this device reckons it, in milliseconds of world time. A device's clock that is put back takes nothing off. */
export const reckonedServerTime = (): number =>
  Math.max(deviceMilliseconds() + aheadMilliseconds, steadyServerTime() ?? -Infinity);

/** Seconds since the server's clock said so, by an even clock of this page; undefined: none ran. */
export function secondsSince(serverTime: string): number | undefined {
  const now = steadyServerTime();
  return now === undefined ? undefined : Math.max(0, now - Date.parse(serverTime)) / 1000;
}

/** Calls back when the server is reached after it was not; returns what ends that. */
export function onReachedAgain(then: () => void): () => void {
  let wasAway = awayAt !== undefined;
  return watch(() => {
    const isAway = awayAt !== undefined;
    if (wasAway && !isAway) then();
    wasAway = isAway;
  });
}

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};
const now = (): Connection => connection;

export const useConnection = (): Connection => useSyncExternalStore(watch, now);
