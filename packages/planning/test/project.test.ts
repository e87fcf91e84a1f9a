import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Project, brokenIn, lengthOf, readProject, scheduleProject } from '../src/index.ts';

/** A few tasks with two resources; a task may come before any later one. */
const anyProject = (most: number): fc.Arbitrary<Project> =>
  fc
    .record({
      capacity: fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 4 })),
      tasks: fc.array(
        fc.record({
          length: fc.integer({ min: 0, max: 4 }),
          needs: fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })),
          after: fc.array(fc.nat({ max: most }), { maxLength: 2 }),
        }),
        { minLength: 1, maxLength: most },
      ),
    })
    .map(({ capacity, tasks }) => ({
      capacity,
      tasks: tasks.map(({ length, needs }, task) => ({
        length,
        needs,
        successors: tasks.flatMap(({ after }, other) => (other > task && after.includes(task) ? [other] : [])),
      })),
    }));

/** The shortest schedule by trying every moment for every task. Written for plainness, not speed. */
function shortest(project: Project): number {
  const { tasks, capacity } = project;
  const horizon = tasks.reduce((sum, { length }) => sum + length, 0);
  const used = capacity.map(() => new Int32Array(horizon + 1));
  const starts: number[] = [];
  let best = horizon;
  const place = (task: number, length: number): void => {
    if (length > best) return;
    const own = tasks[task];
    if (own === undefined) {
      best = Math.min(best, length);
      return;
    }
    const before = tasks.flatMap(({ successors, length: ticks }, other) =>
      successors.includes(task) ? [(starts[other] ?? 0) + ticks] : [],
    );
    for (let start = Math.max(0, ...before); start + own.length <= best; start += 1) {
      const add = (sign: 1 | -1): void =>
        own.needs.forEach((need, resource) => {
          for (let at = start; at < start + own.length; at += 1) used[resource]![at]! += sign * need;
        });
      add(1);
      const fits = capacity.every((units, resource) => used[resource]!.every((value) => value <= units));
      starts[task] = start;
      if (fits) place(task + 1, Math.max(length, start + own.length));
      add(-1);
    }
  };
  place(0, 0);
  return best;
}

const text = `file with basedata            : invented.bas
jobs (incl. supersource/sink ):  5
RESOURCES
  - renewable                 :  2   R
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     3       2    1
  3      1     4       2    0
  4      1     2       1    1
  5      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  R 2
    3    1
`;

describe('a project', () => {
  it('is read from the format of the library, and what is wrong with it is listed', () => {
    const read = readProject(text);
    expect(read).toEqual({
      ok: true,
      project: {
        capacity: [3, 1],
        tasks: [
          { length: 0, needs: [0, 0], successors: [1, 2] },
          { length: 3, needs: [2, 1], successors: [3] },
          { length: 4, needs: [2, 0], successors: [3] },
          { length: 2, needs: [1, 1], successors: [4] },
          { length: 0, needs: [0, 0], successors: [] },
        ],
      },
    });
    expect(readProject('')).toEqual({
      ok: false,
      problems: [
        'there is no line "jobs"',
        'there is no part "PRECEDENCE RELATIONS"',
        'there is no part "REQUESTS/DURATIONS"',
        'there is no part "RESOURCEAVAILABILITIES"',
      ],
    });
    expect(readProject(text.replace('    3    1\n', '    1    1\n'))).toEqual({
      ok: false,
      problems: ['task 2 needs more than there is', 'task 3 needs more than there is'],
    });
  });

  it('is scheduled so that nothing is broken, no shorter than the bound, the same from the same seed', () => {
    fc.assert(
      fc.property(anyProject(20), fc.nat(), (project, seed) => {
        const result = scheduleProject(project, seed, { iterations: 300 });
        expect(brokenIn(project, result.starts)).toEqual([]);
        expect(lengthOf(project, result.starts)).toBe(result.length);
        expect(result.length).toBeGreaterThanOrEqual(result.atLeast);
        expect(scheduleProject(project, seed, { iterations: 300 })).toEqual(result);
      }),
      { seed: 41, numRuns: 60 },
    );
  });

  it('is as short as can be when there are few tasks, by trying all', () => {
    fc.assert(
      fc.property(anyProject(6), (project) => {
        expect(scheduleProject(project, 1, { iterations: 2_000 }).length).toBe(shortest(project));
      }),
      { seed: 42, numRuns: 120 },
    );
  });

  it('with many resources, or with large ones, keeps to every one of them', () => {
    const many: Project = {
      capacity: [2, 2, 2, 2, 1],
      tasks: [0, 1, 2].map(() => ({ length: 2, needs: [0, 0, 0, 0, 1], successors: [] })),
    };
    expect(scheduleProject(many, 1, { iterations: 60 }).length).toBe(6);
    const large: Project = {
      capacity: [1_000],
      tasks: [400, 500, 600].map((need) => ({ length: 2, needs: [need], successors: [] })),
    };
    const { length, starts } = scheduleProject(large, 1, { iterations: 60 });
    expect(length).toBe(4);
    expect(brokenIn(large, starts)).toEqual([]);
  });

  it('that a schedule breaks is said in sentences', () => {
    const read = readProject(text);
    if (!read.ok) throw new Error('not read');
    expect(brokenIn(read.project, [0, 0, 0, 2, 9])).toEqual([
      'task 3 begins before task 1 has ended',
      'task 3 begins before task 2 has ended',
      'at 0, 4 of 3 units of resource 0 are needed',
      'at 2, 5 of 3 units of resource 0 are needed',
      'at 2, 2 of 1 units of resource 1 are needed',
    ]);
  });

  it('stops when it is told to', () => {
    const read = readProject(text.replace('    3    1\n', '    2    1\n'));
    if (!read.ok) throw new Error('not read');
    let asked = 0;
    const stop = (): boolean => (asked += 1) > 3;
    // Without a limit it would go on until the bound is met, which here is met at once or never.
    const { schedules } = scheduleProject(read.project, 1, { iterations: 1_000_000, stop });
    expect(schedules).toBeLessThan(10_000);
  });
});
