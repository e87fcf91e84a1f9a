/**
 * Calcium adjusted for albumin, in mmol/L: total + slope x (reference albumin - albumin).
 *
 * The common UK form has slope 0.02 and reference 40 g/L; it is attributed to Payne (BMJ 1977 1:598, secondary). The paper
 * of 1973 (BMJ 4:643) had 0.025: both numbers are the protocol's. A laboratory's own adjusted value goes before this one.
 *
 * Less exact than the plain total where the kidneys are poor (eGFR below 60: Lian 2018, BMJ Open).
 */
import type { Scaled } from '../exact/decimal.ts';
import { type Ratio, minus, plus, ratioOf, times } from '../exact/ratio.ts';

export const adjustedCalciumSource = 'attributed to Payne, BMJ 1977 1:598 (secondary); slope and reference by protocol';

export const adjustedCalciumMmolPerL = (
  totalMmolPerL: Ratio,
  albuminGPerL: Ratio,
  slope: Scaled,
  referenceAlbumin: Scaled,
): Ratio => plus(totalMmolPerL, times(ratioOf(slope), minus(ratioOf(referenceAlbumin), albuminGPerL)));
