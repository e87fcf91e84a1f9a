import type { FillView } from '@twelvemonth/exchange';
import type { EarlierSession } from '@twelvemonth/planning';
import { useCallback, useEffect, useRef, useState } from 'react';
import { fill, queries } from '../server/queries.ts';
import type { FillAsk, FillSays, Proposed } from './fill.worker.ts';

export type Proposal = {
  readonly state:
    | { readonly is: 'working'; readonly doing: string; readonly share: number | undefined }
    | { readonly is: 'stopped' }
    | { readonly is: 'failed'; readonly error: Error }
    | { readonly is: 'nothing'; readonly says: readonly string[]; readonly view: FillView }
    | { readonly is: 'there'; readonly view: FillView; readonly proposed: Proposed };
  /** By person of the request: the earlier sessions, once they were asked for. */
  readonly earlier: ReadonlyMap<number, readonly EarlierSession[]>;
  readonly askWhy: (person: number) => void;
  readonly stop: () => void;
};

const askWorker = (worker: Worker | undefined, ask: FillAsk): void =>
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
  worker?.postMessage(ask);

/**
 * A proposal from the notes as they are when it is asked for. It stays as it is while its lines are accepted: whoever wants it
 * from what was written since asks anew.
 */
export function useProposal(unit: string): Proposal {
  const worker = useRef<Worker>(undefined);
  const [state, setState] = useState<Proposal['state']>({
    is: 'working',
    doing: 'reading the notes',
    share: undefined,
  });
  const [earlier, setEarlier] = useState<Proposal['earlier']>(new Map());
  const isOver = useRef(false);
  const end = useCallback(() => {
    isOver.current = true;
    worker.current?.terminate();
    worker.current = undefined;
  }, []);
  const begin = useCallback((view: FillView): void => {
    if (view.request === undefined) {
      setState({ is: 'nothing', says: [view.says ?? ''], view });
      return;
    }
    const begun = new Worker(new URL('./fill.worker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    begun.addEventListener('message', ({ data }: MessageEvent<FillSays>) => {
      if (data.says === 'progress') setState({ is: 'working', doing: data.doing, share: data.share });
      else if (data.says === 'impossible') setState({ is: 'nothing', says: data.problems, view });
      else if (data.says === 'proposed') setState({ is: 'there', view, proposed: data.proposed });
      else setEarlier((before) => new Map([...before, [data.person, data.earlier]]));
    });
    askWorker(begun, {
      asks: 'fill',
      written: view.request,
      minutesOpen: view.sessions.map(({ minutesOpen }) => minutesOpen),
    });
  }, []);
  useEffect(() => {
    isOver.current = false;
    queries.fetchQuery(fill(unit)).then(
      (view) => (isOver.current ? undefined : begin(view)),
      (error: unknown) =>
        isOver.current
          ? undefined
          : setState({ is: 'failed', error: error instanceof Error ? error : new Error(String(error)) }),
    );
    return end;
  }, [unit, begin, end]);
  return {
    state,
    earlier,
    askWhy: useCallback((person) => askWorker(worker.current, { asks: 'why', person }), []),
    stop: useCallback(() => {
      end();
      setState({ is: 'stopped' });
    }, [end]),
  };
}
