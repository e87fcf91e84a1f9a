/** How soon a second check followed its preparation (hazard 27). That seconds are no reading: common practice, no source. */
import { day, untilChecked, visitOn } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './decide/a-day-unit.ts';

const today = '2026-11-26';
const preparation = {
  product: 'zoledronic acid 5 mg in 100 mL',
  batch: 'PA-2391',
  expiresOn: '2028-04-30',
  minutes: 30,
  identifiers: ['full name', 'birth date'],
  clearAndColourless: true,
};
/** Prepared at 08:50:00, said to have been at `said`. */
function prepared(said: string): DayUnit {
  const unit = onTheDay().go();
  unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
  unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
  unit.at(`${today}T08:50:00.000Z`).write('dana', 'preparation', preparation, said);
  return unit;
}
function secondsOf(unit: DayUnit): number | undefined {
  const { preparation: first, check } = visitOn(unit.patient(), day(today)) ?? {};
  if (first === undefined || check === undefined) throw new Error('not prepared and checked');
  const milliseconds = untilChecked(first, check);
  return milliseconds === undefined ? undefined : milliseconds / 1000;
}
const checkedAt = (unit: DayUnit, time: string): DayUnit => {
  const at = unit.at(`${today}T${time}Z`);
  at.expect('imre', at.check());
  return at;
};

describe('from the preparation to the signature', () => {
  test.each([
    ['08:50:06.500', 6.5],
    ['08:54:00.000', 240],
  ] as const)('signed at %s: %d s', (time, seconds) => {
    expect(secondsOf(checkedAt(prepared(`${today}T08:50:00.000+00:00`), time))).toBe(seconds);
  });
  test.each([
    ['a preparation written later than it was made', `${today}T08:46:00.000+00:00`],
    ['a preparation of which only the day is said', today],
  ])('%s: not known, never nought', (_, said) => {
    expect(secondsOf(checkedAt(prepared(said), '08:50:06.500'))).toBeUndefined();
  });
  test('a signature on paper: not known', () => {
    const unit = prepared(`${today}T08:50:00.000+00:00`).at(`${today}T08:52:00.000Z`);
    unit.expect('dana', {
      ...unit.check(),
      name: 'second check',
      signedOnPaperBy: 'imre',
      happenedAt: `${today}T08:51:30.000+00:00`,
    } as never);
    expect(secondsOf(unit)).toBeUndefined();
  });
});
