/** Columns that carry a measured value need a unit; which ones may be named. */
import { heightUnits, unitsOf, weightUnits } from '@twelvemonth/clinical';
import type { Meaning } from '@twelvemonth/exchange';

export function unitsForMeaning(meaning: Meaning): readonly string[] {
  if (meaning === 'weight') return weightUnits;
  if (meaning === 'height') return heightUnits;
  return Object.hasOwn(unitsOf, meaning) ? unitsOf[meaning as keyof typeof unitsOf] : [];
}
