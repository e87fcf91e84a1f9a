/** Acts written without a network: kept on this device, sent once when it is back, in the order in which they were written. */
import type { ActBody } from '@twelvemonth/exchange';
import { useSyncExternalStore } from 'react';
import type { Refusal, ServerProblem } from '../server/server-problem.ts';
import { everyKept, forget, keep } from './vault.ts';
import { tellTabs } from '../server/tell-tabs.ts';

export type WaitingAct = Pick<ActBody, 'id' | 'act' | 'role' | 'seen'> & {
  /** Undefined: a call about somebody who was not found. */
  readonly patient: string | undefined;
  readonly name: string;
  readonly staff: string;
  readonly staffName: string;
  /** World time by the server's clock, as this device reckoned it. */
  readonly wroteAt: string;
  /** This device's own clock. */
  readonly deviceAt: string;
  /** It goes on with a dose that another device holds: somebody has read what was written there. */
  readonly takesOver?: true;
  /** The device's clock was moved, and somebody says that the time is right. */
  readonly confirmedTime?: true;
  /** A person read what stands against it and sends it all the same: why, written down once it is in. */
  readonly allTheSame?: { readonly against: string; readonly because: string };
  /** What the server or this device said instead of taking it: a person decides. */
  readonly needs?: {
    readonly says: string;
    readonly refusals: readonly Refusal[];
    readonly missed: ServerProblem['missed'];
  };
};

let waiting: readonly WaitingAct[] = [];
const watchers = new Set<() => void>();

function tell(now: readonly WaitingAct[]): void {
  waiting = now.toSorted((a, b) => (a.wroteAt < b.wroteAt ? -1 : a.wroteAt > b.wroteAt ? 1 : 0));
  for (const watcher of watchers) watcher();
}

/** Another tab of this browser may be the one that is left when the network is back: each knows what waits. */
const tabs = new BroadcastChannel('twelvemonth-waiting');
tabs.addEventListener('message', () => void readWaiting().catch(() => undefined));
const tellOthers = (): void => tellTabs(tabs, 'changed');

/** Reads what an earlier page or another tab has left. */
export async function readWaiting(): Promise<readonly WaitingAct[]> {
  tell(await everyKept<WaitingAct>('acts'));
  return waiting;
}

export async function letWait(act: WaitingAct): Promise<void> {
  await keep('acts', act.id, act);
  tell([...waiting.filter(({ id }) => id !== act.id), act]);
  tellOthers();
}

export async function waitNoMore(id: string): Promise<void> {
  await forget('acts', id);
  tell(waiting.filter((one) => one.id !== id));
  tellOthers();
}

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};
const now = (): readonly WaitingAct[] => waiting;
export const useWaiting = (): readonly WaitingAct[] => useSyncExternalStore(watch, now);
export const waitingNow = now;
