/** Check digit of a GS1 number of any length. Source: GS1 General Specifications, "Standard check digit calculations". */

/** Weights 3 and 1 by turns from the right, over the digits without the check digit. */
export function checkDigit(digits: string): number {
  let sum = 0;
  for (let place = 0; place < digits.length; place += 1)
    sum += Number(digits[digits.length - 1 - place]) * (place % 2 === 0 ? 3 : 1);
  return (10 - (sum % 10)) % 10;
}

export const hasRightCheckDigit = (number: string): boolean =>
  /^\d{8,18}$/.test(number) && checkDigit(number.slice(0, -1)) === Number(number.at(-1));
