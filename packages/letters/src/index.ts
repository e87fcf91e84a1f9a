/** Letters, patient packs and day sheets as values, and what they become. */
export { daySheetHtml } from './day-sheet/day-sheet.ts';
export type { DaySheetFacts, DaySheetPerson } from './day-sheet/facts.ts';
export * from './adverse-event-report.ts';
export * from './family-doctor.ts';
export { letterHtml, letterText, lettersHtml } from './letter.ts';
export * from './correspondence/facts.ts';
export * from './correspondence/reminder.ts';
export * from './correspondence/write-letter.ts';
export * from './patient-pack/blocks.ts';
export * from './patient-pack/facts.ts';
export * from './patient-pack/pack-html.ts';
export { minutesOfVisit } from './patient-pack/parts.ts';
export * from './patient-pack/patient-pack.ts';
export { packWords } from './patient-pack/speaker.ts';
export * from './reading-level.ts';
export * from './own-page/facts.ts';
export * from './own-page/page-html.ts';
