/** The mineral tests, and which result of each decides: the newest signed one, and the newest of all (docs/readiness.md R12). */
import type { Analyte } from '../exact/quantity.ts';
import type { Fact } from '../record/patient-record.ts';
import type { MineralResult } from './evidence.ts';

export const mineralTests = ['alkaline phosphatase', 'phosphate', 'magnesium', 'parathyroid hormone'] as const;
export const isMineralTest = (analyte: Analyte): boolean => (mineralTests as readonly Analyte[]).includes(analyte);

export function decidingMinerals(
  newestSigned: ReadonlyMap<Analyte, Fact<'result'>> | undefined,
  newest: ReadonlyMap<Analyte, Fact<'result'>>,
  lookedAt: (result: Fact<'result'>) => MineralResult,
): readonly MineralResult[] {
  const deciding: MineralResult[] = [];
  for (const analyte of mineralTests) {
    const signed = newestSigned?.get(analyte);
    const ofAll = newest.get(analyte);
    if (signed !== undefined) deciding.push(lookedAt(signed));
    if (ofAll !== undefined && ofAll !== signed) deciding.push(lookedAt(ofAll));
  }
  return deciding;
}
