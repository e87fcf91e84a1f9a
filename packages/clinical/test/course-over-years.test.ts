/**
 * The course over years, whatever is decided in whatever order: nobody is unaccounted for, the three counts keep together,
 * what was said to follow from a decision does follow, and what happens in a break is never slept through (safety page,
 * "Interval, course"; design page, idea 10).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type ReviewChoice,
  type Standing,
  addDays,
  addMonths,
  consequencesOf,
  courseOf,
  day,
  factsOf,
  plainDate,
  reviewSheetOf,
  shortDate,
  standingOf,
  standings,
  teaching,
} from '@twelvemonth/clinical';
import { DayUnit, type Person } from './decide/a-day-unit.ts';

type Wish =
  | { readonly wish: 'dose'; readonly home: boolean }
  | {
      readonly wish: 'review';
      readonly outcome: ReviewChoice['outcome'];
      readonly number: number;
      readonly specialist: boolean;
    }
  | { readonly wish: 'told'; readonly what: number }
  | { readonly wish: 'undo' | 'reopen' | 'close' }
  | { readonly wish: 'wait'; readonly days: number };

const outcomes = ['carry on', 'planned break', 'other treatment', 'new course', 'stop'] as const;
const wishes: fc.Arbitrary<Wish[]> = fc.array(
  fc.oneof(
    { weight: 6, arbitrary: fc.record({ wish: fc.constant('dose' as const), home: fc.boolean() }) },
    {
      weight: 5,
      arbitrary: fc.record({
        wish: fc.constant('review' as const),
        // A break more often than the rest: most of what is tested here happens in one.
        outcome: fc.constantFrom(...outcomes, 'planned break' as const, 'planned break' as const),
        number: fc.integer({ min: 1, max: 10 }),
        specialist: fc.boolean(),
      }),
    },
    {
      weight: 5,
      arbitrary: fc.record({ wish: fc.constant('told' as const), what: fc.constantFrom(0, 1, 2, 3, 4, 4, 4, 5) }),
    },
    {
      weight: 1,
      arbitrary: fc.record({ wish: fc.constantFrom('undo' as const, 'reopen' as const, 'close' as const) }),
    },
    {
      weight: 6,
      arbitrary: fc.record({ wish: fc.constant('wait' as const), days: fc.constantFrom(1, 30, 200, 366, 800) }),
    },
  ),
  { minLength: 4, maxLength: 40 },
);

const told: readonly (readonly [kind: string, body: object])[] = [
  ['fracture', { site: 'wrist', dateKnown: true }],
  ['fracture', { site: 'spine', dateKnown: true }],
  ['symptom', { what: 'back pain' }],
  ['medicine', { name: 'prednisolone', sort: 'steroid', prednisoloneMgPerDay: '10' }],
  ['medicine', { name: 'prednisolone', sort: 'steroid', prednisoloneMgPerDay: '2.5' }],
  ['spine-imaging', { method: 'MRI', found: 'new fracture' }],
];

const choiceOf = (wish: Extract<Wish, { wish: 'review' }>, today: ReturnType<typeof day>): ReviewChoice => {
  const later = addMonths(today, 6 * wish.number);
  switch (wish.outcome) {
    case 'carry on':
      return { outcome: wish.outcome, toDoses: wish.number };
    case 'planned break':
      return { outcome: wish.outcome, reviewOn: later };
    case 'other treatment':
      return { outcome: wish.outcome, to: 'denosumab', dueOn: later };
    case 'new course':
      return { outcome: wish.outcome, plannedDoses: Math.min(6, wish.number) };
    case 'stop':
      return { outcome: wish.outcome };
  }
};

const bodyOf = (choice: ReviewChoice, specialist: boolean): object => ({
  ...choice,
  ...('reviewOn' in choice ? { reviewOn: plainDate(choice.reviewOn), triggers: 'a fracture' } : {}),
  ...('dueOn' in choice ? { dueOn: plainDate(choice.dueOn) } : {}),
  capacity: specialist ? 'specialist' : 'other prescriber',
  reason: 'x',
});

const line = (kind: string, body: object, effectiveAt: string): Act =>
  ({ name: 'record', patient: 'p1', line: { kind, body, effectiveAt } }) as Act;

const atHome = { setting: 'home', checkedBy: 'dana', checkedWhen: 'there, before it ran' };

/** Tries a wish. What is refused is refused; what is written is true to what was said of it. */
function grant(unit: DayUnit, wish: Wish, untrue: string[]): boolean {
  const done = (who: Person, act: Act): boolean => unit.do(who, act).length === 0;
  const today = day(unit.today());
  switch (wish.wish) {
    case 'dose':
      return done(
        'imre',
        line('dose', { medicine: 'zoledronic acid 5 mg', ...(wish.home ? atHome : { setting: 'ward' }) }, unit.today()),
      );
    case 'told': {
      const [kind, body] = told[wish.what] ?? ['', {}];
      return done('dana', line(kind, body, unit.today()));
    }
    case 'undo': {
      const review = factsOf(unit.patient(), 'course-review').at(-1);
      return review !== undefined && done('halina', { name: 'withdraw', patient: 'p1', entry: review.id, reason: 'x' });
    }
    case 'reopen':
      return done('imre', line('reopened', { reason: 'x' }, unit.today()));
    case 'close':
      return done('imre', line('closed', { reason: 'x' }, unit.today()));
    case 'wait':
      unit.wait(wish.days * 1440);
      return true;
    case 'review': {
      const before = reviewSheetOf(unit.patient(), teaching, today).basis;
      const choice = choiceOf(wish, today);
      if (!done('halina', line('course-review', bodyOf(choice, wish.specialist), unit.today()))) return false;
      const course = courseOf(unit.patient(), teaching, today);
      const said = consequencesOf(before, choice).join(' ');
      // A date that is due is the date that was said; where a break was said, nothing is due.
      if (course.due !== undefined && !said.includes(shortDate(course.due))) untrue.push(`due, but said: ${said}`);
      if (choice.outcome === 'planned break' && !said.includes(shortDate(choice.reviewOn)))
        untrue.push(`break, but said: ${said}`);
      const goesOn = choice.outcome === 'carry on' || choice.outcome === 'new course';
      if (before.needsSpecialist && goesOn && !wish.specialist) untrue.push('no specialist decided');
      return true;
    }
  }
}

