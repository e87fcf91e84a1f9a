import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, type Plan, type VisitTimes, broken, planDay, replan } from '../src/index.ts';
import { all, anyDay, sharedDay, shortVisit, tinyDay } from './oracle/days.ts';

type Event =
  | { readonly kind: 'late'; readonly visit: number; readonly by: number }
  | { readonly kind: 'long infusion'; readonly visit: number; readonly by: number }
  | { readonly kind: 'lost'; readonly what: 'chairs' | 'nurses'; readonly at: number };

const anyEvent: fc.Arbitrary<Event> = fc.oneof(
  fc.record({ kind: fc.constant('late' as const), visit: fc.nat(), by: fc.integer({ min: 1, max: 12 }) }),
  fc.record({ kind: fc.constant('long infusion' as const), visit: fc.nat(), by: fc.integer({ min: 1, max: 6 }) }),
  fc.record({
    kind: fc.constant('lost' as const),
    what: fc.constantFrom('chairs' as const, 'nurses' as const),
    at: fc.constant(0),
  }),
);

/** The day as it is known once something has happened at `now`. */
function after(day: Day, plan: Plan, now: number, event: Event): Day {
  if (event.kind === 'lost')
    return {
      ...day,
      [event.what]: day[event.what].map((count, tick) => (tick >= now ? Math.max(0, count - 1) : count)),
    };
  const visits = day.visits.map((visit, index) => {
    const times = plan[index];
    if (index !== event.visit % day.visits.length || times === null || times === undefined) return visit;
    if (event.kind === 'late') return times.arrives >= now ? { ...visit, earliest: times.arrives + event.by } : visit;
    const infusion = visit.steps.findIndex((step) => step.nurse === 'shared');
    const [first, ...rest] = visit.steps.map((step, at) =>
      at === infusion ? { ...step, ticks: step.ticks + event.by } : step,
    );
    return first === undefined || infusion < 0 || (times.starts[infusion + 1] ?? 0) < now
      ? visit
      : { ...visit, steps: [first, ...rest] as const };
  });
  return { ...day, visits };
}

const hasBegun = (day: Day, index: number, times: VisitTimes | null | undefined, now: number): times is VisitTimes =>
  times !== null && times !== undefined && times.arrives < now && times.arrives >= (day.visits[index]?.earliest ?? 0);

const staffFor = (ticks: number) => ({
  nurses: all(ticks, 2),
  watchPlaces: all(ticks, 1),
  preparers: all(ticks, 1),
  checkers: all(ticks, 1),
});

const stop = { iterations: 150 };

