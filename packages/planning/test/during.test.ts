// The rest of a day planned from what has really happened: begun stays, nobody is moved without a reason, the referee agrees.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DayChanges,
  type Day,
  type Plan,
  type RestOfDay,
  type SoFar,
  broken,
  clockAt,
  leavesAt,
  likelyFinish,
  noChances,
  noDayChanges,
  planDay,
  proposeRest,
  restOfDay,
  stillToCome,
  toTell,
} from '../src/index.ts';
import { sharedDay } from './oracle/days.ts';

const limit = { iterations: 100 };

/** A plan lived to the minute until the beginning of a tick, as entries would tell it: only what is done or runs is known. */
function livedUntil(day: Day, plan: Plan, tick: number): SoFar[] {
  return day.visits.map(({ name, ...visit }, index): SoFar => {
    const times = plan[index];
    if (times === null || times === undefined || times.arrives >= tick) return { name, state: 'expected', done: [] };
    const whole = { name, ...visit };
    if (leavesAt(whole, times) <= tick) return { name, state: 'gone', done: [] };
    const ended = (step: number): boolean => times.starts[step]! + visit.steps[step]!.ticks <= tick;
    const running = visit.steps.findIndex(
      (step, at) => step.nurse !== 'whole' && times.starts[at]! < tick && !ended(at),
    );
    const by = (at: number | null, ticks: number): string | undefined =>
      at !== null && at + ticks <= tick ? clockAt(day, at + ticks) : undefined;
    return {
      name,
      state: 'here',
      arrived: clockAt(day, times.arrives),
      done: visit.steps.filter((_, at) => ended(at)).map((step) => step.name),
      ...(running < 0
        ? {}
        : {
            runs: {
              step: visit.steps[running]!.name,
              since: clockAt(day, times.starts[running]!),
              until: clockAt(day, times.starts[running]! + visit.steps[running]!.ticks),
              paused: false,
            },
          }),
      prepared: by(times.preparation, visit.dose?.preparationTicks ?? 0),
      checked: by(times.secondCheck, visit.dose?.secondCheckTicks ?? 0),
    };
  });
}

const toldBy = (day: Day, plan: Plan): Map<string, string> =>
  new Map(day.visits.flatMap(({ name }, at) => (plan[at] == null ? [] : [[name, clockAt(day, plan[at].arrives)]])));

type Lived = { readonly id: string; readonly day: Day; readonly plan: Plan };
const lived = ['A12-1', 'A16-2', 'A24-1', 'B16-1', 'B24-2'].map((id): Lived => {
  const { day } = sharedDay(id);
  return { id, day, plan: planDay(day, { seed: 1, limit: { iterations: 2_000 } }).plan };
});

function restAt({ day, plan }: Lived, tick: number, changes: DayChanges = noDayChanges): RestOfDay {
  const read = restOfDay(day, toldBy(day, plan), livedUntil(day, plan, tick), clockAt(day, tick), changes);
  if (!read.ok) throw new Error(read.says);
  return read.rest;
}

const anyMoment = fc.tuple(fc.nat({ max: 4 }), fc.integer({ min: 0, max: 60 }));
const anyChanges = fc.record({
  nurses: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
  chairs: fc.option(fc.integer({ min: 2, max: 6 }), { nil: undefined }),
  longer: fc.integer({ min: 0, max: 30 }),
});

/** A day somewhere in its middle, something changed, and the proposal for the rest of it. */
const anyRest = fc.tuple(anyMoment, anyChanges).map(([[which, tick], { longer, ...staff }]) => {
  const one = lived[which]!;
  const runsLonger = new Map(one.day.visits.map(({ name }) => [name, longer]));
  const rest = restAt(one, tick, { ...noDayChanges, ...staff, runsLonger });
  return { rest, plan: proposeRest(rest, { seed: 1, limit }).drawn.plan };
});

/** Who is under way now, with what. */
const underWay = (rest: RestOfDay): number[] =>
  rest.asTold.flatMap((times, at) =>
    rest.isHere[at] === true && times !== null && times.starts[0]! < rest.now ? [at] : [],
  );

