/**
 * A planned day held against how often it is to end on time. The plan found first is tried out; where it ends on time too seldom,
 * others that are nearly as good are searched for, and the best of those that end on time often enough is taken. Where none
 * does, the one that does so most often, and it is said.
 */
import type { Day } from '../day/day.ts';
import { clockAt } from '../day/time-words.ts';
import { compareObjectives } from '../plan/objective.ts';
import type { Chances } from '../rehearse/chances.ts';
import { type RehearseOptions, rehearse } from '../rehearse/rehearse.ts';
import { type Steadiest, steadiestOf } from '../rehearse/steadiest.ts';
import type { Limit } from '../search/limit.ts';
import { planDay } from '../search/search.ts';
import type { DayAnswer } from './answer.ts';

export type Planned = Extract<DayAnswer, { kind: 'planned' }>;

export type OnTimeAnswer = {
  readonly answer: Planned;
  /** Share of the days tried out that end by closing, under the plan taken. */
  readonly onTime: number;
  /** The same of the best by its four numbers alone. */
  readonly onTimeOfBest: number;
  /** Plans that differ and are nearly as good, all of them tried out. */
  readonly tried: number;
  readonly says: string;
};

export type OnTimeEffort = {
  /** Plans searched for beside the first, where that ends on time too seldom. */
  readonly others: number;
  readonly search: Limit;
  readonly rehearse: RehearseOptions;
};

/** Plans this near to the best are near-equals: two steps of the usual grid. A choice, no source. */
const nearMinutes = 10;
const percent = 100;
/** Rounded down: a plan that ends on time on 89.9 of 100 days does not reach 90. */
const inHundred = (share: number): number => Math.floor(share * percent);

function sentence(
  day: Day,
  asked: number,
  { onTime, onTimeOfBest, tried }: Omit<OnTimeAnswer, 'answer' | 'says'>,
): string {
  const ends = `Finishes by ${clockAt(day, day.closes)} in ${inHundred(onTime)} of 100 rehearsals; at least ${asked} are asked for.`;
  const near = `${tried} plans as good to within ${nearMinutes} minutes were rehearsed`;
  if (onTime > onTimeOfBest)
    return `${ends} ${near}; the best by waiting and end alone finishes in ${inHundred(onTimeOfBest)}.`;
  if (onTime * percent >= asked) return ends;
  return tried === 1
    ? `${ends} No other plan was found that is as good to within ${nearMinutes} minutes.`
    : `${ends} ${near}; none finishes on time more often.`;
}

/** The first that reaches what is asked, in the order of the four numbers; else the one that ends on time most often. */
const chosenOf = ({ tried, chosen }: Steadiest, asked: number): Steadiest['chosen'] =>
  tried.find(({ onTime }) => onTime * percent >= asked) ?? chosen;

/** Undefined where the day asks for nothing. */
export function heldToTime(
  day: Day,
  answer: Planned,
  chances: Chances,
  effort: OnTimeEffort,
): OnTimeAnswer | undefined {
  const asked = day.onTimePercent;
  if (asked === undefined) return undefined;
  const { onTime } = rehearse(day, answer.plan, chances, effort.rehearse);
  const first = { onTime, onTimeOfBest: onTime, tried: 1 };
  if (onTime * percent >= asked) return { ...first, answer, says: sentence(day, asked, first) };
  const others = Array.from(
    { length: effort.others },
    (_, index) => planDay(day, { seed: answer.seed + index + 1, limit: effort.search }).plan,
  );
  const ticks = Math.floor(nearMinutes / day.minutesPerTick);
  const near = { waitTicks: ticks, finishTicks: ticks };
  const found = steadiestOf(day, [answer.plan, ...others], near, chances, effort.rehearse);
  if (found === undefined) return { ...first, answer, says: sentence(day, asked, first) };
  const { plan, objective, onTime: reached } = chosenOf(found, asked);
  const result = { onTime: reached, onTimeOfBest: found.best.onTime, tried: found.tried.length };
  // What is proven of the best plan is not proven of one that is a little worse and ends on time more often.
  const isProven = answer.isProven && compareObjectives(objective, answer.objective) === 0;
  return { ...result, answer: { ...answer, plan, objective, isProven }, says: sentence(day, asked, result) };
}
