import { type Analyte, type Quantity, quantityText } from '../exact/quantity.ts';
import { type Ratio, ratioText } from '../exact/ratio.ts';
import {
  albuminGPerL,
  calciumMmolPerL,
  creatinineUmolPerL,
  heightCm,
  vitaminDNmolPerL,
  weightKg,
} from '../formulas/units.ts';

type Measure = Analyte | 'weight' | 'height';
type Ours = { readonly unit: string; readonly of: (q: Quantity) => Ratio | undefined; readonly places: number };

/** The unit each measure is reckoned in, and how finely it is shown. Bone markers and the rest are told as reported only. */
const ours: Partial<Record<Measure, Ours>> = {
  creatinine: { unit: 'umol/L', of: creatinineUmolPerL, places: 1 },
  'adjusted calcium': { unit: 'mmol/L', of: calciumMmolPerL, places: 2 },
  calcium: { unit: 'mmol/L', of: calciumMmolPerL, places: 2 },
  albumin: { unit: 'g/L', of: albuminGPerL, places: 0 },
  'vitamin D': { unit: 'nmol/L', of: vitaminDNmolPerL, places: 1 },
  weight: { unit: 'kg', of: weightKg, places: 1 },
  height: { unit: 'cm', of: heightCm, places: 1 },
};

/** "141.5 lb (64.2 kg)": as it was typed, and in the unit it is reckoned in beside it; rounded to be read, never to be compared. */
export function withOurUnit(measure: Measure, q: Quantity): string {
  const told = quantityText(q);
  const our = ours[measure];
  const value = our === undefined || our.unit === q.unit ? undefined : our.of(q);
  return our === undefined || value === undefined
    ? told
    : `${told} (${q.comparator}${ratioText(value, our.places)} ${our.unit})`;
}
