import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Trouble } from './Trouble.tsx';

/** Shows what was asked for once it is there; until then that it is being fetched, and if it cannot be, why and what to quote. */
export function Awaited<Data>({
  query,
  what,
  children,
}: {
  query: UseQueryResult<Data>;
  what: string;
  children: (data: Data) => ReactNode;
}) {
  if (query.data !== undefined) return children(query.data);
  if (query.error !== null) return <Trouble error={query.error} again={() => void query.refetch()} />;
  return <output className="quiet">fetching {what} …</output>;
}
