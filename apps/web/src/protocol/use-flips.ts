/** Who flips, asked for part by part: what is known so far is shown while the rest is worked out, and it can be stopped. */
import type { FlipsAnswer } from '@twelvemonth/exchange';
import { useEffect, useState } from 'react';
import { post } from '../server/request.ts';

export type FlipsAsked = { readonly version: string } | { readonly sheet: unknown };

export type FlipsSoFar = {
  readonly state: 'asking' | 'done' | 'stopped';
  readonly compared: number;
  readonly of: number | undefined;
  readonly flips: FlipsAnswer['flips'];
  readonly error: Error | undefined;
};

const nothingYet: FlipsSoFar = { state: 'asking', compared: 0, of: undefined, flips: [], error: undefined };
/** A number being typed is asked about once the fingers rest this long. */
const restMilliseconds = 120;

/** Asks again whenever what is asked about changes; undefined asks nothing. */
export function useFlips(unit: string, asked: FlipsAsked | undefined): { now: FlipsSoFar; stop: () => void } {
  const [now, setNow] = useState<FlipsSoFar>(nothingYet);
  const [stopped, setStopped] = useState<string>();
  const text = asked === undefined ? undefined : JSON.stringify(asked);
  const isStopped = stopped !== undefined && stopped === text;
  useEffect(() => {
    if (text === undefined || isStopped) return undefined;
    const over = new AbortController();
    const body = JSON.parse(text) as FlipsAsked;
    const run = async (): Promise<void> => {
      let flips: FlipsAnswer['flips'] = [];
      let after: number | undefined = 0;
      setNow((before) => ({ ...before, state: 'asking', error: undefined }));
      while (after !== undefined) {
        const part: FlipsAnswer = await post('flips', { ...body, after }, { unit }, over.signal);
        if (over.signal.aborted) return;
        flips = [...flips, ...part.flips];
        after = part.next;
        const { compared, of } = part;
        setNow({ state: after === undefined ? 'done' : 'asking', compared, of, flips, error: undefined });
      }
    };
    const begin = setTimeout(() => {
      run().catch((error: unknown) => {
        if (over.signal.aborted) return;
        setNow({ ...nothingYet, state: 'done', error: error instanceof Error ? error : new Error(String(error)) });
      });
    }, restMilliseconds);
    return () => {
      clearTimeout(begin);
      over.abort();
    };
  }, [unit, text, isStopped]);
  return { now: isStopped ? { ...now, state: 'stopped' } : now, stop: () => setStopped(text) };
}