describe('the rest of a day that has begun', () => {
  it('never moves what is under way, and begins nothing else before now', () => {
    fc.assert(
      fc.property(anyRest, ({ rest, plan }) => {
        const running = underWay(rest);
        expect(running.map((at) => plan[at]?.starts[0])).toEqual(running.map((at) => rest.asTold[at]?.starts[0]));
        const others = plan.flatMap((times, at) =>
          times === null ? [] : running.includes(at) ? times.starts.slice(1) : times.starts,
        );
        expect(others.filter((start) => start < rest.now)).toEqual([]);
      }),
      { seed: 61, numRuns: 50 },
    );
  });

  it('keeps every rule from now on, but for what is under way and cannot be helped', () => {
    fc.assert(
      fc.property(anyRest, ({ rest, plan }) => {
        const isRunning = new Set(underWay(rest));
        const said = stillToCome(broken(rest.day, plan), rest.now).filter(
          ({ rule, visits }) =>
            rule !== 'everyone is seen' &&
            // Who is here is finished, if late; that they should have gone is told.
            !(rule === 'window' && visits.every((at) => rest.isHere[at])) &&
            // Nobody can be sent out of a chair or away from a running infusion.
            !visits.every((at) => isRunning.has(at)) &&
            // A dose made before now may have stood too long: that is told, and nobody can unmake it.
            !(rule === 'dose' && visits.some((at) => (plan[at]?.preparation ?? rest.now) < rest.now)),
        );
        expect(said.map(({ says }) => says)).toEqual([]);
      }),
      { seed: 62, numRuns: 50 },
    );
  });

  it('tells nobody another time before anything has happened, and the one who is late when one is late', () => {
    for (const one of lived) {
      const first = restAt(one, 0);
      const soonest = Math.min(...one.plan.map((times) => times?.arrives ?? one.day.ticks));
      const expected = soonest > 0 ? [] : first.isLate.flatMap((late, at) => (late ? [at] : []));
      const { plan } = proposeRest(first, { seed: 1, limit }).drawn;
      const told = toTell(first, plan).filter(({ visit }) => first.isLate[visit] !== true);
      expect([one.id, told.length > 0 && expected.length === 0]).toEqual([one.id, false]);
    }
  });

  it('finds who is late from their time and the entries, and says until when they are not expected', () => {
    const one = lived[2]!;
    const tick = 30;
    const late = one.plan.findIndex(
      (times, at) => (times?.arrives ?? 0) > tick && one.day.visits[at]?.arrival === 'free',
    );
    const { name } = one.day.visits[late]!;
    const comes = clockAt(one.day, one.plan[late]!.arrives + 6);
    const rest = restAt(one, tick, { ...noDayChanges, comes: new Map([[name, comes]]) });
    const at = rest.day.visits.findIndex((visit) => visit.name === name);
    // As many tries as the screen makes.
    const { plan } = proposeRest(rest, { seed: 1, limit: { iterations: 3_000 } }).drawn;
    const told = toTell(rest, plan);
    expect(told.map(({ visit }) => visit)).toContain(at);
    expect(told.find(({ visit }) => visit === at)?.because).toContain(`not expected before ${comes}`);
    expect(told.length).toBeLessThanOrEqual(2);
  });

  it('says who has no place any more and what would be enough, when so much is lost that somebody is', () => {
    const one = lived[4]!;
    const rest = restAt(one, 30, { ...noDayChanges, nurses: 1 });
    const { lost, enough } = proposeRest(rest, { seed: 1, limit });
    expect(lost.length).toBeGreaterThan(0);
    expect(lost.filter((at) => rest.isHere[at])).toEqual([]);
    for (const says of enough) expect(says).toMatch(/^One more .* from \d\d:\d\d on\.$/);
  });

  it('gives the same proposal from the same seed, byte for byte', () => {
    const rest = restAt(lived[3]!, 24, { ...noDayChanges, chairs: 3 });
    const once = (): string => JSON.stringify(proposeRest(rest, { seed: 5, limit }));
    expect(once()).toBe(once());
  });

  it('is likely over no sooner than the longest way of anybody still there, and half the days before nine in ten', () => {
    fc.assert(
      fc.property(anyRest, ({ rest }) => {
        const { drawn } = proposeRest(rest, { seed: 1, limit });
        const finish = likelyFinish(rest, { drawn, lost: [], stuck: [] }, { seed: 1, days: 100 }, noChances);
        // Nothing goes otherwise: nobody leaves before the sum of their own steps from the time they come, by hand.
        const needed = Math.max(
          0,
          ...rest.day.visits.flatMap(({ steps }, at) => {
            const times = drawn.plan[at];
            return times == null ? [] : [times.arrives + steps.reduce((sum, { ticks }) => sum + ticks, 0)];
          }),
        );
        expect(finish.half >= clockAt(rest.day, needed)).toBe(true);
        expect(finish.nineInTen >= finish.half).toBe(true);
      }),
    );
  });

  it('is likely over later where steps vary than where nothing goes otherwise', () => {
    for (const one of lived) {
      const rest = restAt(one, 20);
      const proposal = proposeRest(rest, { seed: 1, limit });
      const [varied, exact] = [undefined, noChances].map((chances) =>
        likelyFinish(rest, proposal, { seed: 1, days: 500 }, chances),
      );
      expect([one.id, varied!.nineInTen > exact!.nineInTen]).toEqual([one.id, true]);
    }
  });

  it('has nothing to plan once everybody has gone or the day is over', () => {
    const { day, plan } = lived[0]!;
    const gone = day.visits.map(({ name }): SoFar => ({ name, state: 'gone', done: [] }));
    expect(restOfDay(day, toldBy(day, plan), gone, '10:00', noDayChanges)).toMatchObject({ ok: false });
    expect(restOfDay(day, toldBy(day, plan), [], '18:00', noDayChanges)).toMatchObject({ ok: false });
  });
});
