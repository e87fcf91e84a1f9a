/** A number of the rule sheet as a US unit would read it, to show beside it. Nothing is ever compared with it. */
import type { NumberKey } from './number-keys.ts';
import { numberKeys } from './number-keys.ts';

/** Factors: clinical core `formulas/units.ts`; degrees by definition. Rounded for reading. */
const others: Readonly<Record<string, { readonly unit: string; readonly of: (value: number) => number }>> = {
  'umol/L': { unit: 'mg/dL', of: (value) => value / 88.4 },
  'mmol/L': { unit: 'mg/dL', of: (value) => value * 4.008 },
  'mmol/L per g/L': { unit: 'mg/dL per g/dL', of: (value) => value * 4.008 * 10 },
  'g/L': { unit: 'g/dL', of: (value) => value / 10 },
  'nmol/L': { unit: 'ng/mL', of: (value) => value / 2.496 },
  'degrees Celsius': { unit: 'degrees Fahrenheit', of: (value) => value * 1.8 + 32 },
  cm: { unit: 'in', of: (value) => value / 2.54 },
};

/** "0.3 mg/dL" for 26.52 umol/L; undefined where the unit is the same everywhere or nothing readable is given. */
export function inUsUnits(key: NumberKey, value: string): string | undefined {
  const other = others[numberKeys[key].unit];
  const number = Number(value.replace(',', '.'));
  if (other === undefined || value.trim() === '' || !Number.isFinite(number)) return undefined;
  return `${Number(other.of(number).toFixed(2))} ${other.unit}`;
}
