/** A random ledger while it is being written: lines of text, the dice they are thrown with, labels for those others name. */
import { dateText } from './dates.ts';
import type { Dice } from './dice.ts';

export type Line = { readonly on: number; readonly text: string };
export type Sheet = { readonly dice: Dice; readonly from: number; readonly lines: Line[]; labels: number };

export const put = (sheet: Sheet, on: number, text: string): void => void sheet.lines.push({ on, text });
export const label = (sheet: Sheet): string => `#x${(sheet.labels += 1)}`;
export const date = (day: number): string => dateText(day);
