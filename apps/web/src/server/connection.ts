/**
 * Whether the server was reached by the last call, since when not, and what time it is there. One small store that banner and
 * sync state watch. The server's time is carried on by the device's clock: set a day wrong, it is as wrong at both ends.
 */
import { useSyncExternalStore } from 'react';
import { deviceMilliseconds } from '../clock.ts';

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

export function noteServerTime(serverTime: string, deviceAt: number): void {
  const ahead = Date.parse(serverTime) - deviceAt;
  const isNews = ahead !== aheadMilliseconds && awayAt !== undefined;
  aheadMilliseconds = ahead;
  if (isNews) tell(awayAt);
}
export const serverAheadMilliseconds = (): number => aheadMilliseconds;
/** The server's time as this device reckons it, in milliseconds of world time. */
export const reckonedServerTime = (): number => deviceMilliseconds() + aheadMilliseconds;

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
