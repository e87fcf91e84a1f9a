/** Whether the server was reached by the last call. One small store that the banner watches. */
import { useSyncExternalStore } from 'react';

let reached = true;
const watchers = new Set<() => void>();

export function noteReached(now: boolean): void {
  if (now === reached) return;
  reached = now;
  for (const watcher of watchers) watcher();
}

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};

export const useReached = (): boolean => useSyncExternalStore(watch, () => reached);
