/** A plan counts chairs; a board names them. Nobody sits down in a chair that somebody else still has, or that is not there. */
import type { Day } from '../../day/day.ts';
import { clockAt } from '../../day/time-words.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Sentence } from '../sentence.ts';
import { chairOf } from './places-and-hands.ts';
import { completeVisits } from './times-are-complete.ts';

/** `chairs` are the numbers given, by visit, from 1; undefined for who needs none. */
export function oneToAChair(day: Day, plan: Plan, chairs: readonly (number | undefined)[]): readonly Sentence[] {
  const most = Math.max(0, ...day.chairs);
  const held = completeVisits(day, plan)
    .flatMap((complete) => chairOf(complete).map((need) => ({ ...need, chair: chairs[complete.index] })))
    .toSorted((a, b) => a.from - b.from || a.visit - b.visit);
  return held.flatMap((own, index): Sentence[] => {
    const { chair, visit, from, until, what } = own;
    const at = { rule: 'one to a chair' as const, from, until };
    if (chair === undefined) return [{ ...at, visits: [visit], says: `${clockAt(day, from)}: ${what} has no chair.` }];
    if (chair > most)
      return [
        { ...at, visits: [visit], says: `${clockAt(day, from)}: ${what} has chair ${chair}, and there are ${most}.` },
      ];
    return held.slice(0, index).flatMap((other): Sentence[] =>
      other.chair !== chair || other.until <= from
        ? []
        : [
            {
              ...at,
              until: Math.min(until, other.until),
              visits: [other.visit, visit],
              says: `${clockAt(day, from)}: chair ${chair} is still ${other.what}’s until ${clockAt(day, other.until)}, and ${what} would sit down in it.`,
            },
          ],
    );
  });
}
