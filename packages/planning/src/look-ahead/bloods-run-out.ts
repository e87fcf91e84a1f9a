/** Bloods drawn at referral and the wait: how many find theirs too old on the day. */

/** Standard normal distribution function (Abramowitz and Stegun 7.1.26, error below 1.5e-7; from memory). */
function normalBelow(value: number): number {
  const scaled = Math.abs(value) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * scaled);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const error = 1 - poly * Math.exp(-scaled * scaled);
  return value >= 0 ? (1 + error) / 2 : (1 - error) / 2;
}

/** Share of people whose wait is longer than their bloods are valid, when waits are spread normally. */
export const tooOldOnTheDay = (waitWeeks: number, deviationWeeks: number, validWeeks: number): number =>
  deviationWeeks === 0 ? Number(waitWeeks > validWeeks) : 1 - normalBelow((validWeeks - waitWeeks) / deviationWeeks);
