/**
 * The coming years, beside the page. What is asked next is begun at once: what runs is let go of at its next step. A rough answer
 * from few futures comes first, so that something moves while a slider does.
 */
import { type AheadAnswer, type DemandInputs, type Offer, type WaitTarget, aheadInSteps } from '@twelvemonth/planning';
import { fullRuns, roughRuns, weeksAhead, weeksTogether } from './ahead-size.ts';

export type AheadAsk = {
  readonly asks: number;
  readonly of: { readonly inputs: DemandInputs; readonly offer: Offer };
  readonly target: WaitTarget;
};
export type AheadSays = {
  readonly asks: number;
  /** Futures played so far for the full answer, of how many. */
  readonly played?: number;
  readonly answer?: AheadAnswer & { readonly isRough: boolean };
};

/** The same seed each time: a what-if meets the same futures. */
const seed = 1;
/** Steps between two looks whether something else is asked. */
const stepsTogether = 12;
const stepsPerReport = 60;

let asked = 0;
const channel = new MessageChannel();

// oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
const say = (message: AheadSays): void => self.postMessage(message);

/** Lets a message that waits be read. */
const nextTurn = async (): Promise<void> =>
  new Promise((resolve) => {
    channel.port2.addEventListener('message', () => resolve(), { once: true });
    channel.port2.start();
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port has no origin
    channel.port1.postMessage(undefined);
  });

/** Undefined: something else was asked meanwhile. */
async function answered({ asks, of, target }: AheadAsk, runs: number): Promise<AheadAnswer | undefined> {
  const steps = aheadInSteps(of, target, { weeks: weeksAhead, runs, seed }, weeksTogether);
  for (let count = 1; ; count += 1) {
    const step = steps.next();
    if (step.done === true) return step.value;
    if (runs === fullRuns && count % stepsPerReport === 0) say({ asks, played: count });
    if (count % stepsTogether === 0) await nextTurn();
    if (asks !== asked) return undefined;
  }
}

async function answer(ask: AheadAsk): Promise<void> {
  for (const runs of [roughRuns, fullRuns]) {
    const found = await answered(ask, runs);
    if (found === undefined) return;
    say({ asks: ask.asks, answer: { ...found, isRough: runs !== fullRuns } });
  }
}

self.addEventListener('message', ({ data }: MessageEvent<AheadAsk | { readonly asks: 0 }>) => {
  asked = data.asks;
  if ('of' in data) void answer(data);
});
