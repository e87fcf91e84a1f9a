/**
 * The look at the cannula's site while the medicine runs. Swelling or pain is infiltration until shown otherwise (safety page,
 * "The day"); the score is that of Jackson 1998, whose own table is checked in formulas/phlebitis.test.ts; five minutes are
 * common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { day, entryText, runningTime, starterSheet, teaching, visitOn } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay, resumeInfusion } from './a-day-unit.ts';

const infusion = (unit: DayUnit) => {
  const found = visitOn(unit.patient(), day(unit.today()))?.infusion;
  if (found === undefined) throw new Error('no infusion');
  return found;
};
const pause = { name: 'pause infusion', patient: 'p1', reason: 'swelling or pain at the site' } as const;

describe('when the site is looked at', () => {
  test('a starter names the minutes as a suggestion without a source, never as a rule', () => {
    expect(starterSheet.numbers.siteCheckMinutes).toMatchObject({
      value: null,
      suggestion: '5',
      status: 'common practice, no source',
    });
    expect(teaching.number.siteCheckMinutes).toBe(5);
  });
  test('not before the infusion has started', () => {
    const unit = onTheDay().go().prepared();
    expect(unit.line('dana', 'site-check', { looks: 'well' }).map(({ name }) => name)).toEqual(['step-out-of-order']);
  });
  test('nobody has found it well until somebody has looked', () => {
    const unit = onTheDay().running().wait(5);
    expect(infusion(unit).siteWell).toBe(false);
    unit.write('dana', 'site-check', { looks: 'well' });
    expect(infusion(unit).siteWell).toBe(true);
  });
  test('a look changes nothing of the running time', () => {
    const unit = onTheDay().running().wait(5);
    const before = runningTime(infusion(unit).marks, unit.clock());
    unit.write('dana', 'site-check', { looks: 'well' });
    expect(runningTime(infusion(unit).marks, unit.clock())).toEqual(before);
    expect(infusion(unit).paused).toBeUndefined();
  });
  test('after a stop because of the site it is looked at again, whatever was found before', () => {
    const unit = onTheDay().running().wait(5);
    unit.write('dana', 'site-check', { looks: 'well' });
    unit.wait(2).expect('dana', pause);
    unit.write('dana', 'site-check', { looks: 'not well', seen: ['redness'] });
    expect(infusion(unit).siteWell).toBe(false);
    unit.expect('dana', resumeInfusion);
    expect(infusion(unit).siteWell).toBe(false);
    unit.write('dana', 'site-check', { looks: 'well' });
    expect(infusion(unit).siteWell).toBe(true);
  });
});

describe('what is seen', () => {
  const says = (seen: readonly string[]): string => {
    const unit = onTheDay().running().wait(5);
    unit.write('dana', 'site-check', { looks: 'not well', seen });
    return entryText(unit.newest('site-check'));
  };
  test('"not well" says what is seen, and "well" cannot carry a sign', () => {
    const unit = onTheDay().running();
    expect(unit.line('dana', 'site-check', { looks: 'not well', seen: [] })).not.toEqual([]);
    expect(unit.line('dana', 'site-check', { looks: 'well', seen: ['pain'] })).not.toEqual([]);
  });
  test.each([
    [['redness'], '1, possible first signs'],
    [['pain', 'redness'], '2, early phlebitis'],
    [['pain along the cannula', 'redness', 'hardening'], '3, medium stage of phlebitis'],
    [['pain along the cannula', 'redness', 'hardening', 'a cord along the vein'], '4, advanced phlebitis'],
    [
      ['pain along the cannula', 'redness', 'hardening', 'a cord along the vein', 'fever'],
      '5, advanced thrombophlebitis',
    ],
  ])('%j is told with its score and the name of the scale', (seen, score) => {
    expect(says(seen)).toContain(`0 to 5 (Jackson 1998): ${score}`);
  });
  test('swelling or pain is called infiltration until shown otherwise, however low the score', () => {
    expect(says(['swelling'])).toMatch(/infiltration until shown otherwise.*: 1, possible first signs/);
    expect(says(['redness'])).not.toMatch(/infiltration/);
  });
});