describe('whatever is decided over the years', () => {
  test('everyone is accounted for, the counts keep together, and a break is not slept through', () => {
    const seen = new Set<Standing>();
    let reopened = 0;
    let written = 0;
    fc.assert(
      fc.property(wishes, (asked) => {
        const unit = new DayUnit().register();
        unit.write('imre', 'triage', { outcome: 'accepted' });
        let lifetime = 0;
        const untrue: string[] = [];
        for (const wish of asked) {
          const wasOnBreak = standingOf(unit.patient(), teaching, day(unit.today())).standing === 'on planned break';
          const began = factsOf(unit.patient(), 'course-review').at(-1)?.on;
          if (!grant(unit, wish, untrue)) continue;
          written += 1;
          const today = day(unit.today());
          const record = unit.patient();
          const course = courseOf(record, teaching, today);
          expect(course.lifetime).toBeGreaterThanOrEqual(lifetime);
          expect(course.lifetime).toBe(factsOf(record, 'dose').length);
          expect(course.consecutive).toBeLessThanOrEqual(course.lifetime);
          expect(course.doses.length).toBeLessThanOrEqual(course.lifetime);
          lifetime = course.lifetime;
          if (course.review !== undefined && course.due !== undefined) untrue.push('due and in review at once');
          if (wasOnBreak && wish.wish === 'told' && wish.what !== 4 && began !== undefined && began < today) {
            reopened += 1;
            if (standingOf(record, teaching, today).standing !== 'in review') untrue.push('a break slept through');
          }
          for (const later of [0, 30, 400, 2000]) {
            const on = addDays(today, later);
            const now = standingOf(record, teaching, on);
            seen.add(now.standing);
            expect(standings).toContain(now.standing);
            expect(now.standing).not.toBe('not accounted for');
            expect(now.owner).not.toBe('');
            expect(now.on === undefined).toBe(now.owner === 'nobody');
            const { due, recall } = courseOf(record, teaching, on);
            const onBreak = now.standing === 'on planned break';
            if (onBreak && (now.on === undefined || now.on <= on)) untrue.push('a break without an end to come');
            if (onBreak && (due !== undefined || recall !== undefined)) untrue.push('due on a break');
          }
        }
        expect(untrue).toEqual([]);
      }),
      { seed: 20_261_125, numRuns: 500 },
    );
    // The game is worth something only if it gets about.
    expect(written).toBeGreaterThan(2000);
    expect(reopened).toBeGreaterThan(10);
    for (const standing of [
      'between doses',
      'overdue',
      'in review',
      'on planned break',
      'moved to other treatment',
      'closed',
    ])
      expect([...seen]).toContain(standing);
  });
});
