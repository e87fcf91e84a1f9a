/**
 * What a bone density is beside a reference: a score in standard deviations, and the band of the World Health Organization.
 *
 * T-score: (value - young-adult mean) / its SD (WHO 1994, secondary). Z-score: the same with people of the same age and sex
 * (ISCD, from memory). Bands (WHO, read): -1.0 and above normal, -2.5 and below osteoporosis, low bone mass in between; with
 * a fragility fracture severe.
 *
 * Use the score printed on the report. One worked out here only shows whether the report is plausible, because the reference
 * belongs to one make of scanner, and because a report prints one decimal: -2.46 is printed as -2.5, a band lower. Lumbar
 * spine has no reference here: it is the maker's own. Not for children; Z-scores have no bands.
 */
import { type Scaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio, dividedBy, minus, ratioOf } from '../exact/ratio.ts';

export type DensityReference = { readonly meanGramsPerCm2: Scaled; readonly sdGramsPerCm2: Scaled };

/** Standard deviations above (or below) the reference. The SD must be above nought. */
export const densityScore = (gramsPerCm2: Scaled, reference: DensityReference): Ratio =>
  dividedBy(minus(ratioOf(gramsPerCm2), ratioOf(reference.meanGramsPerCm2)), ratioOf(reference.sdGramsPerCm2));

/**
 * White women of 20 to 29 years in NHANES III, on that survey's scanners: Looker 1998, Osteoporos Int 8:468 (neck: secondary
 * copies; hip: from memory). ISCD has it for women after the menopause and for men from 50 (from memory).
 */
export const youngAdultReference = {
  'femoral neck': { meanGramsPerCm2: scaled('0.858'), sdGramsPerCm2: scaled('0.120') },
  'total hip': { meanGramsPerCm2: scaled('0.942'), sdGramsPerCm2: scaled('0.122') },
} as const satisfies Readonly<Record<string, DensityReference>>;

export const densityScoreSources = {
  young:
    "Looker 1998, Osteoporos Int 8:468: white women of 20 to 29 in NHANES III, on that survey's scanners (neck secondary, hip from memory)",
  bands: 'WHO bands, for women after the menopause and men from 50',
} as const;

export type DensityBand = 'normal' | 'low bone mass' | 'osteoporosis' | 'severe osteoporosis';

const NORMAL_FROM = scaled('-1.0');
const OSTEOPOROSIS_TO = scaled('-2.5');

export function densityBand(tScore: Ratio, fragilityFracture: boolean): DensityBand {
  if (compareRatio(tScore, NORMAL_FROM) >= 0) return 'normal';
  if (compareRatio(tScore, OSTEOPOROSIS_TO) > 0) return 'low bone mass';
  return fragilityFracture ? 'severe osteoporosis' : 'osteoporosis';
}
