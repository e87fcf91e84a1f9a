/** Days since a hip fracture was repaired (docs/readiness.md R5), day by day at its edges. Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import { day } from '@twelvemonth/clinical';
import { judge, verdictsOn, verdictOf, exceptionUntil } from './judging.ts';
import { at } from './person.ts';

describe('days since hip repair', () => {
  const repair = (on: string, what: 'hip repair' | 'hip re-operation' = 'hip repair') => at(on, 'surgery', { what });
  const fracture = (on: string, dateKnown = true) => at(on, 'fracture', { site: 'hip', dateKnown });
  test('no hip fracture: ready', () =>
    expect(verdictOf('hip-repair', [at('2026-11-20', 'fracture', { site: 'wrist', dateKnown: true })])).toBe('ready'));
  test('the 13th and the 14th day', () => {
    // clinical.md 8: repair 1 Mar 2026 -> earliest 15 Mar 2026. Here 20 Nov -> 4 Dec.
    expect(verdictsOn('hip-repair', [repair('2026-11-20')], '2026-12-03', '2026-12-04')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  test('a re-operation starts it again; another operation does not', () => {
    expect(
      verdictsOn(
        'hip-repair',
        [repair('2026-11-01'), repair('2026-11-20', 'hip re-operation')],
        '2026-12-03',
        '2026-12-04',
      ),
    ).toEqual(['not ready', 'ready']);
    expect(
      verdictOf('hip-repair', [repair('2026-11-01'), at('2026-11-20', 'surgery', { what: 'other operation' })]),
    ).toBe('ready');
  });
  const treated = (on: string, how: 'repaired' | 'not repaired' | 'not known', dateKnown = true) =>
    at(on, 'fracture', { site: 'hip', dateKnown, treated: how }, 'f');
  // safety.md: "not repaired or date unknown: cannot say, prescriber". A year makes no repair.
  test.each([
    ['not repaired', treated('2020-01-01', 'not repaired'), 'hip fracture, not repaired'],
    ['not known how', treated('2020-01-01', 'not known'), 'hip fracture, repair not recorded'],
    ['nobody says how', fracture('2020-01-01'), 'hip fracture, repair not recorded'],
    [
      'repaired, on a day nobody knows',
      treated('2020-01-01', 'repaired', false),
      'hip fracture of an unknown day, repair not recorded',
    ],
  ])('treated %s: cannot say without an end', (_, line, cause) => {
    expect(judge('hip-repair', [line]).on(day('2029-01-01'))).toMatchObject({ verdict: 'cannot say', cause });
    expect(verdictOf('hip-repair', [line], day('2036-01-01'))).toBe('cannot say');
    expect(verdictOf('hip-repair', [line, at('2020-01-03', 'surgery', { what: 'hip repair' })])).toBe('ready');
  });
  test('said to be repaired, without the day: asked about for a year', () => {
    expect(verdictsOn('hip-repair', [treated('2026-11-01', 'repaired')], '2027-11-01', '2027-11-02')).toEqual([
      'cannot say',
      'ready',
    ]);
  });
  test('a prescriber is asked, and has the last word about that fracture alone', () => {
    const line = treated('2026-03-01', 'not repaired');
    const path = judge('hip-repair', [line]).path(day('2030-01-01'));
    expect(path).toMatchObject({ is: 'blocked', by: { who: 'prescriber', step: 'prescriber decides' } });
    const looked = (about: string) =>
      at('2026-11-20', 'prescriber-decision', {
        question: 'hip fracture looked into',
        about,
        reason: 'undisplaced, treated without an operation, healed',
      });
    expect(verdictOf('hip-repair', [line, looked('f')])).toBe('ready');
    expect(verdictOf('hip-repair', [line, looked('g')])).toBe('cannot say');
    expect(verdictOf('hip-repair', [line, fracture('2026-11-10'), looked('f')])).toBe('cannot say');
  });
  test('a new fracture after an old repair: cannot say', () => {
    expect(verdictOf('hip-repair', [repair('2024-01-01'), fracture('2026-11-01')])).toBe('cannot say');
  });
  test("a prescriber's exception, to its last day, shown", () => {
    const lines = [repair('2026-11-20'), exceptionUntil('hip repair', '2026-11-30')];
    expect(judge('hip-repair', lines).on(day('2026-11-30'))).toMatchObject({ verdict: 'ready', exception: 'x' });
    expect(verdictOf('hip-repair', lines, day('2026-12-01'))).toBe('not ready');
  });
});
