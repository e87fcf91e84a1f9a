/**
 * Has a bone marker fallen by more than chance on treatment? IOF-ECTS 2017 (PMC5302161), for oral bisphosphonates, baseline
 * to three months: P1NP by more than 38 %, CTX by more than 56 %. CTX fasting between 08:00 and 10:00; neither within three
 * to six months of a fracture; CTX unreliable below an eGFR of 30 (`from memory`).
 */
export const responseFallPercent = { P1NP: 38, CTX: 56 } as const;
export type BoneMarker = keyof typeof responseFallPercent;

export type MarkerResponse = { readonly fallPercent: number; readonly responded: boolean };

export function markerResponse(marker: BoneMarker, baseline: number, later: number): MarkerResponse {
  const fallPercent = (100 * (baseline - later)) / baseline;
  return { fallPercent, responded: fallPercent > responseFallPercent[marker] };
}
