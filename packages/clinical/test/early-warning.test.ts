/**
 * NEWS2 of observations in the notes (Royal College of Physicians 2017, chart read; rows N1-N11 and vectors in formulas/news2.test.ts):
 * incomplete has no total, scale 2 only on a recorded decision, not under 16 and not in pregnancy (from memory).
 */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  bodyKidneysBone,
  day,
  earlyWarningFor,
  earlyWarningSays,
  teaching,
} from '@twelvemonth/clinical';
import { type Line, at, born, personOf } from './person.ts';

const on = '2026-11-25';
const woman = born('1947-06-02');
const whole: BodyOfKind<'observations'> = {
  pulsePerMinute: 80,
  systolicMmHg: 130,
  temperatureCelsius: 36.8,
  saturationPercent: 89,
  breathsPerMinute: 16,
  onOxygen: false,
  consciousness: 'alert',
  when: 'before',
};
const says = (observed: BodyOfKind<'observations'>, ...lines: readonly Line[]) =>
  earlyWarningSays(observed, earlyWarningFor(personOf([woman, ...lines]), day(on)));
const scale2 = (decidedOn: string): Line =>
  at(decidedOn, 'prescriber-decision', {
    question: 'saturation on scale 2',
    about: 'o1',
    reason: 'hypercapnic respiratory failure, target 88 to 92 %',
  });

describe('the score of observations', () => {
  test('N4: 89 % on air is a 3 in one parameter on scale 1', () => {
    expect(says(whole)).toBe('3, low to medium risk, a 3 in one parameter: saturation 3 (saturation on scale 1)');
  });
  test('N5: on scale 2, once a prescriber decided it, the same is nought', () => {
    expect(says(whole, scale2('2026-11-01'))).toBe(
      '0, low risk (saturation on scale 2, as a prescriber decided on 1 Nov 2026)',
    );
  });
  test('a decision of a later day does not change it', () => {
    expect(says(whole, scale2('2026-11-26'))).toContain('3, low to medium risk');
  });
  test('a decision about something else does not open scale 2', () => {
    const other = at('2026-11-01', 'prescriber-decision', { question: 'switch agreed', about: 'd1', reason: 'agreed' });
    expect(says(whole, other)).toContain('saturation on scale 1');
  });
  test.each([
    ['breathsPerMinute', 'breaths'],
    ['saturationPercent', 'saturation'],
    ['onOxygen', 'air or oxygen'],
    ['systolicMmHg', 'systolic pressure'],
    ['pulsePerMinute', 'pulse'],
    ['consciousness', 'consciousness'],
    ['temperatureCelsius', 'temperature'],
  ] as const)('without %s there is no total, and it says that %s is missing', (parameter, word) => {
    const { [parameter]: _, ...rest } = whole;
    expect(says(rest as typeof whole)).toBe(`no total: ${word} missing`);
  });
  test.each([
    ['newly confused', '3'],
    ['responds to voice', '3'],
    ['responds to pain', '3'],
    ['unresponsive', '3'],
    ['alert', '0'],
  ] as const)('%s scores %s', (consciousness, score) => {
    expect(says({ ...whole, saturationPercent: 97, consciousness })).toMatch(new RegExp(`^${score}, `));
  });
  test('it is not for people under 16, in pregnancy, or of an age that is not known', () => {
    const of = (...lines: readonly Line[]) => earlyWarningSays(whole, earlyWarningFor(personOf(lines), day(on)));
    expect(of(born('2010-11-26'))).toBe('no total: it is not for people under 16');
    expect(of(born('2010-11-25'))).toContain('low to medium risk');
    expect(of(born('1990-01-01'), at('2026-11-01', 'pregnancy', { answer: 'pregnant' }))).toContain(
      'not for pregnancy',
    );
    expect(of(born('1941'))).toBe('no total: the birth date is not known');
  });
  test('it stands in the reading of the person, and is gone where nobody observed', () => {
    const reading = (...lines: readonly Line[]) =>
      bodyKidneysBone(personOf([woman, ...lines]), teaching, day(on)).find(({ title }) => title === 'Observations');
    expect(reading(at(on, 'observations', whole))?.lines[1]).toMatchObject({
      what: 'NEWS2',
      is: '3, low to medium risk, a 3 in one parameter: saturation 3 (saturation on scale 1)',
    });
    expect(reading()).toBeUndefined();
  });
});
