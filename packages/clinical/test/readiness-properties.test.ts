/** What must hold for every ledger: unknown never becomes ready, the window ends where it says, the rest changes nothing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type DecisionContext,
  type NumberKey,
  type Verdict,
  addDays,
  day,
  demoSheet,
  outcomeOf,
  evidenceOf,
  everyDay,
  firstPlan,
  plainDate,
  protocolFrom,
  readiness,
  requirementIds,
  teaching,
  teachingSheet,
  timelineFrom,
  together,
  verdictOn,
  verdicts,
  viewOf,
  withEvidence,
  worldOf,
} from './readiness-insides.ts';
import { type Line, asked, at, bloods, born, clear, doseGiven, personOf, weighed } from './person.ts';

const context: DecisionContext = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
const answer = (lines: readonly Line[], today: Day = asked, by: DecisionContext = context) =>
  readiness(personOf(lines), by, today);
const on = (lines: readonly Line[], date: Day, today: Day = asked) => verdictOn(answer(lines, today), date);

describe('the table of verdicts together', () => {
  /** docs/readiness.md, "Together", written out a second time. */
  const expected = (all: readonly Verdict[]): Verdict => {
    if (all.includes('not ready')) return 'not ready';
    if (all.includes('cannot say')) return 'cannot say';
    return all.includes('ready') ? 'ready' : 'does not apply';
  };
  test('every combination of up to four', () => {
    const grow = (lists: Verdict[][]): Verdict[][] => lists.flatMap((list) => verdicts.map((one) => [...list, one]));
    let lists: Verdict[][] = [[]];
    let checked = 0;
    for (let length = 0; length <= 4; length += 1) {
      for (const list of lists) {
        expect(together(list)).toBe(expected(list));
        checked += 1;
      }
      lists = grow(lists);
    }
    expect(checked).toBe(1 + 4 + 16 + 64 + 256);
  });
  test('order does not matter', () => {
    const some = fc.array(fc.constantFrom(...verdicts), { maxLength: 12 });
    fc.assert(
      fc.property(some, (list) => together(list) === together(list.toReversed())),
      { seed: 1, numRuns: 200 },
    );
  });
});

/** A good ledger with its facts in groups, so that a whole fact (a result and its signature) can be left out. */
const facts: Readonly<Record<string, readonly Line[]>> = {
  identity: [born('1941-06-02')],
  allergies: [at('2026-01-05', 'allergy', { answer: 'none known' })],
  pregnancy: [at('2026-01-05', 'pregnancy', { answer: 'does not apply', reason: 'told us' })],
  consent: [at('2026-01-05', 'consent', { decision: 'given', how: 'spoken' })],
  teeth: [at('2026-01-05', 'dental', { answer: 'nothing pending' })],
  secondaryCauses: [at('2026-01-05', 'secondary-causes', { answer: 'none found' })],
  prescription: [
    at('2026-01-05', 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-01-01' as never,
      validUntil: '2028-12-31' as never,
    }),
  ],
  weight: [weighed('2026-11-01', '56.2')],
  creatinine: bloods('2026-11-01', { creatinine: '79 umol/L' }),
  calcium: bloods('2026-11-01', { 'adjusted calcium': '2.29 mmol/L' }),
  vitaminD: bloods('2026-11-01', { 'vitamin D': '68 nmol/L' }),
};
const needed = Object.keys(facts);
const without = (left: readonly string[]): Line[] =>
  needed.filter((name) => !left.includes(name)).flatMap((name) => facts[name] ?? []);

describe('unknown never becomes ready', () => {
  test('with every fact it is ready, and without any one or more of them it is not', () => {
    expect(on(without([]), asked).verdict).toBe('ready');
    fc.assert(
      fc.property(fc.subarray(needed, { minLength: 1 }), fc.integer({ min: 0, max: 800 }), (left, ahead) => {
        const { verdict } = on(without(left), addDays(asked, ahead));
        expect(verdict === 'not ready' || verdict === 'cannot say').toBe(true);
      }),
      { seed: 2, numRuns: 300 },
    );
  });
  test('a failing fact never turns into ready by leaving it out', () => {
    const failing: Readonly<Record<string, readonly Line[]>> = {
      creatinine: bloods('2026-11-02', { creatinine: '140 umol/L' }),
      calcium: bloods('2026-11-02', { 'adjusted calcium': '2.05 mmol/L' }),
      vitaminD: bloods('2026-11-02', { 'vitamin D': '20 nmol/L' }),
      consent: [at('2026-11-02', 'consent', { decision: 'not given' })],
    };
    for (const [name, lines] of Object.entries(failing)) {
      expect(on([...without([name]), ...lines], asked).verdict).toBe('not ready');
      expect(on(without([name]), asked).verdict).toBe('cannot say');
    }
  });
  test('a signature taken away is a fact taken away', () => {
    for (const name of ['creatinine', 'calcium', 'vitaminD']) {
      const lines = without([name]).concat((facts[name] ?? []).filter(({ kind }) => kind !== 'results-signed'));
      expect(on(lines, asked).verdict).toBe('cannot say');
    }
  });
});

