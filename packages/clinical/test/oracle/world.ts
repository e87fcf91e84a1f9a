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

export type Regimen = ProtocolSheet['regimens'][number];

/** R0: the regimen of an order, the sheet's first without one of that name, with its numbers and questions in their places. */
export function underRegimen(
  world: World,
  named: string | undefined,
): { readonly world: World; readonly regimen: Regimen } {
  const { sheet, calendar } = world;
  const regimen = sheet.regimens.find(({ id }) => id === named) ?? sheet.regimens[0];
  if (regimen === undefined) throw new RangeError('a rule sheet without a regimen');
  const own = Object.keys(regimen.numbers).length + regimen.dayQuestions.length;
  if (own === 0) return { world, regimen };
  const numbers: ProtocolSheet['numbers'] = { ...sheet.numbers, ...regimen.numbers };
  const dayQuestions = [...sheet.dayQuestions, ...regimen.dayQuestions];
  return { world: worldOf({ ...sheet, numbers, dayQuestions }, calendar), regimen };
}

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
