/** Check digit of a GS1 number of any length. Source: GS1 General Specifications, "Standard check digit calculations". */

/** Weights 3 and 1 by turns from the right, over the digits without the check digit. */
export function checkDigit(digits: string): number {
  const sum = [...digits]
    .toReversed()
    .reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

export const hasRightCheckDigit = (number: string): boolean =>
  /^\d{8,18}$/.test(number) && checkDigit(number.slice(0, -1)) === Number(number.at(-1));