/** Every number that is a limit, moved to the strict side. */
const strict: readonly (readonly [NumberKey, string])[] = [
  ['clearanceFloor', '45'],
  ['creatinineRise', '10'],
  ['creatinineRiseFactor', '1.1'],
  ['baselineDays', '900'],
  ['adjustedWeightFromPercent', '101'],
  ['weightValidDays', '30'],
  ['bloodsValidDays', '20'],
  ['calciumLow', '2.30'],
  ['calciumHigh', '2.45'],
  ['calciumAfterLoadingDays', '30'],
  ['vitaminDFloor', '70'],
  ['vitaminDValidDays', '60'],
  ['loadingHoldsDays', '30'],
  ['maintenanceConfirmDays', '20'],
  ['wellDaysBeforeSample', '20'],
  ['surgerySampleDays', '40'],
  ['hipRepairDays', '60'],
  ['hipLookbackDays', '900'],
  ['pregnancyAnswerDays', '2'],
  ['otherProductMonths', '24'],
  ['denosumabIntervalMonths', '12'],
  ['maxConsecutiveDoses', '1'],
  ['teethAnswerDays', '30'],
  ['consentValidDays', '30'],
  ['vitaminDSevere', '60'],
  ['heightLossCentimeters', '1'],
];

/** Random small ledgers: enough to reach every branch of the plan. */
const date = fc.integer({ min: day('2025-06-01'), max: asked }).map((n) => plainDate(n as Day));
const anyLine: fc.Arbitrary<readonly Line[]> = fc.oneof(
  fc.tuple(date, fc.integer({ min: 40, max: 110 })).map(([d, kg]) => [weighed(d, String(kg))]),
  fc
    .tuple(date, fc.integer({ min: 55, max: 130 }), fc.boolean())
    .map(([d, umol, signed]) => bloods(d, { creatinine: `${umol} umol/L` }, signed ? d : null)),
  fc
    .tuple(date, fc.integer({ min: 210, max: 265 }), fc.boolean())
    .map(([d, ca, signed]) => bloods(d, { 'adjusted calcium': `${(ca / 100).toFixed(2)} mmol/L` }, signed ? d : null)),
  fc
    .tuple(date, fc.integer({ min: 20, max: 90 }), fc.boolean())
    .map(([d, level, signed]) => bloods(d, { 'vitamin D': `${level} nmol/L` }, signed ? d : null)),
  date.map((d) => [doseGiven(d)]),
  date.map((d) => [at(d, 'illness', { what: 'flu', sort: 'illness' }), at(d, 'well-since', {})]),
  date.map((d) => [at(d, 'surgery', { what: 'hip repair' })]),
  fc
    .tuple(date, fc.integer({ min: 0, max: 6 }))
    .map(([d, taken]) => [
      at(d, 'vitamin-d-loading', { doses: 6, everyDays: 7, unitsPerDose: 50000, startOn: d }),
      ...(taken === 0 ? [] : [at(d, 'vitamin-d-taken', { doses: taken, source: 'told us' })]),
    ]),
  date.map((d) => [at(d, 'pregnancy', { answer: 'no' })]),
  date.map((d) => [at(d, 'symptom', { what: 'jaw pain' })]),
  date.map((d) => [at(d, 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' })]),
  date.map((d) => [
    at(d, 'medicine', { name: 'alendronic acid', sort: 'bisphosphonate tablet', stoppedOn: plainDate(asked) }),
  ]),
  date.map((d) => [at(d, 'medicine', { name: 'ibuprofen', sort: 'nephrotoxic' })]),
);
const anyLedger = fc
  .array(anyLine, { maxLength: 10 })
  .map((groups) =>
    [...clear, born('1941-06-02'), ...groups.flat()].toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)),
  );
/** One that is ready but for what a few more facts change. */
const mostlyGood = fc
  .array(anyLine, { maxLength: 3 })
  .map((groups) => [...without([]), ...groups.flat()].toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)));
