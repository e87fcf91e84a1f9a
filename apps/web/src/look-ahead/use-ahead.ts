import type { AheadAnswer, DemandInputs, Offer } from '@twelvemonth/planning';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { AheadAsk, AheadSays } from './ahead.worker.ts';

export type Ahead = {
  readonly answer: (AheadAnswer & { readonly isRough: boolean }) | undefined;
  /** Futures played so far; undefined when nothing runs. */
  readonly played: number | undefined;
  readonly isStopped: boolean;
  readonly stop: () => void;
};

type Asked = Pick<AheadAsk, 'of' | 'target'>;
type Known = Pick<Ahead, 'answer' | 'played' | 'isStopped'> & { readonly about: Asked | undefined };

/** Looked ahead again whenever the case changes, in a worker that is kept; the last answer stays until the next is there. */
export function useAhead(
  { inputs, offer }: { readonly inputs: DemandInputs; readonly offer: Offer },
  targetWeeks: number,
  probability: number,
): Ahead {
  const asked = useMemo<Asked>(
    () => ({ of: { inputs, offer }, target: { weeks: targetWeeks, probability } }),
    [inputs, offer, targetWeeks, probability],
  );
  const worker = useRef<Worker>(undefined);
  const asks = useRef(0);
  const [known, setKnown] = useState<Known>({ about: undefined, answer: undefined, played: 0, isStopped: false });
  useEffect(() => {
    const begun = new Worker(new URL('./ahead.worker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    return () => begun.terminate();
  }, []);
  const post = useCallback((message: AheadAsk | { readonly asks: 0 }) => {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
    worker.current?.postMessage(message);
  }, []);
  useEffect(() => {
    asks.current += 1;
    const own = asks.current;
    const heard = ({ data }: MessageEvent<AheadSays>): void => {
      if (data.asks !== own) return;
      setKnown(({ answer }) =>
        data.answer === undefined
          ? { about: asked, answer, played: data.played ?? 0, isStopped: false }
          : { about: asked, answer: data.answer, played: data.answer.isRough ? 0 : undefined, isStopped: false },
      );
    };
    const from = worker.current;
    from?.addEventListener('message', heard);
    post({ asks: own, ...asked });
    return () => from?.removeEventListener('message', heard);
  }, [asked, post]);
  const stop = useCallback(() => {
    post({ asks: 0 });
    setKnown(({ answer }) => ({ about: asked, answer, played: undefined, isStopped: true }));
  }, [asked, post]);
  return known.about === asked ? { ...known, stop } : { answer: known.answer, played: 0, isStopped: false, stop };
}
