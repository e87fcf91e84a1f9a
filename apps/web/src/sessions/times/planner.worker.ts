/** Planning that takes a while, beside the page: how far it is it says, and it is stopped by ending it. */
import {
  type Day,
  type DayAnswer,
  type Drawn,
  type Improved,
  type LikelyFinish,
  type Plan,
  type Rehearsal,
  type RestOfDay,
  type RestProposal,
  answerDay,
  heldToTime,
  likelyFinish,
  improveDrawn,
  proposeRest,
  rehearse,
  usualChances,
} from '@twelvemonth/planning';

export type PlannerAsk =
  | { readonly asks: 'plan'; readonly day: Day; readonly effort: number }
  | { readonly asks: 'improve'; readonly day: Day; readonly drawn: Drawn; readonly effort: number }
  | { readonly asks: 'rest'; readonly rest: RestOfDay; readonly effort: number }
  | { readonly asks: 'finish'; readonly rest: RestOfDay; readonly effort: number }
  | { readonly asks: 'rehearse'; readonly day: Day; readonly plan: Plan; readonly days: number };
export type PlannerSays =
  | { readonly says: 'progress'; readonly share: number }
  | { readonly says: 'planned'; readonly answer: DayAnswer; readonly onTime: string | undefined }
  | { readonly says: 'improved'; readonly improved: Improved }
  | { readonly says: 'rest'; readonly proposal: RestProposal }
  | { readonly says: 'finish'; readonly finish: LikelyFinish }
  | { readonly says: 'rehearsed'; readonly rehearsal: Rehearsal };

/** The same seed each time: the same day gives the same plan and meets the same delays. */
const seed = 1;
/** A rehearsal is asked whether to stop before each hundred days. */
const asksEvery = 100;
const triesPerContradiction = 2;
const triesPerRemedyTry = 20;
/** Plans searched for beside the first where that ends on time too seldom, and days each is tried out on. */
const othersTried = 7;
const daysTried = 1_000;

// oxlint-disable-next-line unicorn/require-post-message-target-origin -- between a page and its own worker there is no other origin
const say = (message: PlannerSays): void => self.postMessage(message);

self.addEventListener('message', ({ data }: MessageEvent<PlannerAsk>) => {
  if (data.asks === 'plan') {
    const { day, effort } = data;
    const answer = answerDay(day, seed, {
      search: { iterations: effort },
      contradictions: Math.ceil(effort / triesPerContradiction),
      remedy: { iterations: Math.ceil(effort / triesPerRemedyTry) },
    });
    const held =
      answer.kind === 'planned'
        ? heldToTime(day, answer, usualChances, {
            others: othersTried,
            search: { iterations: effort },
            rehearse: { seed, days: daysTried },
          })
        : undefined;
    say({ says: 'planned', answer: held?.answer ?? answer, onTime: held?.says });
    return;
  }
  if (data.asks === 'improve') {
    const { day, drawn, effort } = data;
    say({ says: 'improved', improved: improveDrawn(day, drawn, { seed, limit: { iterations: effort } }) });
    return;
  }
  if (data.asks === 'rest') {
    const { rest, effort } = data;
    say({ says: 'rest', proposal: proposeRest(rest, { seed, limit: { iterations: effort } }) });
    return;
  }
  if (data.asks === 'finish') {
    const { rest, effort } = data;
    const proposal = proposeRest(rest, { seed, limit: { iterations: effort } });
    say({ says: 'finish', finish: likelyFinish(rest, proposal, { seed, days: daysTried }) });
    return;
  }
  const { day, plan, days } = data;
  let played = 0;
  const rehearsal = rehearse(day, plan, usualChances, {
    seed,
    days,
    stop() {
      say({ says: 'progress', share: played / days });
      played += asksEvery;
      return false;
    },
  });
  say({ says: 'rehearsed', rehearsal });
});