const runs = { seed: 20261125, numRuns: 400 };

describe('for every ledger', () => {
  test('a stricter limit never makes anyone ready', () => {
    const held = new Set<NumberKey>();
    const stricter = strict.map(([key, value]) => {
      const made = protocolFrom({
        ...teachingSheet,
        numbers: { ...teachingSheet.numbers, [key]: { ...teachingSheet.numbers[key], value } },
      });
      if (!('protocol' in made)) throw new Error(`${key} is empty`);
      return { key, by: { ...context, protocols: [{ from: day('2015-01-01'), protocol: made.protocol }] } };
    });
    fc.assert(
      fc.property(mostlyGood, (lines) => {
        const usual = answer(lines);
        for (const { key, by } of stricter) {
          const strictly = answer(lines, asked, by);
          for (let ahead = 0; ahead <= 120; ahead += 5) {
            const date = addDays(asked, ahead);
            const was = verdictOn(usual, date).verdict === 'ready';
            const is = verdictOn(strictly, date).verdict === 'ready';
            expect([key, plainDate(date), is && !was]).toEqual([key, plainDate(date), false]);
            if (was && !is) held.add(key);
          }
        }
      }),
      { ...runs, numRuns: 150 },
    );
    // It is not that nothing ever moves.
    expect(held.size).toBeGreaterThan(5);
  });

  test('the window is ready on its first day and on its last with the plan carried out, and not on the day after', () => {
    let windows = 0;
    fc.assert(
      fc.property(anyLedger, (lines) => {
        const world = worldOf(evidenceOf(personOf(lines), asked), context);
        const plan = firstPlan(world);
        const { window } = answer(lines);
        expect(window === undefined).toBe(plan === undefined);
        if (plan === undefined || window === undefined) return;
        windows += 1;
        const after = withEvidence(world, outcomeOf(plan, world.evidence));
        const verdictAfter = (d: Day) =>
          together(
            requirementIds.map(
              (id) =>
                timelineFrom(after, id, window.first).spans.findLast(({ from }) => from <= d)?.verdict ?? 'cannot say',
            ),
          );
        expect(verdictAfter(window.first)).toBe('ready');
        if (window.last === undefined) return;
        expect(verdictAfter(window.last)).toBe('ready');
        expect(verdictAfter(addDays(window.last, 1))).not.toBe('ready');
      }),
      runs,
    );
    expect(windows).toBeGreaterThan(50);
  });

  test('a window is certain exactly when nothing is left to do, and then today or a later day is ready as things stand', () => {
    fc.assert(
      fc.property(anyLedger, (lines) => {
        const found = answer(lines);
        if (found.window === undefined) return;
        expect(found.window.certain).toBe(found.nextSteps.length === 0);
        expect(verdictOn(found, found.window.first).verdict === 'ready').toBe(found.window.certain);
      }),
      runs,
    );
  });

  test('there is a window or a reason why not, never both and never neither', () => {
    fc.assert(
      fc.property(anyLedger, (lines) => {
        const { window, noWindow } = answer(lines);
        expect((window === undefined) !== (noWindow === undefined)).toBe(true);
        expect(noWindow?.needs.length).not.toBe(0);
      }),
      runs,
    );
  });

  test('entries that have nothing to do with it change nothing', () => {
    const unrelated: readonly Line[] = [
      at('2026-11-20', 'reaction', { what: 'other', severity: 'mild' }),
      at('2026-11-21', 'call', { route: 'telephone', about: 'recall', reached: true }),
      at('2026-04-02', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' }),
      at('2026-11-21', 'medicine', { name: 'amlodipine', sort: 'other' }),
    ];
    fc.assert(
      fc.property(anyLedger, fc.subarray([...unrelated], { minLength: 1 }), (lines, more) => {
        const plain = (found: ReturnType<typeof answer>) => ({
          first: found.window?.first,
          last: found.window?.last,
          steps: found.nextSteps.map(({ kind, earliest, latest }) => [kind, earliest, latest]),
          needs: found.noWindow?.needs.map(({ requirement }) => requirement),
          spans: found.timelines.map(({ spans }) =>
            spans.map(({ from, until, verdict, cause }) => [from, until, verdict, cause]),
          ),
        });
        expect(plain(answer([...lines, ...more]))).toEqual(plain(answer(lines)));
      }),
      { ...runs, numRuns: 200 },
    );
  });

  test('as things stand does not depend on the day asked on', () => {
    fc.assert(
      fc.property(
        anyLedger,
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 500 }),
        (lines, later, ahead) => {
          const asking = addDays(asked, later);
          const date = addDays(asking, ahead);
          expect(on(lines, date, asking).requirements).toEqual(on(lines, date).requirements);
        },
      ),
      { ...runs, numRuns: 300 },
    );
  });

  test('spans touch, ascend, start on the day asked on and never end', () => {
    fc.assert(
      fc.property(anyLedger, (lines) => {
        for (const { spans } of answer(lines).timelines) {
          expect(spans[0]?.from).toBe(asked);
          expect(spans[spans.length - 1]?.until).toBeUndefined();
          spans.slice(1).forEach(({ from }, index) => expect((spans[index]?.until ?? 0) + 1).toBe(from));
        }
      }),
      { ...runs, numRuns: 200 },
    );
  });

  test('every sentence is made without a gap: no "undefined", no verdict called safe', () => {
    fc.assert(
      fc.property(anyLedger, fc.integer({ min: 0, max: 400 }), (lines, ahead) => {
        const record = personOf(lines);
        const text = JSON.stringify(
          viewOf(readiness(record, context, asked), record, context, { on: addDays(asked, ahead) }),
        );
        expect(text).not.toMatch(/undefined|NaN|\[object|\bsafe\b/);
      }),
      { ...runs, numRuns: 200 },
    );
  });
});

