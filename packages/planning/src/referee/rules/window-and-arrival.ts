/** Nobody comes before they can or leaves after they must; who is brought arrives when the transport does. */
import { clockAt, minutesOf } from '../../day/time-words.ts';
import type { Rule, Sentence } from '../sentence.ts';
import { completeVisits, stepsOf } from './times-are-complete.ts';

export const window: Rule = (day, plan) =>
  completeVisits(day, plan).flatMap((complete): Sentence[] => {
    const { visit, index, times } = complete;
    const leaves = stepsOf(complete).at(-1)?.until ?? 0;
    const latest = Math.min(visit.latest, day.ticks);
    const said: Sentence[] = [];
    const say = (from: number, until: number, says: string): void => {
      said.push({ rule: 'window', from, until, visits: [index], says });
    };
    if (times.arrives < visit.earliest)
      say(
        times.arrives,
        visit.earliest,
        `${clockAt(day, times.arrives)}: ${visit.name} cannot be here before ${clockAt(day, visit.earliest)}.`,
      );
    if (leaves > latest)
      say(
        latest,
        leaves,
        `${clockAt(day, leaves)}: ${visit.name} would leave then and must have left by ${clockAt(day, latest)}.`,
      );
    return said;
  });

export const arrival: Rule = (day, plan) =>
  completeVisits(day, plan).flatMap(({ visit, index, times }): Sentence[] => {
    const first = times.starts[0] ?? 0;
    const at = { rule: 'arrival' as const, from: times.arrives, until: first, visits: [index] };
    if (visit.arrival === 'transport' && times.arrives !== visit.earliest)
      return [
        { ...at, says: `${visit.name} is brought at ${clockAt(day, visit.earliest)} and cannot be told another time.` },
      ];
    if (visit.arrival === 'free' && times.arrives !== first)
      return [
        {
          ...at,
          says: `${visit.name} is told ${clockAt(day, times.arrives)}, but the first step is planned for ${clockAt(day, first)}.`,
        },
      ];
    return [];
  });

export const nobodyWaitsWhoMustNot: Rule = (day, plan) =>
  completeVisits(day, plan).flatMap((complete): Sentence[] => {
    const { visit, index, times } = complete;
    if (visit.mayWait) return [];
    const steps = stepsOf(complete);
    const until = steps.at(-1)?.until ?? 0;
    const wait = until - times.arrives - steps.reduce((sum, step) => sum + step.until - step.from, 0);
    if (wait <= 0) return [];
    const says = `${clockAt(day, times.arrives)}: ${visit.name} must not be kept waiting and would wait ${minutesOf(day, wait)}.`;
    return [{ rule: 'nobody waits who must not', from: times.arrives, until, visits: [index], says }];
  });
