// A plan held against how often it is to end on time: the share is that of a rehearsal made anew, the rules are the referee's.
import { describe, expect, it } from 'vitest';
import {
  type Day,
  type DayAnswer,
  type Plan,
  answerDay,
  broken,
  heldToTime,
  rehearse,
  usualChances,
} from '../src/index.ts';
import { sharedDay } from './oracle/days.ts';

const limits = { search: { iterations: 1_000 }, contradictions: 100, remedy: { iterations: 50 } };
const effort = { others: 4, search: { iterations: 1_000 }, rehearse: { seed: 7, days: 200 } };
const { day: long } = sharedDay('A16-1');
const planned = (day: Day): Extract<DayAnswer, { kind: 'planned' }> => {
  const answer = answerDay(day, 1, limits);
  if (answer.kind !== 'planned') throw new Error('everyone can be seen');
  return answer;
};
const onTimeOf = (day: Day, { plan }: { readonly plan: Plan }): number =>
  rehearse(day, plan, usualChances, effort.rehearse).onTime;

describe('a plan and how often it is to end on time', () => {
  const first = planned(long);
  /** Closes soon after the best plan's last leaving, so that chance decides. */
  const tight = (onTimePercent: number | undefined): Day => ({
    ...long,
    closes: first.objective.finish + 6,
    onTimePercent,
  });

  it('is not rehearsed where nothing is asked', () => {
    expect(heldToTime(tight(undefined), first, usualChances, effort)).toBeUndefined();
  });

  it('stays the best plan where that ends on time often enough', () => {
    const day = { ...tight(50), closes: long.ticks };
    const held = heldToTime(day, planned(day), usualChances, effort)!;
    expect(held.tried).toBe(1);
    expect(held.answer.plan).toEqual(planned(day).plan);
    expect(held.says).toMatch(/^Finishes by \d\d:\d\d in \d+ of 100 rehearsals; at least 50 are asked for\.$/);
  });

  it('is otherwise one nearly as good that ends on time no less often, keeps every rule, and the sentence says the share', () => {
    const day = tight(99);
    const best = planned(day);
    const held = heldToTime(day, best, usualChances, effort)!;
    const { answer } = held;
    expect(broken(day, answer.plan)).toEqual([]);
    expect(answer.objective.wait).toBeLessThanOrEqual(best.objective.wait + 2);
    expect(answer.objective.finish).toBeLessThanOrEqual(best.objective.finish + 2);
    expect(held.onTime).toBe(onTimeOf(day, answer));
    expect(held.onTime).toBeGreaterThanOrEqual(onTimeOf(day, best));
    expect(held.says).toContain(`in ${Math.floor(held.onTime * 100)} of 100 rehearsals; at least 99 are asked for.`);
  });
});
