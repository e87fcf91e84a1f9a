/** What the person at the desk may ask for, as the server told it: screens offer nothing that would only be refused. */
import { useQuery } from '@tanstack/react-query';
import type { ActName } from '@twelvemonth/clinical';
import type { RouteName } from '../server/paths.ts';
import { me } from '../server/queries.ts';

export function useMay(): (what: RouteName | ActName) => boolean {
  const may = useQuery(me).data?.may ?? [];
  return (what) => may.includes(what);
}
