import { addDays, type Day, day, weekday } from '@twelvemonth/clinical';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FillAnswer,
  type FillRequest,
  type FillSession,
  type Waiting,
  changeOne,
  costIfIn,
  fairnessOf,
  fillSessions,
  fillingOf,
  optionsOf,
  problemFor,
  sessionsOf,
  standbyFor,
  usualFillWeights,
  whyNotEarlier,
  worthOfOneMore,
  worthOfOneMoreNurse,
} from '../src/index.ts';
import { isWithin } from './oracle/all-fillings.ts';

const today = day('2026-03-02');
const inDays = (days: number): Day => addDays(today, days);

const kinds = [
  { name: 'first infusion', nurseMinutes: 55, chairMinutes: 90, isFirst: true },
  { name: 'later infusion', nurseMinutes: 35, chairMinutes: 60, isFirst: false },
  { name: 'injection', nurseMinutes: 20, chairMinutes: 0, isFirst: false },
];

const session = (days: number, more: Partial<FillSession> = {}): FillSession => ({
  day: inDays(days),
  site: 'Alder House',
  nurseMinutes: 70,
  chairMinutes: 240,
  mostFirstVisits: 1,
  reservedPercent: 0,
  ...more,
});

const person = (name: string, more: Partial<Waiting> = {}): Waiting => ({
  name,
  kind: 1,
  tier: 2,
  earliest: { day: inDays(1), because: 'a place needs a day of notice' },
  latest: { day: inDays(60), because: 'the prescription ends on 1 May 2026' },
  due: inDays(1),
  bloods: null,
  weekdays: [],
  travelMinutes: { 'Alder House': 0 },
  told: null,
  noticeDays: 1,
  ...more,
});

const request = (
  people: readonly Waiting[],
  sessions: readonly FillSession[],
  more: Partial<FillRequest> = {},
): FillRequest => ({ today, kinds, sessions, people, weights: usualFillWeights, ...more });

function answered(of: FillRequest): Extract<FillAnswer, { ok: true }> {
  const answer = fillSessions(of);
  if (!answer.ok) throw new Error(answer.problems.join('\n'));
  return answer;
}

const anyRequest = fc
  .record({
    people: fc.array(
      fc.record({
        kind: fc.integer({ min: 0, max: 2 }),
        tier: fc.constantFrom(0 as const, 1 as const, 2 as const),
        due: fc.integer({ min: 1, max: 40 }),
        told: fc.option(fc.integer({ min: 0, max: 5 })),
      }),
      { minLength: 1, maxLength: 24 },
    ),
    sessions: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 6, maxLength: 6 }),
    reservedPercent: fc.constantFrom(0, 20),
  })
  .map(({ people, sessions, reservedPercent }) =>
    request(
      people.map(({ due, ...more }, index) => person(`Person ${index + 1}`, { ...more, due: inDays(due) })),
      sessions.map((places, index) =>
        session(3 + index * 7, { nurseMinutes: places * 35, chairMinutes: places * 60, reservedPercent }),
      ),
    ),
  );

