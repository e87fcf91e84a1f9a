/**
 * Body mass index, kg/m2 (WHO). Here it only warns: UK drug-safety guidance (MHRA October 2019, read) wants the clearance and
 * not an eGFR below 18 and above 40, and there the formula for the clearance is least sure too. To show; no threshold of the
 * engine meets it. Not for children, oedema, ascites, or after an amputation.
 */
export const bodyMassIndex = (heightCm: number, weightKg: number): number => weightKg / (heightCm / 100) ** 2;

export const bodyMassIndexSource = 'WHO; below 18 and above 40: MHRA October 2019';

const UNSURE_BELOW = 18;
const UNSURE_ABOVE = 40;

/** Said after the index where the clearance is least sure; empty in between, both numbers included. */
export const bodyMassIndexWarns = (index: number): string =>
  index < UNSURE_BELOW || index > UNSURE_ABOVE ? ' (the clearance is least sure at such an index)' : '';
