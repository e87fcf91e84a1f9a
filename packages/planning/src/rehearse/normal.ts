/** Quantiles of the normal distribution (P. J. Acklam's rational approximation, relative error below 1.15e-9; from memory). */

const inner = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239,
];
const innerBelow = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572];
const outer = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const outerBelow = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416];
const edge = 0.02425;

const polynomial = (coefficients: readonly number[], at: number): number =>
  coefficients.reduce((sum, coefficient) => sum * at + coefficient, 0);

function tail(probability: number): number {
  const root = Math.sqrt(-2 * Math.log(probability));
  return polynomial(outer, root) / (polynomial(outerBelow, root) * root + 1);
}

/** The value below which a standard normal falls with this probability, which must lie between 0 and 1. */
export function normalQuantile(probability: number): number {
  if (probability < edge) return tail(probability);
  if (probability > 1 - edge) return -tail(1 - probability);
  const middle = probability - 0.5;
  const square = middle * middle;
  return (polynomial(inner, square) * middle) / (polynomial(innerBelow, square) * square + 1);
}
