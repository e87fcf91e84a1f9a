/**
 * The protocol the invented units have adopted. Its numbers are those of the worked cases in docs/readiness.md, so that the
 * people of the demo behave as the page says; a real unit starts from a starter sheet and decides its own.
 */
import { type Day, type ProtocolSheet, addDays, numberKeyNames, plainDate, teachingSheet } from '@twelvemonth/clinical';
import type { UnitId } from './staff.ts';

const titles: Readonly<Record<UnitId, string>> = { thornbeck: 'Thornbeck', saltmere: 'Saltmere' };

const REVIEW_AFTER_DAYS = 1095;

/** The n-th version of a unit's sheet, in force from a day. Older versions allowed bloods a shorter life. */
export function demoSheet(unit: UnitId, version: number, from: Day): ProtocolSheet {
  const numbers = { ...teachingSheet.numbers };
  for (const key of numberKeyNames) {
    numbers[key] = { value: numbers[key].value, source: 'invented for the demo scenario', status: 'local decision' };
  }
  return {
    ...teachingSheet,
    version: `${unit}-${version}`,
    title: `${titles[unit]} ${version}`,
    teachingOnly: false,
    reviewBy: plainDate(addDays(from, REVIEW_AFTER_DAYS)),
    numbers,
    cautions: [
      'Demo scenario: invented people, invented numbers. Never for a real person.',
      'It supports and never replaces the judgement of a licensed prescriber and your local policy.',
    ],
  };
}
