/**
 * Medicines that raise creatinine and harm no kidney: trimethoprim, cimetidine, fenofibrate, cobicistat, dolutegravir (clinical sheet
 * P10, from memory). A caution at the clearance; the verdict is what it is without them.
 */
import { describe, expect, test } from 'vitest';
import { creatinine, judged, person, verdict, woman70 } from './kidney-person.ts';
import { type Line, at, weighed } from './person.ts';

const taken = (name: string, on: string, more: object = {}): Line =>
  at(on, 'medicine', { name, sort: 'other', ...more });
const cautions = (lines: readonly Line[]): readonly string[] =>
  judged(lines)
    .working()
    .cautions.filter((caution) => caution.includes('without harm'));

describe('taken when the sample was', () => {
  test.each([
    'trimethoprim 200 mg',
    'Co-trimoxazole',
    'cimetidine',
    'Fenofibrate 160 mg',
    'cobicistat',
    'dolutegravir 50 mg',
  ])('%s is told at the clearance', (name) =>
    expect(cautions([...person('60', '70'), taken(name, '2026-11-01')])).toEqual([
      `${name}, recorded from 1 Nov 2026, can raise creatinine without harm to the kidneys: the clearance by the sample of 20 Nov 2026 may read too low. The limit stands; a prescriber decides whether to sample again without it.`,
    ]),
  );
  test('begun on the day of the sample, and stopped on it: told', () =>
    expect(
      cautions([...person('60', '70'), taken('cimetidine', '2026-11-20', { stoppedOn: '2026-11-20' })]),
    ).toHaveLength(1));
  test('told once, by its newest entry', () => {
    const twice = [...person('60', '70'), taken('cimetidine', '2026-01-01'), taken('Cimetidine', '2026-11-01')];
    expect(cautions(twice)).toHaveLength(1);
    expect(cautions(twice)[0]).toContain('recorded from 1 Nov 2026');
    expect(cautions([...twice, taken('cimetidine', '2026-11-10', { stoppedOn: '2026-11-10' })])).toEqual([]);
  });
});

test.each([
  ['stopped the day before the sample', taken('trimethoprim', '2026-11-01', { stoppedOn: '2026-11-19' })],
  ['begun after it', taken('trimethoprim', '2026-11-21')],
  ['another medicine', taken('amoxicillin', '2026-11-01')],
])('%s: nothing is told', (_, line) => expect(cautions([...person('60', '70'), line])).toEqual([]));

test('without a creatinine there is nothing to say of it', () =>
  expect(cautions([woman70, weighed('2026-11-20', '60'), taken('trimethoprim', '2026-11-01')])).toEqual([]));

test('it makes nobody ready and nobody less so', () => {
  const trimethoprim = taken('trimethoprim', '2026-11-01');
  for (const [kg, umol] of [
    ['60', '70'],
    ['50', '130'],
    ['50', '104'],
  ] as const)
    expect(verdict([...person(kg, umol), trimethoprim])).toBe(verdict(person(kg, umol)));
  const risen = [
    woman70,
    weighed('2026-11-20', '70'),
    ...creatinine('60 umol/L', '2026-08-01'),
    ...creatinine('90 umol/L'),
  ];
  expect(verdict([...risen, trimethoprim])).toBe('cannot say');
});
