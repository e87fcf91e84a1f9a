import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { ServerProblem } from '../server/server-problem.ts';
import { Trouble } from './Trouble.tsx';

const isNoLongerTheirs = (error: Error | null): boolean =>
  error instanceof ServerProblem && (error.problem.status === 403 || error.problem.status === 404);

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
  // What may no longer be seen is not shown from memory.
  if (query.data !== undefined && !isNoLongerTheirs(query.error)) return children(query.data);
  if (query.error !== null) return <Trouble error={query.error} again={() => void query.refetch()} />;
  return <output className="quiet">fetching {what} …</output>;
}
