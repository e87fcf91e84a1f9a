/** Presses that came to nothing after whoever pressed had gone on to another screen, or another's step had taken the form away. */
import { useSyncExternalStore } from 'react';

export type LeftBehind = {
  readonly id: string;
  /** The title of the screen it was pressed at, and the address that leads back there. */
  readonly screen: string;
  readonly address: string;
  readonly says: readonly string[];
};

let left: readonly LeftBehind[] = [];
const watchers = new Set<() => void>();
function tell(now: readonly LeftBehind[]): void {
  left = now;
  for (const watcher of watchers) watcher();
}

/** Kept until somebody says that they have read it; the same press twice stands once. */
export const leaveBehind = (one: LeftBehind): void => tell([...left.filter(({ id }) => id !== one.id), one]);
export const readIt = (id: string): void => tell(left.filter((one) => one.id !== id));
/** Somebody is at the desk who may not see people. */
export const forgetLeftBehind = (): void => tell([]);

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};
const now = (): readonly LeftBehind[] => left;
export const useLeftBehind = (): readonly LeftBehind[] => useSyncExternalStore(watch, now);
