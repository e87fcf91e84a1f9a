/**
 * Places suggested, beside the page. The filling stays here for what is asked about it afterwards: why not earlier, what one more
 * would save. It is stopped by ending the worker.
 */
import {
  type EarlierSession,
  type FillAnswer,
  type FillRequest,
  type Filling,
  type Worth,
  fillInSteps,
  readFillRequest,
  whyNotEarlier,
  worthOfOneMore,
  worthOfOneMoreNurse,
} from '@twelvemonth/planning';

export type FillAsk =
  | { readonly asks: 'fill'; readonly written: unknown; readonly minutesOpen: readonly number[] }
  | { readonly asks: 'why'; readonly person: number };

/** What one more visit of a kind, or one more nurse through a session, would save: the sessions it would help most. */
export type OneMore = { readonly of: string; readonly best: readonly Worth[] };

export type Proposed = {
  readonly request: FillRequest;
  readonly sessionNames: readonly string[];
  readonly hasUsualWeights: boolean;
  readonly session: Extract<FillAnswer, { ok: true }>['session'];
  readonly changes: Extract<FillAnswer, { ok: true }>['changes'];
  readonly tiers: Extract<FillAnswer, { ok: true }>['tiers'];
  readonly oneMore: readonly OneMore[];
};

export type FillSays =
  | { readonly says: 'progress'; readonly doing: string; readonly share: number }
  | { readonly says: 'proposed'; readonly proposed: Proposed }
  | { readonly says: 'impossible'; readonly problems: readonly string[] }
  | { readonly says: 'why'; readonly person: number; readonly earlier: readonly EarlierSession[] };

/** Sessions told of what one more would save. */
const mostWorth = 3;

// oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
const say = (message: FillSays): void => self.postMessage(message);

let kept: { readonly request: FillRequest; readonly filling: Filling; readonly proposed: Proposed } | undefined;

function oneMoreOf(request: FillRequest, filling: Filling, minutesOpen: readonly number[]): OneMore[] {
  const helps = (worth: readonly Worth[]): Worth[] => worth.filter(({ days }) => days > 0).slice(0, mostWorth);
  const asked = [
    ...request.kinds.map(({ name }, kind) => ({
      of: `one more ${name}`,
      worth: () => worthOfOneMore(request, filling, kind),
    })),
    { of: 'one more nurse through a session', worth: () => worthOfOneMoreNurse(filling, minutesOpen) },
  ];
  return asked.map(({ of, worth }, index) => {
    say({ says: 'progress', doing: 'working out what one more would save', share: index / asked.length });
    return { of, best: helps(worth()) };
  });
}

/** Said again only when a hundredth more is done: the page has little to do with it. */
const toldEvery = 0.01;

function filled(request: FillRequest): FillAnswer {
  const doing = `filling ${request.sessions.length} sessions`;
  const tell = (share: number): void => say({ says: 'progress', doing, share });
  let told = 0;
  tell(told);
  const steps = fillInSteps(request);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    if (step.value < told + toldEvery) continue;
    told = step.value;
    tell(told);
  }
}

function fill(written: unknown, minutesOpen: readonly number[]): void {
  const read = readFillRequest(written);
  if (!read.ok) return say({ says: 'impossible', problems: read.problems.map(({ at, says }) => `${at}: ${says}`) });
  const { request, sessionNames, hasUsualWeights } = read;
  const answer = filled(request);
  if (!answer.ok) return say({ says: 'impossible', problems: answer.problems });
  const { session, changes, tiers, filling } = answer;
  const oneMore = oneMoreOf(request, filling, minutesOpen);
  const proposed: Proposed = { request, sessionNames, hasUsualWeights, session, changes, tiers, oneMore };
  kept = { request, filling, proposed };
  say({ says: 'proposed', proposed });
}

self.addEventListener('message', ({ data }: MessageEvent<FillAsk>) => {
  if (data.asks === 'fill') return fill(data.written, data.minutesOpen);
  if (kept === undefined) return;
  const { request, filling, proposed } = kept;
  const earlier = whyNotEarlier(request, filling, data.person, proposed.session[data.person] ?? null);
  say({ says: 'why', person: data.person, earlier });
});
