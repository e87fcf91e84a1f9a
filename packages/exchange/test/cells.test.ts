import { DECIMAL_PLACES, day, shortDate } from '@twelvemonth/clinical';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDate } from '../src/register/cell-date.ts';
import { readName } from '../src/register/cell-name.ts';
import { readNumber } from '../src/register/cell-number.ts';
import type { DateOrder } from '../src/index.ts';
import { today } from './bring-in.ts';

const read = (text: string, order: DateOrder = 'day month year', use: 'birth' | 'event' = 'event'): string => {
  const result = readDate(text, { order, use, today });
  if (result.read === 'date') return shortDate(result.day);
  if (result.read === 'two dates') return `${shortDate(result.first)} or ${shortDate(result.second)}`;
  if (result.read === 'part') return result.text;
  return result.read === 'day number' ? `day number, ${shortDate(result.day)}` : result.read;
};

describe('a date as people write it', () => {
  it.each([
    ['03/04/2024', 'day month year', '3 Apr 2024'],
    ['03/04/2024', 'month day year', '4 Mar 2024'],
    ['03/04/2024', 'not known', '3 Apr 2024 or 4 Mar 2024'],
    ['13/04/2024', 'not known', '13 Apr 2024'],
    ['04/13/2024', 'not known', '13 Apr 2024'],
    ['04/04/2024', 'not known', '4 Apr 2024'],
    ['13/04/2024', 'month day year', 'no such date'],
    ['31.02.1944', 'day month year', 'no such date'],
    ['29/02/2023', 'day month year', 'no such date'],
    ['29/02/2024', 'day month year', '29 Feb 2024'],
    ['2024-04-03', 'month day year', '3 Apr 2024'],
    ['2024-04-03T00:00:00', 'day month year', '3 Apr 2024'],
    ['2024/4/3 14:05', 'day month year', '3 Apr 2024'],
    ['20240403', 'day month year', '3 Apr 2024'],
    ['24-04-03', 'year month day', '3 Apr 2024'],
    ['3 April 2024', 'not known', '3 Apr 2024'],
    ['3-Apr-24', 'not known', '3 Apr 2024'],
    ['3rd Sept 2024', 'not known', '3 Sep 2024'],
    ['Apr 3, 2024', 'not known', '3 Apr 2024'],
    ['Wed 3 Apr 2024', 'not known', '3 Apr 2024'],
    ['April 2024', 'day month year', '2024-04'],
    ['1941', 'day month year', '1941'],
    ['06/1941', 'day month year', '1941-06'],
    ['last spring', 'day month year', 'not a date'],
    ['3 Brumaire 2024', 'day month year', 'not a date'],
    // 45385 is 3 April 2024 in the usual count of spreadsheets (day 1 = 1 January 1900, with its 29 February 1900; from memory).
    ['45385', 'day month year', 'day number, 3 Apr 2024'],
  ] as const)('%s, %s: %s', (text, order, expected) => {
    expect(read(text, order)).toBe(expected);
  });

  it.each([
    ['02/06/41', 'birth', '2 Jun 1941'],
    ['02/06/05', 'birth', '2 Jun 2005'],
    ['02/06/10', 'birth', 'no such date'],
    ['02/06/24', 'event', '2 Jun 2024'],
    ['02/06/27', 'event', '2 Jun 2027'],
    ['02/06/98', 'event', '2 Jun 1998'],
  ] as const)('a year of two figures, %s of a %s: %s', (text, use, expected) => {
    expect(read(text, 'day month year', use)).toBe(expected);
  });

  it('reads back every date of the last century in every order it could have been written in, as Temporal writes it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 36524 }), fc.constantFrom('/', '.', '-'), (offset, between) => {
        const date = Temporal.PlainDate.from('1926-11-25').add({ days: offset });
        const [y, m, d] = [date.year, String(date.month).padStart(2, '0'), String(date.day).padStart(2, '0')];
        const iso = shortDate(day(date.toString()));
        expect(read([d, m, y].join(between), 'day month year')).toBe(iso);
        expect(read([m, d, y].join(between), 'month day year')).toBe(iso);
        expect(read([y, m, d].join(between), 'not known')).toBe(iso);
        expect(read([d, m, y].join(between), 'not known')).toContain(iso);
      }),
      { seed: 20261125 },
    );
  });

  it('never throws, whatever the cell', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 30 }),
        fc.constantFrom<DateOrder>('day month year', 'month day year', 'year month day', 'not known'),
        (text, order) => {
          expect(typeof read(text, order)).toBe('string');
        },
      ),
      { seed: 20261126 },
    );
  });
});

