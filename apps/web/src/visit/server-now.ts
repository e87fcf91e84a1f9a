import { useEffect, useState } from 'react';
import { steadyMilliseconds } from '../clock.ts';

/** The server's time now, carried on from its last answer by an even clock: a device that is set wrong changes nothing. */
export function useServerNow(serverTime: string): () => number {
  const [base, setBase] = useState(() => ({ serverTime, at: steadyMilliseconds() }));
  if (base.serverTime !== serverTime) setBase({ serverTime, at: steadyMilliseconds() });
  return () => Date.parse(base.serverTime) + (steadyMilliseconds() - base.at);
}

/** Draws again every second while something runs. */
export function useTick(running: boolean): void {
  const [, tick] = useState(0);
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => tick((n) => n + 1), 1000);
    return () => clearInterval(timer);
  }, [running]);
}
