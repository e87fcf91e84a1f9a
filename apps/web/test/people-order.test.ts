/** The list of people: sorted and narrowed without losing anyone. */
import type { PersonRow } from '@twelvemonth/exchange';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { narrowed, ordered, orders } from '../src/people/people-order.ts';

const row = (name: string, more: Partial<PersonRow> = {}): PersonRow => ({
  patient: name,
  name,
  number: '999 000 0000',
  born: '1941-06-02',
  unit: 'thornbeck',
  standing: { standing: 'booked', says: 'booked', owner: 'nurse', unit: 'thornbeck', since: '2026-01-01' },
  verdict: 'ready',
  headline: 'ready',
  dose: 'dose 2 of 3',
  firstTimer: false,
  ...more,
});
const place = (on: string) => ({ session: 's', unit: 'thornbeck', on, arriveAt: '09:00', place: 1 });

test('whoever comes first stands first; care that has ended stands last', () => {
  const rows = [
    row('gone', {
      standing: { standing: 'died', says: 'died', owner: 'nobody', unit: 'thornbeck', since: '2020-01-01' },
    }),
    row('later', { place: place('2027-02-01') }),
    row('sooner', { place: place('2026-12-01') }),
  ];
  expect(ordered(rows, 'by date').map(({ name }) => name)).toEqual(['sooner', 'later', 'gone']);
});

test('people under treatment come before those who cannot be reached, however long ago that was', () => {
  const standing = (name: string, on?: string) => ({
    standing: {
      standing: name,
      says: name,
      owner: 'nurse',
      unit: 'thornbeck',
      since: '2020-01-01',
      ...(on === undefined ? {} : { on }),
    },
  });
  const rows = [
    row('lost since 2021', standing('cannot be reached', '2021-03-01')),
    row('in work-up', standing('in work-up', '2026-12-04')),
    row('nobody owns this one', standing('not accounted for', '2026-01-01')),
  ];
  expect(ordered(rows, 'by date').map(({ name }) => name)).toEqual([
    'nobody owns this one',
    'in work-up',
    'lost since 2021',
  ]);
});

test('no order loses or doubles anyone', () => {
  const people = fc.array(
    fc.record({
      name: fc.string({ minLength: 1, maxLength: 8 }),
      on: fc.constantFrom('2026-12-01', '2027-01-05', undefined),
    }),
    { maxLength: 40 },
  );
  fc.assert(
    fc.property(people, fc.constantFrom(...(Object.keys(orders) as (keyof typeof orders)[])), (made, order) => {
      const rows = made.map(({ name, on }, index) =>
        row(`${name}${index}`, on === undefined ? {} : { place: place(on) }),
      );
      expect(new Set(ordered(rows, order))).toEqual(new Set(rows));
      expect(ordered(rows, order)).toHaveLength(rows.length);
    }),
    { seed: 26 },
  );
});

test('narrowing by standing and verdict keeps exactly those', () => {
  const rows = [row('a'), row('b', { verdict: 'not ready' })];
  expect(narrowed(rows, { standing: 'booked', verdict: 'not ready' }).map(({ name }) => name)).toEqual(['b']);
  expect(narrowed(rows, { standing: undefined, verdict: undefined })).toEqual(rows);
});