const numberIn = (
  cell: string,
  measure: Parameters<typeof readNumber>[1] = 'creatinine',
  decimal: ',' | '.' = '.',
): string => {
  const result = readNumber(cell, measure, decimal);
  return 'value' in result
    ? `${result.comparator}${result.value}${result.ownUnit === undefined ? '' : ` ${result.ownUnit}`}`
    : result.problem;
};

describe('a measured value as people write it', () => {
  it.each([
    ['88', '88'],
    ['2.20', '2.20'],
    ['<20', '<20'],
    ['≤ 20', '<=20'],
    ['> 90', '>90'],
    ['88 umol/L', '88 umol/L'],
    ['88µmol/l', '88 umol/L'],
    ['88 kg', 'unit-of-something-else'],
    ['2,31', 'decimal-comma'],
    ['1,234.5', 'decimal-comma'],
    ['8O', 'letter-for-figure'],
    ['l02', 'letter-for-figure'],
    ['70-75', 'number-not-read'],
    ['about 80', 'number-not-read'],
    ['-5', 'number-not-read'],
    ['1.23456', 'too-many-decimals'],
    ['58.40000', '58.4000'],
    ['=1+1', 'number-not-read'],
  ])('%s: %s', (cell, expected) => {
    expect(numberIn(cell)).toBe(expected);
  });

  it('reads commas as points only where the mapping says so', () => {
    expect([numberIn('2,31', 'calcium', ','), numberIn('2.31', 'calcium', ',')]).toEqual(['2.31', 'decimal-point']);
  });

  it.each([
    // 14 pounds to the stone, 12 inches to the foot: exact by definition.
    ['9st 4lb', 'weight', '130 lb'],
    ['9 st', 'weight', '126 lb'],
    ['9st 15lb', 'weight', 'number-not-read'],
    ['130lb', 'weight', '130 lb'],
    ['5\'4"', 'height', '64 in'],
    ['5ft 4in', 'height', '64 in'],
    ['1.62 m', 'height', '162 cm'],
  ] as const)('%s of %s: %s', (cell, measure, expected) => {
    expect(numberIn(cell, measure)).toBe(expected);
  });

  it('keeps the figures of every number the record can hold', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 9_999_999 }),
        fc.stringMatching(new RegExp(`^[0-9]{0,${DECIMAL_PLACES}}$`)),
        fc.constantFrom('', '<', '>', '<=', '>='),
        (whole, decimals, comparator) => {
          const text = `${comparator}${whole}${decimals === '' ? '' : `.${decimals}`}`;
          expect(numberIn(text)).toBe(text);
          expect(numberIn(text.replace('.', ','), 'creatinine', ',')).toBe(text);
        },
      ),
      { seed: 20261127 },
    );
  });
});

describe('a name in one cell', () => {
  it.each([
    ['PELLING, Rosamund', 'PELLING', 'Rosamund', undefined, false],
    ['Rosamund PELLING', 'PELLING', 'Rosamund', undefined, false],
    ['Mrs Rosamund Pelling', 'Pelling', 'Rosamund', 'Mrs', true],
    ['Pelling, Mrs Rosamund', 'Pelling', 'Rosamund', 'Mrs', false],
    ['Pelling, Rosamund (Mrs)', 'Pelling', 'Rosamund', 'Mrs', false],
    ['Odile van der Merwe', 'van der Merwe', 'Odile', undefined, true],
    ['Anna Maria Tarn', 'Tarn', 'Anna Maria', undefined, true],
  ])('%s: family %s, given %s', (cell, family, given, title, supposed) => {
    expect(readName(cell)).toEqual({ family, given, title, supposed });
  });

  it('does not make up a second name', () => {
    expect([readName('Pelling'), readName('Mrs Pelling'), readName(', Rosamund'), readName('')]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});
