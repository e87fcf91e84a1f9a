// A day drawn by hand: moved on a board, locked, improved. What is allowed is asked of the referee alone.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Day,
  type Drawn,
  type Plan,
  broken,
  brokenInDrawing,
  compareObjectives,
  drawnFrom,
  holdsChair,
  holdsTime,
  improveDrawn,
  loadsOf,
  lockNames,
  moveInDrawing,
  objectiveOf,
  planDay,
} from '../src/index.ts';
import { anyDay, sharedDay } from './oracle/days.ts';

const few = { iterations: 100 };

const isSeen = (plan: Plan): boolean => !plan.includes(null);

/** A drawing in which everybody has been moved by hand somewhere, and some are locked. */
const anyDrawing = fc
  .tuple(
    anyDay,
    fc.nat({ max: 1_000 }),
    fc.array(
      fc.record({ visit: fc.nat(), ticks: fc.integer({ min: -9, max: 9 }), down: fc.integer({ min: -2, max: 2 }) }),
      {
        maxLength: 6,
      },
    ),
    fc.array(fc.option(fc.constantFrom(...lockNames), { nil: undefined }), { minLength: 48, maxLength: 48 }),
  )
  .map(([day, seed, moves, locks]): { day: Day; drawn: Drawn } => {
    let drawn = drawnFrom(day, planDay(day, { seed, limit: { iterations: 0 } }).plan);
    for (const { visit, ticks, down } of moves)
      drawn = moveInDrawing(day, drawn, visit % day.visits.length, ticks, down);
    return { day, drawn: { ...drawn, locks: day.visits.map((_, visit) => locks[visit]) } };
  });

describe('a day improved from a drawing', () => {
  it('keeps every lock and every rule, whatever was drawn; else it says why not and draws nothing', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(anyDrawing, fc.nat({ max: 1_000 }), ({ day, drawn }, seed) => {
        const answer = improveDrawn(day, drawn, { seed, limit: few });
        kinds.add(answer.kind);
        if (answer.kind !== 'improved') return;
        const { plan, chairs } = answer.drawn;
        const held = (of: typeof holdsTime): number[] =>
          [...day.visits.keys()].filter((visit) => drawn.plan[visit] !== null && of(drawn.locks[visit]));
        expect(held(holdsTime).map((visit) => plan[visit])).toEqual(held(holdsTime).map((visit) => drawn.plan[visit]));
        expect(held(holdsChair).map((visit) => chairs[visit])).toEqual(
          held(holdsChair).map((visit) => drawn.chairs[visit]),
        );
        expect(isSeen(plan)).toBe(true);
        expect(broken(day, plan)).toEqual([]);
        const isAllowed = brokenInDrawing(day, drawn).length === 0;
        const worse = compareObjectives(answer.objective, objectiveOf(day, drawn.plan));
        expect(isAllowed ? worse : 0).toBeLessThanOrEqual(0);
      }),
      { seed: 31, numRuns: 60 },
    );
    expect([...kinds].toSorted()).toEqual(['improved', 'locks break rules', 'no place']);
  });

  it('gives the same drawing from the same seed, byte for byte', () => {
    fc.assert(
      fc.property(anyDrawing, fc.nat({ max: 50 }), ({ day, drawn }, seed) => {
        const once = (): string => JSON.stringify(improveDrawn(day, drawn, { seed, limit: few }));
        expect(once()).toBe(once());
      }),
      { seed: 32, numRuns: 10 },
    );
  });

  it('takes somebody dragged on top of another out of the way, and leaves the locked one', () => {
    const { day } = sharedDay('A08-1');
    const start = drawnFrom(day, planDay(day, { seed: 1, limit: { iterations: 2_000 } }).plan);
    const [first, second] = [...start.plan.keys()].toSorted(
      (a, b) => (start.plan[a]?.arrives ?? 0) - (start.plan[b]?.arrives ?? 0),
    );
    const onTop = moveInDrawing(
      day,
      start,
      second!,
      (start.plan[first!]?.arrives ?? 0) - (start.plan[second!]?.arrives ?? 0),
      (start.chairs[first!] ?? 1) - (start.chairs[second!] ?? 1),
    );
    const drawn = { ...onTop, locks: onTop.locks.with(second!, 'time and chair') };
    expect(brokenInDrawing(day, drawn)).not.toEqual([]);
    const answer = improveDrawn(day, drawn, { seed: 1, limit: { iterations: 2_000 } });
    if (answer.kind !== 'improved') throw new Error(answer.kind);
    expect(answer.drawn.plan[second!]).toEqual(drawn.plan[second!]);
    expect(answer.drawn.chairs[second!]).toBe(drawn.chairs[second!]);
    expect(brokenInDrawing(day, answer.drawn)).toEqual([]);
  });
});

describe('a visit moved on the board', () => {
  const { day } = sharedDay('A12-1');
  const drawn = drawnFrom(day, planDay(day, { seed: 1, limit: { iterations: 4_000 } }).plan);

  it('stays where it is while it is locked', () => {
    const visit = 3;
    const locked = { ...drawn, locks: drawn.locks.with(visit, 'time and chair') };
    expect(moveInDrawing(day, locked, visit, 2, 1)).toBe(locked);
    const inTime = { ...drawn, locks: drawn.locks.with(visit, 'time') };
    expect(moveInDrawing(day, inTime, visit, 2, 0)).toBe(inTime);
  });

  it('into a chair that is taken is objected to by the number of the chair', () => {
    const toFirst = { ...drawn, chairs: drawn.chairs.map((chair) => (chair === 2 ? 1 : chair)) };
    const said = brokenInDrawing(day, toFirst).map(({ says }) => says);
    expect(brokenInDrawing(day, drawn)).toEqual([]);
    expect(said.some((says) => /chair 1 is still visit \d+’s until \d\d:\d\d/.test(says))).toBe(true);
  });

  it('has a rule broken exactly where the rows of staff are over what there is', () => {
    fc.assert(
      fc.property(anyDrawing, ({ day: any, drawn: some }) => {
        const said = new Set(broken(any, some.plan).map(({ rule }) => rule));
        const rules = {
          nurses: 'nurses',
          preparers: 'preparation',
          checkers: 'second check',
          watchPlaces: 'watch places',
        } as const;
        for (const { of, needed, there } of loadsOf(any, some.plan)) {
          const isOver = needed.some((count, tick) => count > (there[tick] ?? 0));
          expect([of, isOver]).toEqual([of, said.has(rules[of])]);
        }
      }),
      { seed: 33, numRuns: 80 },
    );
  });
});
