/**
 * Severity of a reaction in the common terminology criteria for adverse events. A grade is recorded with its version:
 * version 6.0 was published on 22 July 2025; the fever rows of 5.0 and 6.0 agree (5.0 `from memory`).
 * Only what can be told from numbers is computed; the rest is chosen by the person who sees the patient.
 */
export type Grade = 0 | 1 | 2 | 3 | 4;

/** Fever: 38.0-39.0 grade 1, above 39.0 to 40.0 grade 2, above 40.0 grade 3, grade 4 when it lasts more than 24 hours. */
export function feverGrade(temperatureCelsius: number, hoursAbove40: number): Grade {
  const tenths = Math.round(temperatureCelsius * 10);
  if (tenths < 380) return 0;
  if (tenths <= 390) return 1;
  if (tenths <= 400) return 2;
  return hoursAbove40 > 24 ? 4 : 3;
}

/** Low adjusted calcium in mmol/L, below the laboratory's own lower limit: to 2.0, to 1.75, to 1.5, below. */
export function lowCalciumGrade(adjustedMmolPerL: number, lowerLimitMmolPerL: number): Grade {
  const hundredths = Math.round(adjustedMmolPerL * 100);
  if (hundredths >= Math.round(lowerLimitMmolPerL * 100)) return 0;
  if (hundredths >= 200) return 1;
  if (hundredths >= 175) return 2;
  if (hundredths >= 150) return 3;
  return 4;
}
