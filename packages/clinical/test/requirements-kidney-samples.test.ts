/** Which creatinine and weight count for the kidney function, and until when (docs/readiness.md R1, R2). Asked on 25 November 2026 under the teaching protocol. */
import { describe, expect, test } from 'vitest';
import { addDays, day, shortDate } from '@twelvemonth/clinical';
import { creatinine, judged, person, verdict, woman70 } from './kidney-person.ts';
import { type Line, at, weighed } from './person.ts';

describe('in date', () => {
  const lines = person('60', '70');
  test('bloods count 56 days from the sample, that day included, and not one more', () => {
    const last = addDays(day('2026-11-20'), 56);
    expect([verdict(lines, last), verdict(lines, addDays(last, 1))]).toEqual(['ready', 'cannot say']);
    expect(judged(lines, addDays(last, 1)).cause).toBe('bloods of 20 Nov 2026 out of date');
  });
  test('a weight counts 90 days, and not one more', () => {
    const old = [woman70, weighed('2026-09-01', '60'), ...creatinine('70 umol/L')];
    const last = addDays(day('2026-09-01'), 90);
    expect([verdict(old, last), verdict(old, addDays(last, 1))]).toEqual(['ready', 'cannot say']);
    expect(judged(old, addDays(last, 1)).cause).toBe(`weight of ${shortDate(day('2026-09-01'))} out of date`);
  });
  test('an exception for the age of bloods carries a passing value to its last day, and is shown', () => {
    const except = [
      ...lines,
      at(
        '2026-11-21',
        'prescriber-exception',
        { requirement: 'age of bloods', reason: 'cannot travel', expiresOn: '2027-01-31' as never },
        'x1',
      ),
    ];
    expect(judged(except, day('2027-01-31'))).toMatchObject({ verdict: 'ready', exception: 'x1' });
    expect(verdict(except, day('2027-02-01'))).toBe('cannot say');
    expect(judged(except, day('2027-01-15')).exception).toBeUndefined();
  });
  // Common practice, no source: the teaching protocol lets an exception last 90 days and carry bloods of up to 100 days.
  test('it lasts no longer than the protocol says, and carries bloods no older', () => {
    const madeOn = (on: string) => [
      woman70,
      ...creatinine('70 umol/L', '2026-10-01'),
      weighed('2026-11-20', '60'),
      at(on, 'prescriber-exception', {
        requirement: 'age of bloods',
        reason: 'cannot travel',
        expiresOn: '2099-01-01' as never,
      }),
    ];
    const on = (exceptionOf: string, ...dates: string[]) =>
      dates.map((date) => verdict(madeOn(exceptionOf), day(date)));
    // 5 October and 90 days; 1 October and 100 days.
    expect(on('2026-10-05', '2027-01-03', '2027-01-04')).toEqual(['ready', 'cannot say']);
    expect(on('2026-11-20', '2027-01-09', '2027-01-10')).toEqual(['ready', 'cannot say']);
  });
  test('it carries a failing value as failing: nobody makes an exception below 35', () => {
    const except = [
      ...person('49', '104'),
      at('2026-11-21', 'prescriber-exception', {
        requirement: 'age of bloods',
        reason: 'cannot travel',
        expiresOn: '2027-01-31' as never,
      }),
    ];
    expect(verdict(except, day('2027-01-31'))).toBe('not ready');
  });
});

describe('samples that do not count', () => {
  const well = (on: string) => at(on, 'well-since', {});
  const ill = (on: string) => at(on, 'illness', { what: 'chest infection', sort: 'illness' });
  test('an illness nobody has ended voids every sample, also one taken after it', () => {
    expect(judged([...person('60', '70'), ill('2026-11-10')])).toMatchObject({
      verdict: 'cannot say',
      cause: 'bloods of 20 Nov 2026 no longer count',
    });
  });
  test('samples count from two days after "well since"', () => {
    expect(verdict([...person('60', '70'), ill('2026-11-10'), well('2026-11-18')])).toBe('ready');
    expect(verdict([...person('60', '70'), ill('2026-11-10'), well('2026-11-19')])).toBe('cannot say');
  });
  test('a "well since" before the illness ends nothing', () => {
    expect(verdict([...person('60', '70'), well('2026-11-09'), ill('2026-11-10')])).toBe('cannot say');
  });
  test('samples count from eleven days after any operation, and none from before it', () => {
    const operation = (on: string) => at(on, 'surgery', { what: 'other operation' });
    expect(verdict([...person('60', '70'), operation('2026-11-09')])).toBe('ready');
    expect(verdict([...person('60', '70'), operation('2026-11-10')])).toBe('cannot say');
    expect(verdict([...person('60', '70'), operation('2026-11-22')])).toBe('cannot say');
  });
  test('a sample of an acute admission never counts', () => {
    const acute: Line = {
      on: '2026-11-21',
      kind: 'result',
      id: 'a',
      body: { analyte: 'creatinine', quantity: { comparator: '', value: '60', unit: 'umol/L' }, acuteAdmission: true },
    };
    expect(verdict([...person('60', '70'), acute, at('2026-11-21', 'results-signed', { results: ['a'] })])).toBe(
      'cannot say',
    );
  });
});
