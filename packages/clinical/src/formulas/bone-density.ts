/**
 * Bone density: scores, and whether a change between two scans is more than the scanner's own noise.
 * T-score: (value - young-adult mean) / its SD; use the one printed on the report, recompute only as a plausibility check.
 * Least significant change at 95 %: 2.77 x precision error (ISCD glossary). A change counts when it is at least that, on the
 * same scanner (or cross-calibrated ones), same site and side. T-scores are never compared between scans.
 */
export const score = (valueGramsPerCm2: number, referenceMean: number, referenceSd: number): number =>
  (valueGramsPerCm2 - referenceMean) / referenceSd;

/** White women of 20 to 29 years in NHANES III, on that survey's scanners: Looker 1998 (secondary copies; hip `from memory`). */
export const youngAdultReference = {
  'femoral neck': { mean: 0.858, sd: 0.12 },
  'total hip': { mean: 0.942, sd: 0.122 },
} as const;

/** Precision error from pairs of scans of the same people: root mean square of the pairs' SDs (Gluer 1995). g/cm2. */
export function precisionError(pairs: readonly (readonly [number, number])[]): number {
  const squares = pairs.map(([a, b]) => (a - b) ** 2 / 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / pairs.length);
}

const LEAST_SIGNIFICANT_FACTOR = 2.77;
export const leastSignificantChange = (precisionErrorGramsPerCm2: number): number =>
  LEAST_SIGNIFICANT_FACTOR * precisionErrorGramsPerCm2;

export type Scan = {
  readonly valueGramsPerCm2: number;
  readonly scanner: string;
  readonly site: string;
  /** Years as a decimal, for the change per year. */
  readonly atYear: number;
};
export type DensityChange =
  | { readonly comparable: false; readonly says: string }
  | {
      readonly comparable: true;
      readonly percent: number;
      readonly percentPerYear: number;
      readonly gramsPerCm2: number;
      readonly significant: boolean;
    };

export function densityChange(earlier: Scan, later: Scan, precisionErrorGramsPerCm2: number): DensityChange {
  if (earlier.site !== later.site)
    return { comparable: false, says: `different sites: ${earlier.site} and ${later.site}` };
  if (earlier.scanner !== later.scanner)
    return { comparable: false, says: `different scanners: ${earlier.scanner} and ${later.scanner}` };
  const gramsPerCm2 = later.valueGramsPerCm2 - earlier.valueGramsPerCm2;
  const percent = (100 * gramsPerCm2) / earlier.valueGramsPerCm2;
  const years = later.atYear - earlier.atYear;
  return {
    comparable: true,
    percent,
    percentPerYear: years > 0 ? percent / years : Number.NaN,
    gramsPerCm2,
    significant: Math.abs(gramsPerCm2) >= leastSignificantChange(precisionErrorGramsPerCm2),
  };
}
