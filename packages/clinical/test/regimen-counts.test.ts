/** What counts towards a course: of which medicine, given where, corrected, in part, and years of exposure (docs/readiness.md R6, R7). */
import { describe, expect, test } from 'vitest';
import { addMonths, day } from '@twelvemonth/clinical';
import { type Line, asked, at } from './person.ts';
import { dose, ordered, good, said, course } from './regimen-lines.ts';

describe('a change of medicine begins a course of its own', () => {
  const moved = [
    ...good,
    ...['2023-03-01', '2024-03-01', '2025-03-01'].map((on) => dose(on, 'zoledronic acid 5 mg')),
    at('2026-03-01', 'course-review', {
      outcome: 'other treatment',
      to: 'denosumab',
      dueOn: '2026-03-20' as never,
      reason: 'x',
    }),
  ];
  test('the review that chose it does not stop what it chose; doses count anew, the old ones for their own medicine', () => {
    const lines = [...moved, ordered('denosumab-60-six-monthly', '2026-03-01'), dose('2026-03-20', 'denosumab 60 mg')];
    expect(said(moved, 'course')?.verdict).toBe('not ready');
    expect(said(lines, 'course')?.verdict).toBe('ready');
    expect(course(lines)).toMatchObject({ planned: { count: 10 }, nextDoseNumber: 2, lifetime: 1 });
  });
  test('back again: the earlier doses of it count as its course', () => {
    const lines = [
      ...moved,
      ordered('denosumab-60-six-monthly', '2026-03-01'),
      ordered('zoledronic-acid-yearly', '2026-09-01'),
    ];
    expect(course(lines)).toMatchObject({ lifetime: 3, review: { because: 'planned doses given' } });
  });
});

describe('counts across places, corrections and part doses', () => {
  test.each(['this service', 'ward', 'home', 'elsewhere'] as const)(
    'a whole dose counts wherever it was given: %s',
    (setting) => {
      expect(course([...good, dose('2025-03-01', 'zoledronic acid 5 mg', setting)])).toMatchObject({
        lifetime: 1,
        consecutive: 1,
      });
    },
  );
  test('a dose corrected to another medicine counts for that one only', () => {
    const wrong = dose('2025-03-01', 'zoledronic acid 5 mg', 'this service', 'd');
    const right: Line = { ...dose('2025-03-01', 'denosumab 60 mg'), amends: 'd' };
    expect(course([...good, wrong, right]).lifetime).toBe(0);
    expect(course([...good, wrong, right]).given).toEqual([{ medicine: 'denosumab 60 mg', doses: 1 }]);
  });
  test('a part dose counts when a prescriber says so, and not before', () => {
    const part = at(
      '2025-03-01',
      'dose',
      { medicine: 'zoledronic acid 5 mg', setting: 'ward', partMilliliters: 60 },
      'part',
    );
    const says = (question: 'part dose counts' | 'part dose does not count') =>
      at('2025-03-02', 'prescriber-decision', { question, about: 'part', reason: 'x' });
    expect(course([...good, part])).toMatchObject({ lifetime: 0, undecidedPartDoses: [{ id: 'part' }] });
    expect(course([...good, part, says('part dose counts')])).toMatchObject({ lifetime: 1, undecidedPartDoses: [] });
    expect(course([...good, part, says('part dose does not count')])).toMatchObject({
      lifetime: 0,
      undecidedPartDoses: [],
    });
  });
});

describe('lifetime exposure to bisphosphonates', () => {
  const tablets = (name: string, from: string, stoppedOn: string) =>
    at(from, 'medicine', { name, sort: 'bisphosphonate tablet', stoppedOn: stoppedOn as never });
  test('tablets that overlap count once; an infusion counts for its interval; what overlaps it counts once', () => {
    const two = [
      tablets('alendronic acid', '2020-01-01', '2021-01-01'),
      tablets('risedronate', '2020-07-01', '2021-07-01'),
    ];
    expect(course(two).tabletDays).toBe(day('2021-07-01') - day('2020-01-01'));
    const withDose = [...two, dose('2021-01-01', 'zoledronic acid 5 mg')];
    expect(course(withDose).bisphosphonateDays).toBe(day('2022-01-01') - day('2020-01-01'));
    expect(course([...withDose, dose('2022-01-01', 'denosumab 60 mg')]).bisphosphonateDays).toBe(
      day('2022-01-01') - day('2020-01-01'),
    );
  });
  test('what is still at work counts up to the day asked', () => {
    const last = dose('2026-06-01', 'zoledronic acid 5 mg');
    expect(course([last]).bisphosphonateDays).toBe(asked - day('2026-06-01'));
    expect(addMonths(day('2026-06-01'), 12)).toBeGreaterThan(asked);
  });
});
