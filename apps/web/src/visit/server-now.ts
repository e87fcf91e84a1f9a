import { useEffect, useRef, useState } from 'react';
import { steadyMilliseconds } from '../clock.ts';

/** The server's time now, carried on from its last answer by an even clock: a device that is set wrong changes nothing. */
export function useServerNow(serverTime: string): () => number {
  const base = useRef({ serverTime: '', at: 0 });
  if (base.current.serverTime !== serverTime) base.current = { serverTime, at: steadyMilliseconds() };
  return () => Date.parse(base.current.serverTime) + (steadyMilliseconds() - base.current.at);
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
