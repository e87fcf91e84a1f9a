/** The unit whose day is shown. Kept for this browser only; a person may look at any unit of the service. */
import { useQuery } from '@tanstack/react-query';
import type { UnitView } from '@twelvemonth/exchange';
import { useSyncExternalStore } from 'react';
import { me, status } from '../server/queries.ts';

const key = 'twelvemonth.unit';
const watchers = new Set<() => void>();

export function showUnit(unit: string): void {
  sessionStorage.setItem(key, unit);
  for (const watcher of watchers) watcher();
}

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};

/** The unit shown, and all there are. Undefined in an empty service. */
export function useUnit(): { readonly unit: UnitView | undefined; readonly units: readonly UnitView[] } {
  const chosen = useSyncExternalStore(watch, () => sessionStorage.getItem(key));
  const units = useQuery(status).data?.units ?? [];
  const own = useQuery(me).data?.unit;
  const unit = units.find((u) => u.unit === chosen) ?? units.find((u) => u.unit === own) ?? units[0];
  return { unit, units };
}

/** The service's own date: never the device's. */
export const useServiceToday = (): string => useQuery(status).data?.today ?? '1970-01-01';