describe('protocol versions', () => {
  const stricter = protocolFrom({
    ...teachingSheet,
    version: 'stricter',
    numbers: { ...teachingSheet.numbers, clearanceFloor: { ...teachingSheet.numbers.clearanceFloor, value: '45' } },
  });
  const from = day('2026-12-01');
  const stitched: DecisionContext = {
    ...context,
    protocols: [...context.protocols, ...('protocol' in stricter ? [{ from, protocol: stricter.protocol }] : [])],
  };
  test('a date is judged by the version in force on it', () => {
    const found = readiness(personOf(without([])), stitched, asked);
    expect([addDays(from, -1), from].map((d) => verdictOn(found, d).verdict)).toEqual(['ready', 'not ready']);
    expect(found.window).toMatchObject({ first: asked, last: addDays(from, -1), certain: true });
    expect(found.window?.runsOut?.requirement).toBe('kidney-function');
  });
  test('before the first version nothing can be said', () => {
    const found = readiness(personOf(without([])), { ...context, protocols: [{ from, protocol: teaching }] }, asked);
    expect([addDays(from, -1), from].map((d) => verdictOn(found, d).verdict)).toEqual(['cannot say', 'ready']);
    expect(found.window?.first).toBe(from);
    expect(verdictOn(found, asked).headline).toBe('cannot say: no protocol in force');
  });
  test('with none at all there is no window, and it says what is needed', () => {
    const found = readiness(personOf(without([])), { ...context, protocols: [] }, asked);
    expect(found.window).toBeUndefined();
    expect(found.noWindow?.needs[0]?.what).toBe('a protocol in force');
  });
  test('working days: a result drawn on a Thursday before Christmas is usable on the next working day but one', () => {
    const made = protocolFrom(demoSheet('demo'));
    const calendar = {
      ...everyDay,
      bloodWeekdays: [1, 2, 3, 4, 5],
      closedDays: [day('2026-12-25'), day('2026-12-28')],
    };
    const demo: DecisionContext = {
      protocols: 'protocol' in made ? [{ from: day('2020-01-01'), protocol: made.protocol }] : [],
      calendar,
    };
    const known = [...without(['creatinine']), at('2026-11-05', 'dental', { answer: 'nothing pending' })];
    const found = readiness(personOf(known), demo, day('2026-12-24'));
    expect(
      found.nextSteps.map(({ kind, earliest, effectFrom }) => [kind, plainDate(earliest), plainDate(effectFrom)]),
    ).toEqual([['draw', '2026-12-24', '2026-12-30']]);
    expect(plainDate(found.window?.first ?? asked)).toBe('2026-12-30');
  });
});
