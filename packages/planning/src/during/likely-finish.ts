/**
 * When the rest of a day will likely be over: the plan for it played many times, with steps that take longer or shorter, second
 * tries at a vein, reactions. Everybody who is expected comes at their time and nobody is put off: who stays away makes it earlier.
 */
import { clockAt } from '../day/time-words.ts';
import { type Chances, usualChances } from '../rehearse/chances.ts';
import { rehearse } from '../rehearse/rehearse.ts';
import type { RestOfDay, RestProposal } from './rest-of-day.ts';

const everybodyComes: Chances = { ...usualChances, doesNotCome: 0, putOff: 0, lateness: { mean: 0, deviation: 0 } };

export type LikelyFinish = {
  /** HH:MM by which half of the days played are over, and nine in ten. */
  readonly half: string;
  readonly nineInTen: string;
  /** HH:MM */
  readonly closes: string;
  /** Days played, of a hundred, that are over when the unit closes. */
  readonly onTimeInHundred: number;
  /** People who have no place in what is left of the day. */
  readonly withoutPlace: number;
};

export function likelyFinish(
  { day }: RestOfDay,
  { drawn, lost, stuck }: Pick<RestProposal, 'drawn' | 'lost' | 'stuck'>,
  { seed, days }: { readonly seed: number; readonly days: number },
  chances: Chances = everybodyComes,
): LikelyFinish {
  const { finish, onTime } = rehearse(day, drawn.plan, chances, { seed, days });
  const at = (minutes: number): string => clockAt(day, Math.ceil(minutes / day.minutesPerTick));
  return {
    half: at(finish.median),
    nineInTen: at(finish.ninthDecile),
    closes: clockAt(day, day.closes),
    // Rounded down: never more certain than it was.
    onTimeInHundred: Math.floor(onTime * 100),
    withoutPlace: lost.length + stuck.length,
  };
}
