/** Someone of seventy whose clearance is a round sum, and what is said of their kidneys. */
import { type Day, evidenceOf, requirements, teaching } from '@twelvemonth/clinical';
import { type Line, asked, bloods, born, personOf, weighed } from './person.ts';

export const judged = (lines: readonly Line[], on: Day = asked, today: Day = asked) =>
  requirements['kidney-function'].judge(evidenceOf(personOf(lines), today), teaching).on(on);
export const verdict = (lines: readonly Line[], on?: Day) => judged(lines, on).verdict;
export const creatinine = (value: string, on = '2026-11-20', signedOn: string | null = on) =>
  bloods(on, { creatinine: value }, signedOn);
/** 70 years old: (140 - 70) x kg x 1.04 / umol/L. */
export const woman70 = born('1956-11-20');
export const man70 = born('1956-11-20', 'male');
export const person = (kg: string, umol: string, who = woman70) => [
  who,
  weighed('2026-11-20', kg),
  ...creatinine(`${umol} umol/L`),
];
