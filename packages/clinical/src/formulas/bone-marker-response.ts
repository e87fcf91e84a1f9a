/**
 * Has a bone marker fallen by more than chance on treatment? IOF-ECTS 2017 (PMC5302161, read), for oral bisphosphonates, from
 * baseline to three months: P1NP by more than 38 %, CTX by more than 56 %. (An older paper, ESCEO 2009, had 30 % for both.)
 *
 * Not without a baseline of the same laboratory and method; CTX only fasting between 08:00 and 10:00; neither within three to
 * six months of a fracture; CTX not below an eGFR of 30 (all from memory). Absence of a fall first asks whether the medicine
 * was taken.
 */
import { type Scaled, scaled } from '../exact/decimal.ts';
import { type Ratio, compareRatio, dividedBy, minus, ratio, ratioOf, times } from '../exact/ratio.ts';

export const responseFallPercent = { P1NP: scaled('38'), CTX: scaled('56') } as const;
export type BoneMarker = keyof typeof responseFallPercent;

export type MarkerResponse = { readonly fallPercent: Ratio; readonly responded: boolean };

/** Both values in one unit, the baseline above nought. A rise is a fall below nought. */
export function markerResponse(marker: BoneMarker, baseline: Scaled, later: Scaled): MarkerResponse {
  const from = ratioOf(baseline);
  const fallPercent = times(ratio(100n, 1n), dividedBy(minus(from, ratioOf(later)), from));
  return { fallPercent, responded: compareRatio(fallPercent, responseFallPercent[marker]) > 0 };
}