describe('planning the rest of the day again', () => {
  it('never moves what has begun, and begins nothing in the past', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 100 }), anyEvent, fc.nat(), (day, now, event, seed) => {
        const { plan } = planDay(day, { seed, limit: stop });
        const changed = after(day, plan, now, event);
        const again = replan(changed, plan, { now, seed, limit: stop });
        plan.forEach((before, index) => {
          const then = again.plan[index];
          if (then === null || then === undefined) return;
          const begun = hasBegun(changed, index, before, now);
          const moments = (times: VisitTimes): number[] => [
            ...times.starts,
            times.preparation ?? now,
            times.secondCheck ?? now,
          ];
          moments(then).forEach((moment, at) => {
            const old = begun ? moments(before)[at] : undefined;
            expect(old !== undefined && old < now ? moment : Math.max(moment, now)).toBe(
              old !== undefined && old < now ? old : moment,
            );
          });
        });
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  it('is allowed, but for what has begun and cannot be helped', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 100 }), anyEvent, fc.nat(), (day, now, event, seed) => {
        const { plan } = planDay(day, { seed, limit: stop });
        const changed = after(day, plan, now, event);
        const again = replan(changed, plan, { now, seed, limit: stop });
        const onlyBegun = again.plan.map((times, index) => (hasBegun(changed, index, plan[index], now) ? times : null));
        const excused = new Set(broken(changed, onlyBegun).map(({ rule, from }) => `${rule} ${from}`));
        const said = broken(changed, again.plan).filter(
          ({ rule, from }) => rule !== 'everyone is seen' && !excused.has(`${rule} ${from}`),
        );
        expect(said.map(({ says }) => says)).toEqual([]);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('gives nobody the chair of who sits in it, when a chair is lost', () => {
    const visits = [
      shortVisit('Mrs Ito'),
      shortVisit('Mr Okafor', { earliest: 3, arrival: 'transport' }),
      shortVisit('Mr Vale'),
    ];
    const day = tinyDay(visits, { ticks: 30, closes: 30, ...staffFor(30) });
    const roomy = { ...day, visits: visits.map((visit) => ({ ...visit, latest: 30 })), chairs: all(30, 2) };
    const { plan } = planDay(roomy, { seed: 1, limit: { iterations: 200 } });
    for (let now = 1; now < 12; now += 1) {
      const changed = { ...roomy, chairs: all(30, 2).map((count, tick) => (tick >= now ? 1 : count)) };
      const sitting = plan.filter((times) => times !== null && times.starts[1]! < now && times.starts[3]! + 1 > now);
      if (sitting.length > 1) continue;
      const again = replan(changed, plan, { now, seed: 1, limit: { iterations: 500 } });
      expect([now, broken(changed, again.plan).map(({ says }) => says)]).toEqual([now, []]);
    }
  });

  it('changes nothing when nothing has happened', () => {
    for (const id of ['A24-1', 'B24-2']) {
      const { day } = sharedDay(id);
      const { plan } = planDay(day, { seed: 1, limit: { iterations: 2_000 } });
      for (const now of [0, 30, 60, 101]) {
        const again = replan(day, plan, { now, seed: 1, limit: { iterations: 0 } });
        expect(again.plan).toEqual(plan);
        expect(again.moved).toEqual([]);
      }
    }
  });

  it('tells one person another time when one person is late', () => {
    const { day } = sharedDay('A48-1');
    const { plan } = planDay(day, { seed: 1, limit: { iterations: 2_000 } });
    // Somebody still to come whose own window holds the visit half an hour later too.
    const late = plan.findIndex(
      (times, at) => times !== null && times.arrives >= 20 && day.visits[at]?.latest === day.ticks,
    );
    expect(late).toBeGreaterThanOrEqual(0);
    const visits = day.visits.map((visit, index) =>
      index === late ? { ...visit, earliest: (plan[late]?.arrives ?? 0) + 6 } : visit,
    );
    const again = replan({ ...day, visits }, plan, { now: 20, seed: 1, limit: { iterations: 300 } });
    expect(again.lost).toEqual([]);
    expect(again.moved.map(({ visit }) => visit)).toEqual([late]);
    expect(broken({ ...day, visits }, again.plan)).toEqual([]);
  });

  it('finishes a long infusion and tells as few as it can', () => {
    const { day } = sharedDay('A24-1');
    const { plan } = planDay(day, { seed: 1, limit: { iterations: 2_000 } });
    const running = plan.findIndex(
      (times) => times !== null && (times.starts[3] ?? 0) < 20 && (times.starts[4] ?? 0) >= 20,
    );
    const visits = day.visits.map((visit, index) => {
      if (index !== running) return visit;
      const [first, ...rest] = visit.steps.map((step) =>
        step.nurse === 'shared' ? { ...step, ticks: step.ticks + 6 } : step,
      );
      return first === undefined ? visit : { ...visit, steps: [first, ...rest] as const };
    });
    const again = replan({ ...day, visits }, plan, { now: 20, seed: 1, limit: { iterations: 300 } });
    expect([again.lost, again.stuck]).toEqual([[], []]);
    expect(again.plan[running]?.starts.slice(0, 4)).toEqual(plan[running]?.starts.slice(0, 4));
    expect(again.moved.length).toBeLessThanOrEqual(2);
  });
});
