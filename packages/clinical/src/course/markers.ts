/**
 * Bone markers in one unit, exactly: 1 ug/L = 1 ng/mL = 1000 ng/L, 1 ng/L = 1 pg/mL (by definition). A bound ("<50") or a unit
 * that does not belong to the marker answers with undefined: it is never guessed.
 */
import { type Quantity, exactValue, unitsOf } from '../exact/quantity.ts';
import { type Ratio, ratio, ratioOf, times } from '../exact/ratio.ts';
import type { Fact } from '../record/patient-record.ts';

const NG_PER_UG = ratio(1000n, 1n);

export function markerNgPerL({ body }: Fact<'result'>): Ratio | undefined {
  const { analyte, quantity }: { analyte: string; quantity: Quantity } = body;
  if (analyte !== 'CTX' && analyte !== 'P1NP') return undefined;
  const units: readonly string[] = unitsOf[analyte];
  if (quantity.comparator !== '' || !units.includes(quantity.unit)) return undefined;
  const value = ratioOf(exactValue(quantity));
  return quantity.unit === 'ug/L' || quantity.unit === 'ng/mL' ? times(value, NG_PER_UG) : value;
}
