/** An answer that comes in parts: begun by hand, told as it grows, and stopped at any time. */
import { useEffect, useRef, useState } from 'react';

export type InParts<Part> = {
  readonly state: 'not begun' | 'running' | 'done' | 'stopped';
  readonly parts: readonly Part[];
  readonly error: Error | undefined;
};

export function useParts<Part extends { readonly next?: number | undefined }>(
  ask: (after: number, signal: AbortSignal) => Promise<Part>,
): { now: InParts<Part>; begin: () => void; stop: () => void } {
  const [now, setNow] = useState<InParts<Part>>({ state: 'not begun', parts: [], error: undefined });
  const running = useRef<AbortController>(undefined);
  useEffect(() => () => running.current?.abort(), []);

  async function run(over: AbortController): Promise<void> {
    let after: number | undefined = 0;
    let parts: readonly Part[] = [];
    while (after !== undefined && !over.signal.aborted) {
      const part: Part = await ask(after, over.signal);
      if (over.signal.aborted) return;
      parts = [...parts, part];
      after = part.next;
      setNow({ state: after === undefined ? 'done' : 'running', parts, error: undefined });
    }
  }
  return {
    now,
    begin: () => {
      running.current?.abort();
      const over = new AbortController();
      running.current = over;
      setNow({ state: 'running', parts: [], error: undefined });
      run(over).catch((error: unknown) => {
        if (over.signal.aborted) return;
        setNow((before) => ({
          ...before,
          state: 'stopped',
          error: error instanceof Error ? error : new Error(String(error)),
        }));
      });
    },
    stop: () => {
      running.current?.abort();
      setNow((before) => ({ ...before, state: 'stopped' }));
    },
  };
}
