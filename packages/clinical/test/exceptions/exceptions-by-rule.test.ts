/** Exceptions counted by rule: those that became a habit can be seen (hazard 61). Counted by hand. */
import { expect, test } from 'vitest';
import { type PlainDate, day, exceptionsByRule } from '@twelvemonth/clinical';
import { type Line, at, personOf } from './../person.ts';

type Rule = 'vitamin D' | 'teeth and jaw';
const exception = (on: string, requirement: Rule, expiresOn: string): Line =>
  at(on, 'prescriber-exception', { requirement, reason: 'looked at her', expiresOn: expiresOn as PlainDate });
const dose = (on: string, setting: 'this service' | 'ward' = 'this service'): Line =>
  at(on, 'dose', { medicine: 'zoledronic acid 5 mg', setting });
const year = (...people: readonly Line[][]) =>
  exceptionsByRule(
    people.map((lines) => personOf(lines)),
    day('2026-01-01'),
    day('2026-12-31'),
  );

test('without an exception there is only the number of doses given here in those days', () => {
  expect(year([dose('2026-03-04')], [dose('2025-12-31'), dose('2026-05-01', 'ward')], [])).toEqual({
    doses: 1,
    rules: [],
  });
});

test('written, people and doses given while one stood, each rule for itself, the most written first', () => {
  const twice = [
    exception('2026-02-01', 'vitamin D', '2026-02-20'),
    exception('2026-06-01', 'vitamin D', '2026-06-20'),
    dose('2026-06-20'),
  ];
  const both = [
    exception('2026-03-01', 'vitamin D', '2026-03-10'),
    exception('2026-03-01', 'teeth and jaw', '2026-04-01'),
    dose('2026-03-11'),
  ];
  expect(year(twice, both, [dose('2026-09-09')])).toEqual({
    doses: 3,
    rules: [
      { requirement: 'vitamin D', written: 3, people: 2, doses: 1 },
      { requirement: 'teeth and jaw', written: 1, people: 1, doses: 1 },
    ],
  });
});

test('one written before these days counts for the dose that was given under it in them', () => {
  expect(year([exception('2025-12-20', 'vitamin D', '2026-01-10'), dose('2026-01-05')]).rules).toEqual([
    { requirement: 'vitamin D', written: 0, people: 0, doses: 1 },
  ]);
});
