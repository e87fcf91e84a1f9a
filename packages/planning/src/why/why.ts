/**
 * Why this time, and what would have to give for an earlier one: the referee is asked about the same visit earlier, with
 * everybody else where they are. Its sentences are the answer.
 */
import type { Day, Tick } from '../day/day.ts';
import { clockAt } from '../day/time-words.ts';
import type { Plan, VisitTimes } from '../plan/plan.ts';
import { leastInTheWay } from '../referee/least-in-the-way.ts';
import type { Sentence } from '../referee/sentence.ts';

export type Earlier = {
  readonly arrives: Tick;
  /** What would be broken then; empty when nothing is in the way. */
  readonly broken: readonly Sentence[];
  /** Whose times would have to give, and what more there would have to be. */
  readonly wouldHaveToGive: readonly string[];
};

export type Why = {
  readonly visit: number;
  readonly arrives: Tick;
  /** The headline: the nearest earlier time and what is in its way. */
  readonly says: string;
  /** Every earlier arrival the person could make, nearest first. */
  readonly earlier: readonly Earlier[];
};

const earlierBy = (times: VisitTimes, ticks: number): VisitTimes => ({
  ...times,
  arrives: times.arrives - ticks,
  starts: times.starts.map((start) => start - ticks),
  preparation: times.preparation === null ? null : times.preparation - ticks,
  secondCheck: times.secondCheck === null ? null : times.secondCheck - ticks,
});

const more: Partial<Record<Sentence['rule'], string>> = {
  nurses: 'one more nurse',
  chairs: 'one more chair',
  'watch places': 'one more watch place',
  preparation: 'one more person to prepare',
  'second check': 'one more second checker',
};

function gives(day: Day, visit: number, sentence: Sentence): string {
  const others = sentence.visits.filter((other) => other !== visit).map((other) => day.visits[other]?.name ?? '');
  const needed = more[sentence.rule];
  if (needed === undefined) return sentence.says;
  const at = sentence.from === null ? '' : ` at ${clockAt(day, sentence.from)}`;
  return others.length === 0 ? `${needed}${at}` : `${others.join(' or ')} at another time, or ${needed}${at}`;
}

/** Asks about every earlier arrival; null when the visit has no times. */
export function whyThisTime(day: Day, plan: Plan, visit: number): Why | null {
  const own = day.visits[visit];
  const times = plan[visit];
  if (own === undefined || times === null || times === undefined) return null;
  const { arrives } = times;
  const result = (says: string, earlier: readonly Earlier[]): Why => ({ visit, arrives, says, earlier });
  if (own.arrival === 'transport')
    return result(`${own.name} is brought at ${clockAt(day, own.earliest)}; that time is not ours to choose.`, []);
  if (arrives <= own.earliest)
    return result(`${own.name} cannot be here before ${clockAt(day, own.earliest)}: there is no earlier time.`, []);
  const earlier = Array.from({ length: arrives - own.earliest }, (_, index): Earlier => {
    const { said } = leastInTheWay(day, plan, visit, earlierBy(times, index + 1));
    const wouldHaveToGive = [...new Set(said.map((sentence) => gives(day, visit, sentence)))];
    return { arrives: arrives - index - 1, broken: said, wouldHaveToGive };
  });
  const free = earlier.find((option) => option.broken.length === 0);
  if (free !== undefined)
    return result(`Nothing is in the way of ${own.name} at ${clockAt(day, free.arrives)}.`, earlier);
  const nearest = earlier[0];
  const first = nearest?.broken[0];
  return result(
    `${own.name} could not come at ${clockAt(day, arrives - 1)} instead. ${first?.says ?? ''}`.trimEnd(),
    earlier,
  );
}
