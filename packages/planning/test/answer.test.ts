import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, answerDay, broken, planAtOnce, planDay, whyThisTime } from '../src/index.ts';
import { all, anyDay, sharedDay, shortVisit, tinyDay } from './oracle/days.ts';

const limits = { search: { iterations: 600 }, contradictions: 2_000, remedy: { iterations: 200 } };
const answer = (day: Day) => answerDay(day, 1, limits);
const reasonsFor = (day: Day): string[] => {
  const given = answer(day);
  return given.kind === 'impossible' ? given.reasons.map(({ says }) => says) : [];
};
const remediesFor = (day: Day): string[] => {
  const given = answer(day);
  return given.kind === 'impossible' ? given.remedies.map(({ says }) => says) : [];
};

describe('an impossible day is answered with what is impossible', () => {
  it('a window that cannot hold the visit', () => {
    const day = tinyDay([shortVisit('Mrs Ito', { earliest: 2, latest: 7 })]);
    expect(reasonsFor(day)[0]).toBe(
      'Mrs Ito needs 30 minutes and has 25 minutes between 08:40 and 09:05: 5 minutes too few.',
    );
    expect(remediesFor(day)).toContain('Mrs Ito may leave at 09:10: 5 minutes later.');
  });

  it('a day shorter than the visit, and nothing about hours in which nobody works', () => {
    expect(reasonsFor(tinyDay([shortVisit('Mrs Ito')], { ticks: 4, closes: 4 }))).toEqual([
      'Mrs Ito needs 30 minutes and has 20 minutes between 08:30 and 08:50: 10 minutes too few.',
    ]);
  });

  it('no second checker', () => {
    const day = tinyDay([shortVisit('Mrs Ito')], { checkers: all(12, 0) });
    expect(reasonsFor(day)[0]).toBe(
      'Mrs Ito cannot be seen between 08:30 and 09:30, even with nobody else there: no second checker at the right time.',
    );
    expect(remediesFor(day)[0]).toBe('One more second checker all day.');
  });

  it('more work than minutes', () => {
    const names = ['Mrs Ito', 'Mr Okafor', 'Miss Lund', 'Mr Vale'];
    const day = tinyDay(
      names.map((name) => shortVisit(name)),
      { chairs: all(12, 4), preparers: all(12, 4), checkers: all(12, 4) },
    );
    expect(reasonsFor(day)).toEqual([
      'Between 08:30 and 09:30 at least 100 minutes of nurses’ work are needed, and there are 60.',
    ]);
    expect(remediesFor(day)).toContain('One more nurse all day.');
  });

  it('everyone could be seen alone, but not together: proven', () => {
    const two = [
      shortVisit('Mrs Ito', { latest: 7, arrival: 'transport' }),
      shortVisit('Mr Okafor', { latest: 7, arrival: 'transport' }),
    ];
    const given = answer(tinyDay(two));
    expect(given).toMatchObject({ kind: 'impossible', isProven: true });
  });

  it('each remedy makes the day possible, and a possible day gets a plan the referee lets pass', () => {
    let impossible = 0;
    fc.assert(
      fc.property(anyDay, (day) => {
        const given = answer(day);
        const planned = given.kind === 'planned' ? broken(day, given.plan) : [];
        const reasons = given.kind === 'impossible' ? given.reasons : [];
        const remedies = given.kind === 'impossible' ? given.remedies : [];
        impossible += reasons.length > 0 ? 1 : 0;
        expect(planned).toEqual([]);
        expect(remedies.length > 0).toBe(given.kind === 'impossible');
        expect(reasons.length > 0).toBe(given.kind === 'impossible');
        // What is proven impossible must not be possible by another search.
        const another = planDay(day, { seed: 9, limit: { iterations: 400 } }).objective.unseen;
        expect(given.kind === 'impossible' && given.isProven ? another : 1).toBeGreaterThan(0);
        for (const remedy of remedies)
          expect(planDay(remedy.day, { seed: 1, limit: limits.remedy }).objective.unseen).toBe(0);
      }),
      { seed: 51, numRuns: 60 },
    );
    expect(impossible).toBeGreaterThan(10);
  });
});

describe('why this time', () => {
  const two = tinyDay([shortVisit('Mrs Ito'), shortVisit('Mr Okafor')]);
  const { plan } = planAtOnce(two);

  it('names who is in the way, and what would have to give', () => {
    const late = plan[0]?.arrives === 0 ? 1 : 0;
    const why = whyThisTime(two, plan, late);
    expect(why?.says).toMatch(/^M\w+ \w+ could not come at \d\d:\d\d instead\. \d\d:\d\d: two people need/);
    expect(why?.earlier[0]?.wouldHaveToGive.join(' ')).toMatch(/at another time, or one more/);
  });

  it('says so when there is no earlier time, or it is not ours to choose', () => {
    const first = plan[0]?.arrives === 0 ? 0 : 1;
    expect(whyThisTime(two, plan, first)?.says).toMatch(/cannot be here before 08:30: there is no earlier time\.$/);
    const brought = tinyDay([shortVisit('Mrs Ito', { arrival: 'transport' })]);
    expect(whyThisTime(brought, planAtOnce(brought).plan, 0)?.says).toBe(
      'Mrs Ito is brought at 08:30; that time is not ours to choose.',
    );
    expect(whyThisTime(two, [null, null], 0)).toBeNull();
  });

  it('never calls a time free at which the referee would object', () => {
    const { day } = sharedDay('A12-1');
    const planned = planDay(day, { seed: 1, limit: { iterations: 500 } }).plan;
    for (const [visit] of day.visits.entries()) {
      const why = whyThisTime(day, planned, visit);
      for (const { arrives, broken: said } of why?.earlier.slice(0, 5) ?? []) {
        const tied = day.visits.map((own, index) =>
          index === visit ? { ...own, earliest: arrives, arrival: 'transport' as const, mayWait: false } : own,
        );
        const locked = planned.map((_, index) => index).filter((index) => index !== visit);
        const found = planDay(
          { ...day, visits: tied },
          { seed: 1, limit: { iterations: 0 }, from: planned.with(visit, null), locked },
        );
        expect(said.length === 0).toBe(found.objective.unseen === 0);
      }
    }
  });
});
