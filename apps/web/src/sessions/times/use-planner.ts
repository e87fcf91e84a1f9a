import { useCallback, useEffect, useRef, useState } from 'react';
import type { PlannerAsk, PlannerSays } from './planner.worker.ts';

export type Planner = {
  /** What is being worked out, and how much of it is done where that is known. */
  readonly working: { readonly asks: PlannerAsk['asks']; readonly share: number | undefined } | undefined;
  readonly ask: (what: PlannerAsk, done: (says: PlannerSays) => void) => void;
  readonly stop: () => void;
};

/** One piece of work at a time, in a worker of its own; what is asked next ends what runs. */
export function usePlanner(): Planner {
  const worker = useRef<Worker>(undefined);
  const [working, setWorking] = useState<Planner['working']>();
  const stop = useCallback(() => {
    worker.current?.terminate();
    worker.current = undefined;
    setWorking(undefined);
  }, []);
  useEffect(() => stop, [stop]);
  const ask = useCallback(
    (what: PlannerAsk, done: (says: PlannerSays) => void) => {
      stop();
      const begun = new Worker(new URL('./planner.worker.ts', import.meta.url), { type: 'module' });
      worker.current = begun;
      setWorking({ asks: what.asks, share: undefined });
      begun.addEventListener('message', ({ data }: MessageEvent<PlannerSays>) => {
        if (data.says === 'progress') return setWorking({ asks: what.asks, share: data.share });
        stop();
        done(data);
      });
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
      begun.postMessage(what);
    },
    [stop],
  );
  return { working, ask, stop };
}
