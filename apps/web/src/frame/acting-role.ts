/** The role the person at the desk acts in, where they hold several. Shown beside their name; sent with every act. */
import { useQuery } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { me } from '../server/queries.ts';

let chosen: string | undefined;
const watchers = new Set<() => void>();

export function actAs(role: string): void {
  chosen = role;
  for (const watcher of watchers) watcher();
}

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};

/** `role` is undefined while the server can tell it by itself: with one role only, or before anyone has chosen. */
export function useActingRole(): { readonly role: string | undefined; readonly roles: readonly string[] } {
  const wanted = useSyncExternalStore(watch, () => chosen);
  const roles = useQuery(me).data?.roles ?? [];
  return { role: wanted !== undefined && roles.length > 1 && roles.includes(wanted) ? wanted : undefined, roles };
}
