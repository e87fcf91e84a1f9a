/**
 * Whether a change between two bone density scans is more than the measurement's own noise.
 *
 * Least significant change at 95 %: 2.77 x precision error (1.96 x the root of 2; ISCD glossary, read). A change counts when
 * it is at least that. Precision error: root mean square of the SDs of repeated scans in g/cm2, from 15 people scanned three
 * times or 30 scanned twice (ISCD; Gluer 1995, PMID 7492865). It is the unit's own number, of its scanner and its staff.
 *
 * Only the same scanner, site and side are compared (ISCD, from memory): scans of two makes differ by more than a year's
 * change. T-scores are never compared between scans, nor are per cent of different sites. A change is linear per year here.
 */
import type { Day } from '../calendar/day.ts';
import type { Scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatios, dividedBy, minus, ratio, ratioAsNumber, ratioOf, times } from '../exact/ratio.ts';

const LEAST_SIGNIFICANT_FACTOR = ratio(277n, 100n);
const DAYS_A_YEAR = 365.25;
const MILLION = 1_000_000n;

/** Precision error from pairs of scans of the same people, g/cm2, rounded to a millionth. SD of a pair: |a - b| / root of 2. */
export function precisionError(pairs: readonly (readonly [Scaled, Scaled])[]): Ratio {
  if (pairs.length === 0) throw new RangeError('a precision error needs scans');
  const squares = pairs.map(([a, b]) => ratioAsNumber(minus(ratioOf(a), ratioOf(b))) ** 2 / 2);
  const meanSquare = squares.reduce((sum, square) => sum + square, 0) / pairs.length;
  return ratio(BigInt(Math.round(Math.sqrt(meanSquare) * Number(MILLION))), MILLION);
}

/** In the unit of the precision error. */
export const leastSignificantChange = (error: Ratio): Ratio => times(LEAST_SIGNIFICANT_FACTOR, error);

export type Scan = {
  readonly on: Day;
  /** Above nought. */
  readonly gramsPerCm2: Scaled;
  /** As recorded; scanners that were calibrated against each other are recorded under one name. */
  readonly scanner: string;
  /** With the side: "left total hip". */
  readonly site: string;
};

export type DensityChange =
  | { readonly comparable: false; readonly says: string }
  | {
      readonly comparable: true;
      readonly gramsPerCm2: Ratio;
      readonly percent: number;
      /** Linear: per cent by years between. */
      readonly percentPerYear: number;
      readonly leastSignificant: Ratio;
      readonly significant: boolean;
    };

const not = (says: string): DensityChange => ({ comparable: false, says });

export function densityChange(earlier: Scan, later: Scan, error: Ratio): DensityChange {
  if (earlier.site !== later.site) return not(`different sites: ${earlier.site} and ${later.site}`);
  if (earlier.scanner !== later.scanner) return not(`different scanners: ${earlier.scanner} and ${later.scanner}`);
  if (later.on <= earlier.on) return not('two scans of one day, or in the wrong order');
  const change = minus(ratioOf(later.gramsPerCm2), ratioOf(earlier.gramsPerCm2));
  const percent = 100 * ratioAsNumber(dividedBy(change, ratioOf(earlier.gramsPerCm2)));
  const leastSignificant = leastSignificantChange(error);
  const size = change.top < 0n ? { ...change, top: -change.top } : change;
  return {
    comparable: true,
    gramsPerCm2: change,
    percent,
    percentPerYear: (percent * DAYS_A_YEAR) / (later.on - earlier.on),
    leastSignificant,
    significant: compareRatios(size, leastSignificant) >= 0,
  };
}
