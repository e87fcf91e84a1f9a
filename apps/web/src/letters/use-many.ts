/** One press for a list: act after act, with how far it is, a way to stop, and each one that was refused by name. */
import { useRef, useState } from 'react';
import type { ActBody } from '@twelvemonth/exchange';
import { useActingRole } from '../frame/acting-role.ts';
import { fetchAgain } from '../server/queries.ts';
import { post } from '../server/request.ts';
import { ServerProblem } from '../server/server-problem.ts';

export type One = {
  readonly who: string;
  /** Undefined: not to be done after all, with the reason. */
  readonly act: () => Promise<ActBody['act'] | { readonly because: string } | 'done'>;
};
type Progress = { readonly done: number; readonly of: number; readonly left: readonly string[] };

export type Many = {
  readonly run: (all: readonly One[]) => Promise<void>;
  readonly stop: () => void;
  readonly busy: boolean;
  readonly progress: Progress | undefined;
};

export function useMany(): Many {
  const [progress, setProgress] = useState<Progress>();
  const [busy, setBusy] = useState(false);
  const stopped = useRef(false);
  const { role } = useActingRole();
  const one = async ({ who, act }: One): Promise<string | undefined> => {
    try {
      const found = await act();
      if (found === 'done') return undefined;
      if ('because' in found) return `${who}: ${found.because}`;
      await post('act', { id: crypto.randomUUID(), act: found, ...(role === undefined ? {} : { role }) });
      return undefined;
    } catch (error) {
      if (!(error instanceof ServerProblem)) return `${who}: the server cannot be reached; nothing was written`;
      return `${who}: ${error.problem.refusals?.[0]?.says ?? error.problem.detail ?? error.problem.title}`;
    }
  };
  const run = async (all: readonly One[]): Promise<void> => {
    if (busy) return;
    stopped.current = false;
    setBusy(true);
    let left: readonly string[] = [];
    for (const [index, each] of all.entries()) {
      if (stopped.current) break;
      const because = await one(each);
      if (because !== undefined) left = [...left, because];
      setProgress({ done: index + 1, of: all.length, left });
    }
    await fetchAgain();
    setBusy(false);
  };
  return {
    run,
    stop: () => {
      stopped.current = true;
    },
    busy,
    progress,
  };
}
