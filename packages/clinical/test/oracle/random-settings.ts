/** What the checker and the engine are given beside a random ledger: rule sheets and blood days, drawn from the same seed. */
import { type NumberKey, type ProtocolSheet, type UnitCalendar, everyDay, teachingSheet } from '@twelvemonth/clinical';
import { dateText, isoWeekday } from './dates.ts';
import type { Dice } from './dice.ts';

export type Settings = {
  readonly sheet: ProtocolSheet;
  readonly calendar: UnitCalendar;
  /** Another version of the rule sheet, in force from a later day. */
  readonly next: { readonly from: number; readonly sheet: ProtocolSheet } | undefined;
  /** What differs from the teaching sheet and from "every day is a blood day". */
  readonly setting: string;
};

/** The rule sheet and the calendar of a case, now and then others than the teaching sheet and "every day is a blood day". */
export function settings(dice: Dice, from: number): Settings {
  const said: string[] = [];
  let sheet: ProtocolSheet = teachingSheet;
  if (dice.chance(0.2)) {
    sheet = { ...sheet, resultDaysCounted: 'working days' };
    said.push('result days are working days');
  }
  if (dice.chance(0.15)) {
    sheet = { ...sheet, vitaminDPolicy: 'load without a level' };
    said.push('load without a level');
  }
  if (dice.chance(0.12)) {
    sheet = { ...sheet, hipRepairNeedsLoading: true };
    said.push('hip repair needs loading');
  }
  const closed = [from + dice.whole(0, 10), from + dice.whole(0, 40), from + 3];
  const weekdays = dice.oneOf([
    [1, 2, 3, 4, 5, 6, 7],
    [1, 2, 3, 4, 5, 6, 7],
    [1, 2, 3, 4, 5],
    [2],
    [isoWeekday(from)],
    [2, 4],
  ]);
  const calendar =
    weekdays.length === 7 && dice.chance(0.8)
      ? everyDay
      : { ...everyDay, bloodWeekdays: weekdays, closedDays: closed as unknown as UnitCalendar['closedDays'] };
  if (calendar !== everyDay)
    said.push(`blood weekdays ${weekdays.join(' ')}`, `closed ${closed.map(dateText).join(' ')}`);
  const next = dice.chance(0.1) ? { from: from + dice.whole(-3, 70), sheet: stricter(sheet) } : undefined;
  if (next !== undefined) said.push(`stricter from ${dateText(next.from)}`);
  return { sheet, calendar, next, setting: said.join('; ') };
}

/** The newer policies, thrown with dice of their own. */
export function withPolicies(settings: Settings, dice: Dice): Settings {
  const said: string[] = settings.setting === '' ? [] : [settings.setting];
  let { sheet } = settings;
  if (dice.chance(0.15)) {
    sheet = { ...sheet, dentalCheck: 'demanded' };
    said.push('a dental check is demanded');
  }
  if (dice.chance(0.2)) {
    const weightThatDecides = dice.oneOf(['ideal', 'adjusted'] as const);
    sheet = { ...sheet, weightThatDecides };
    said.push(`the ${weightThatDecides} weight decides`);
  }
  const { next } = settings;
  const later = next && { ...next, sheet: { ...next.sheet, weightThatDecides: sheet.weightThatDecides } };
  return { ...settings, sheet, next: later, setting: said.join('; ') };
}

/** Every number that decides moved to the stricter side, so that a verdict tells by which version it was given. */
function stricter(sheet: ProtocolSheet): ProtocolSheet {
  const numbers = { ...sheet.numbers };
  const moved: Partial<Record<NumberKey, string>> = {
    clearanceFloor: '38',
    creatinineRise: '20',
    bloodsValidDays: '42',
    weightValidDays: '60',
    vitaminDFloor: '60',
    vitaminDFloorNgPerMl: '24',
    vitaminDValidDays: '300',
    calciumLow: '2.25',
    calciumHigh: '2.55',
    hipRepairDays: '28',
    pregnancyAnswerDays: '7',
    maintenanceConfirmDays: '90',
    surgerySampleDays: '20',
    wellDaysBeforeSample: '5',
    calciumAfterLoadingDays: '14',
  };
  for (const key of Object.keys(moved) as NumberKey[]) numbers[key] = { ...numbers[key], value: moved[key] ?? null };
  return { ...sheet, numbers, regimens: sheet.regimens.map((regimen) => ({ ...regimen, intervalMonths: 13 })) };
}