describe('filling sessions', () => {
  it('keeps to windows and minutes, and counts for each tier no fewer days than its bound', () => {
    fc.assert(
      fc.property(anyRequest, (of) => {
        const answer = answered(of);
        const none = of.sessions.length;
        expect(
          isWithin(
            problemFor(of),
            answer.session.map((own) => own ?? none),
          ),
        ).toBe(true);
        for (const tier of answer.tiers) expect(tier.days).toBeGreaterThanOrEqual(tier.atLeast);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  it('never trades an urgent person for others: the most urgent tier does as well as if it were alone', () => {
    fc.assert(
      fc.property(anyRequest, (of) => {
        const urgent = of.people.filter(({ tier }) => tier === 0);
        const alone = answered({ ...of, people: urgent });
        expect(answered(of).tiers[0]?.days).toBe(alone.tiers[0]?.days);
      }),
      { seed: 32, numRuns: 100 },
    );
  });

  it('gives the one place there is to the more urgent, however many days the other is late', () => {
    const one = [session(2, { nurseMinutes: 35 })];
    const people = [person('Late', { due: inDays(-300) }), person('Urgent', { tier: 0 })];
    const answer = answered(request(people, one));
    expect(answer.session).toEqual([null, 0]);
    expect(answer.tiers.map(({ withoutPlace }) => withoutPlace)).toEqual([0, 0, 1]);
  });

  it('keeps minutes back for the most urgent', () => {
    const kept = [session(2, { reservedPercent: 50 })];
    const three = ['A', 'B', 'C'].map((name) => person(name));
    expect(answered(request(three, kept)).session.filter((own) => own !== null)).toHaveLength(1);
    const withUrgent = [...three, person('Urgent', { tier: 0 })];
    expect(answered(request(withUrgent, kept)).session[3]).toBe(0);
  });

  it('holds no more first visits in a session than the unit allows', () => {
    const people = [person('A', { kind: 0 }), person('B', { kind: 0 })];
    const sessions = [session(2, { nurseMinutes: 200 }), session(9, { nurseMinutes: 200 })];
    expect(answered(request(people, sessions)).session.toSorted((a, b) => Number(a) - Number(b))).toEqual([0, 1]);
  });

  it('moves a place already told only for more than the stated gain, and says the gain', () => {
    const sessions = [session(2, { nurseMinutes: 35 }), session(9, { nurseMinutes: 35 })];
    const told = person('Told', { told: 0, due: inDays(9) });
    const soon = person('Soon', { due: inDays(2) });
    const gain = 14;
    const moved = answered(request([told, soon], sessions, { weights: { ...usualFillWeights, moveTold: gain - 1 } }));
    expect(moved.session).toEqual([1, 0]);
    expect(moved.changes.find(({ person: who }) => who === 0)).toEqual({
      person: 0,
      from: 0,
      to: 1,
      gain: { tier: 2, days: 1 },
    });
    const kept = answered(request([told, soon], sessions, { weights: { ...usualFillWeights, moveTold: gain + 1 } }));
    expect(kept.session).toEqual([0, 1]);
    expect(kept.changes.map(({ person: who }) => who)).toEqual([1]);
  });

  it('leaves a place already told where it is when moving it gains no more than the move costs', () => {
    const sessions = [session(2, { nurseMinutes: 35 }), session(9, { nurseMinutes: 35 })];
    const soon = person('Soon', { due: inDays(2) });
    const gain = 14;
    const weights = { ...usualFillWeights, moveTold: gain };
    for (const tier of [0, 1, 2] as const) {
      const told = person('Told', { told: 0, due: inDays(9), tier });
      expect(answered(request([told, { ...soon, tier }], sessions, { weights })).session).toEqual([0, 1]);
      expect(answered(request([{ ...soon, tier }, told], sessions, { weights })).session).toEqual([1, 0]);
    }
  });

  it('plans another blood draw only where one can be looked at in time, and not when the old one can still be used', () => {
    const bloods = { usableUntil: inDays(10), drawFrom: inDays(3), daysToResult: 7 };
    const sessions = [session(9), session(30)];
    expect(answered(request([person('A', { bloods, due: inDays(12) })], sessions)).session).toEqual([0]);
    const none = { ...bloods, usableUntil: null };
    const late = answered(request([person('A', { bloods: none, due: inDays(9) })], sessions));
    expect(late.session).toEqual([1]);
    expect(whyNotEarlier(request([person('A', { bloods: none })], sessions), late.filling, 0, 1)[0]?.says).toBe(
      'new bloods cannot be drawn and looked at by 11 Mar 2026',
    );
  });

  it('says of every earlier session why not: the window, or what it would cost all together', () => {
    const sessions = [session(0), session(2, { nurseMinutes: 35 }), session(9, { nurseMinutes: 35 })];
    const of = request([person('First', { due: inDays(2), tier: 1 }), person('Second', { due: inDays(2) })], sessions);
    const answer = answered(of);
    expect(answer.session).toEqual([1, 2]);
    expect(whyNotEarlier(of, answer.filling, 1, 2).map(({ says }) => says)).toEqual([
      '2 Mar 2026 is too early: a place needs a day of notice',
      '4 Mar 2026 would cost 7 days more in all, counted for the urgent',
    ]);
  });

  it('says what one more place would save, and leaves the filling as it was', () => {
    const sessions = [session(2, { nurseMinutes: 35 }), session(9, { nurseMinutes: 35 }), session(16)];
    const of = request(
      ['A', 'B', 'C'].map((name) => person(name, { due: inDays(2) })),
      sessions,
    );
    const answer = answered(of);
    const before = [...sessionsOf(answer.filling)];
    const [best] = worthOfOneMore(of, answer.filling, 1);
    expect(best).toEqual({ session: 0, tier: 2, days: 14 });
    expect([...sessionsOf(answer.filling)]).toEqual(before);
    const wider = sessions.map((one, index) => (index === 0 ? { ...one, nurseMinutes: 70 } : one));
    const days = answer.tiers[2]?.days ?? 0;
    expect(answered({ ...of, sessions: wider }).tiers[2]?.days).toBe(days - 14);
    // A nurse for 35 minutes more is such a place; where chairs or places are what is short, she saves nothing.
    expect(worthOfOneMoreNurse(answer.filling, [35, 35, 35])[0]).toEqual({ session: 0, tier: 2, days: 14 });
    expect([...sessionsOf(answer.filling)]).toEqual(before);
    const full = { ...of, sessions: sessions.map((one) => ({ ...one, mostVisits: 1 })) };
    expect(worthOfOneMoreNurse(answered(full).filling, [35, 35, 35]).map((one) => one.days)).toEqual([0, 0, 0]);
  });

  it('knows the price of a wish: what the filling would cost with a person in another session', () => {
    fc.assert(
      fc.property(anyRequest, fc.nat({ max: 5 }), (of, where) => {
        const filling = fillingOf(problemFor(of), 200);
        const before = [...sessionsOf(filling)];
        const cost = costIfIn(filling, 0, where);
        expect([...sessionsOf(filling)]).toEqual(before);
        const isNotDearer = cost === undefined || before[0] !== where || cost <= filling.cost;
        expect(isNotDearer).toBe(true);
      }),
      { seed: 33, numRuns: 100 },
    );
  });

  it('takes in a change of one person and stays within the minutes', () => {
    fc.assert(
      fc.property(anyRequest, fc.integer({ min: 10, max: 40 }), (of, due) => {
        const problem = problemFor(of);
        const filling = fillingOf(problem, 200);
        const changed = {
          ...of.people[0]!,
          earliest: { day: inDays(due), because: 'travelling until then' },
          told: null,
        };
        const { node, cost } = optionsOf(of, changed);
        const after = changeOne(filling, 0, node, cost);
        const session0 = sessionsOf(after);
        expect(isWithin(problem, session0)).toBe(true);
        expect(session0[0] === of.sessions.length || of.sessions[session0[0] ?? 0]!.day >= changed.earliest.day).toBe(
          true,
        );
        const total = problem.kind.reduce((sum, _, visit) => {
          const { first, end, node: nodes, cost: costs } = problem.options;
          const cells = Array.from({ length: end[visit]! - first[visit]! }, (_unused, index) => first[visit]! + index);
          return sum + costs[cells.find((cell) => nodes[cell] === session0[visit]) ?? -1]!;
        }, 0);
        expect(after.cost).toBe(total);
      }),
      { seed: 34, numRuns: 100 },
    );
  });

  it('lists who could have a place that came free tomorrow: reachable, bloods that hold, most urgent and longest due first', () => {
    const sessions = [session(1), session(20)];
    const bloods = { usableUntil: inDays(1), drawFrom: today, daysToResult: 7 };
    const people = [
      person('Needs notice', { noticeDays: 3 }),
      person('Old bloods', { bloods: { ...bloods, usableUntil: inDays(0) } }),
      person('Due longer', { due: inDays(-9), bloods }),
      person('Due', { due: inDays(-2) }),
      person('Urgent', { tier: 0 }),
      person('Has it already'),
    ];
    const list = standbyFor(request(people, sessions), [1, 1, 1, null, 1, 0], 0);
    expect(list.map(({ person: who }) => people[who]?.name)).toEqual(['Urgent', 'Due longer', 'Due']);
    expect(list.map(({ from }) => from)).toEqual([1, 1, null]);
  });

  it('weighs a wanted weekday and the way there against days past due on standby, in the days of the filling, and says so', () => {
    const on = weekday(inDays(1));
    const other = (on % 7) + 1;
    const { site } = session(1);
    const people = [
      person('Far', { due: inDays(-3), travelMinutes: { [site]: 60 } }),
      person('Another weekday', { due: inDays(-1), weekdays: [other], travelMinutes: { [site]: 0 } }),
      person('Near', { due: inDays(0), weekdays: [on], travelMinutes: { [site]: 0 } }),
      person('Urgent and far', { tier: 0, due: inDays(1), weekdays: [other], travelMinutes: { [site]: 90 } }),
    ];
    const list = standbyFor(request(people, [session(1)]), [null, null, null, null], 0);
    // Usual weights: 3 days for another weekday, 5 for an hour of travel.
    expect(list.map(({ person: who, because }) => [people[who]?.name, because])).toEqual([
      [
        'Urgent and far',
        'due on that day, less 3 for a weekday they would rather not have, less 8 for 90 minutes of travel, counts as -11 days',
      ],
      ['Near', '1 day past due, a weekday they prefer'],
      ['Another weekday', '2 days past due, less 3 for a weekday they would rather not have, counts as -1 days'],
      ['Far', '4 days past due, less 5 for 60 minutes of travel, counts as -1 days'],
    ]);
  });

  it('reports days late by group, of whom it never knew when choosing', () => {
    const people = [person('A', { group: 'north' }), person('B', { group: 'south' }), person('C', { group: 'south' })];
    const of = request(people, [session(1), session(11)]);
    expect(fairnessOf(of, [0, 1, null])).toEqual([
      { group: 'north', people: 1, withoutPlace: 0, medianDaysLate: 0, ninthDecileDaysLate: 0 },
      { group: 'south', people: 2, withoutPlace: 1, medianDaysLate: 10, ninthDecileDaysLate: 10 },
    ]);
  });

  it('refuses weights it cannot keep its promise with, and people it knows nothing of', () => {
    const of = request([person('A', { kind: 9, told: 4 })], [session(1)], {
      weights: { ...usualFillWeights, noPlace: 5_000 },
    });
    expect(fillSessions(of)).toEqual({
      ok: false,
      problems: [
        'noPlace must be a whole number from 0 to 2000',
        'A has a kind of visit that is not listed',
        'A was told a session that is not listed',
      ],
    });
  });
});
