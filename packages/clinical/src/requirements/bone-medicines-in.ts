/** Which medicines of a person bear on another bone medicine: tablets, other bone medicines, an oncology plan (docs/readiness.md R11). */
import type { Fact } from '../record/patient-record.ts';
import { nameKey } from './medicine-name.ts';

const boneSorts: ReadonlySet<string> = new Set(['bisphosphonate tablet', 'other bone medicine', 'oncology bone plan']);
const isBoneMedicine = ({ body }: Fact<'medicine'>): boolean => boneSorts.has(body.sort);

/** By name: the newest entry of each, in the order in which the first of each name was written. */
export function boneMedicinesIn(medicines: readonly Fact<'medicine'>[]): readonly Fact<'medicine'>[] {
  const newest = new Map<string, Fact<'medicine'>>();
  for (const medicine of medicines)
    if (isBoneMedicine(medicine)) newest.set(`${medicine.body.sort} ${nameKey(medicine.body.name)}`, medicine);
  return [...newest.values()];
}
