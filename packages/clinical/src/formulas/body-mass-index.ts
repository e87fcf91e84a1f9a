/**
 * Body mass index, kg/m2 (WHO). Here it only warns: UK drug-safety guidance (MHRA October 2019, read) wants the clearance and
 * not an eGFR below 18 and above 40, and there the formula for the clearance is least sure too. To show; no threshold of the
 * engine meets it. Not for children, oedema, ascites, or after an amputation.
 */
export const bodyMassIndex = (heightCm: number, weightKg: number): number => weightKg / (heightCm / 100) ** 2;
