/** Watched after the dose: first-timers longer, by the protocol; and how they are goes with them to the door. Hazard 89. */
import { type Act, factsOf } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

// 30 and 15 minutes: numbers of the teaching protocol, common practice, no source.
function given(unit = onTheDay()): DayUnit {
  unit.running().wait(31);
  unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
  unit.write('dana', 'cannula-removed', { site: 'looks well' });
  return unit;
}
const watched = (minutes: number, confirms?: readonly string[]): Act => ({
  name: 'record',
  patient: 'p1',
  line: { kind: 'observed', body: { minutes, well: true }, effectiveAt: '2026-11-26' },
  ...(confirms === undefined ? {} : { confirms }),
});

describe('a watch shorter than the protocol’s', () => {
  test('after a first dose 29 minutes are asked about, 30 are not', () => {
    const [asked] = given().do('dana', watched(29));
    expect([asked?.name, asked?.field, asked?.says]).toEqual([
      'is-it-right',
      'line.body.minutes',
      'You typed 29 minutes; the protocol watches 30 after a first dose: were they watched no longer?',
    ]);
    expect(given().refused('dana', watched(30))).toEqual([]);
  });
  test('after a later dose 14 are, 15 are not', () => {
    const later = (): DayUnit => {
      const unit = onTheDay();
      unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' }, '2025-11-20');
      return given(unit);
    };
    expect(later().do('dana', watched(14))[0]?.says).toContain('the protocol watches 15 after a later dose');
    expect(later().refused('dana', watched(15))).toEqual([]);
  });
  test('it may be true, and is written once somebody says so', () => {
    const unit = given();
    const [asked] = unit.do('dana', watched(10));
    expect(unit.refused('dana', watched(10, [asked?.says ?? '']))).toEqual([]);
    expect(factsOf(unit.patient(), 'observed')).toHaveLength(1);
  });
});

test('not well at the watch and fit at the door is asked about; taken over by others is not', () => {
  const unit = given();
  unit.write('dana', 'observed', { minutes: 30, well: false, note: 'faint when standing' });
  const [asked] = unit.line('dana', 'left', { cardGiven: true, leaves: 'fit to go' });
  expect([asked?.name, asked?.field, asked?.says]).toEqual([
    'is-it-right',
    'line.body.leaves',
    'The watch after the dose says that they were not well: are they fit to go now?',
  ]);
  expect(unit.line('dana', 'left', { cardGiven: true, leaves: 'taken over by others', note: 'ward 4' })).toEqual([]);
});
