/** What the checker is given beside the ledger: the rule sheet's numbers, read its own way, and the unit's calendar. */
import type { NumberKey, ProtocolSheet, UnitCalendar } from '@twelvemonth/clinical';
import { isoWeekday } from './dates.ts';
import { type Fraction, exactly } from './fraction.ts';

export type World = {
  readonly sheet: ProtocolSheet;
  readonly calendar: UnitCalendar;
  /** Days, months and counts. */
  readonly count: (key: NumberKey) => number;
  /** Limits, exactly. */
  readonly limit: (key: NumberKey) => Fraction;
};

export function worldOf(sheet: ProtocolSheet, calendar: UnitCalendar): World {
  const counts = new Map<NumberKey, number>();
  const limits = new Map<NumberKey, Fraction>();
  for (const [key, { value }] of Object.entries(sheet.numbers) as [NumberKey, { value: string | null }][]) {
    counts.set(key, Number(value));
    limits.set(key, exactly(value ?? '0'));
  }
  return {
    sheet,
    calendar,
    count: (key) => counts.get(key) ?? 0,
    limit: (key) => limits.get(key) ?? exactly('0'),
  };
}

const isOpen = (world: World, day: number): boolean => !(world.calendar.closedDays as readonly number[]).includes(day);

export const isBloodDay = (world: World, day: number): boolean =>
  world.calendar.bloodWeekdays.includes(isoWeekday(day)) && isOpen(world, day);

/** First day on which a sample of `drawn` may be used. */
export function usableFrom(world: World, drawn: number): number {
  const days = world.count('resultDays');
  if (world.sheet.resultDaysCounted === 'calendar days') return drawn + days;
  let on = drawn;
  for (let counted = 0; counted < days;) {
    on += 1;
    if (isoWeekday(on) <= 5 && isOpen(world, on)) counted += 1;
  }
  return on;
}
