/**
 * The fields a GS1 element string may hold: how many digits their identifier has, and how long they are where that is fixed.
 * Source: GS1 General Specifications, "Element strings with pre-defined length" and the table of application identifiers by
 * their first two digits (the three- and four-digit groups from memory).
 */

/** Characters of the value, for identifiers whose length is fixed by their first two digits: no separator follows them. */
const fixedValueLengths: Readonly<Record<string, number>> = {
  '00': 18,
  '01': 14,
  '02': 14,
  '03': 14,
  '04': 16,
  '11': 6,
  '12': 6,
  '13': 6,
  '14': 6,
  '15': 6,
  '16': 6,
  '17': 6,
  '18': 6,
  '19': 6,
  '20': 2,
  '31': 6,
  '32': 6,
  '33': 6,
  '34': 6,
  '35': 6,
  '36': 6,
  '41': 13,
};

const identifierLengths: readonly (readonly [digits: number, firstTwo: RegExp])[] = [
  [2, /^(0[0-4]|1[0-9]|2[0-2]|30|37|9[0-9])$/],
  [3, /^(2[3-5]|40|41|42|71)$/],
  [4, /^(3[1-6]|39|43|70|72|8[0-2])$/],
];

export type Identifier = {
  readonly digits: number;
  /** Undefined: as long as it is until the separator or the end. */
  readonly valueLength: number | undefined;
};

/** The field that begins with these characters; undefined if the standard knows none. */
export function identifierAt(rest: string): Identifier | undefined {
  const firstTwo = rest.slice(0, 2);
  const digits = identifierLengths.find(([, pattern]) => pattern.test(firstTwo))?.[0];
  if (digits === undefined || !/^\d+$/.test(rest.slice(0, digits)) || rest.length < digits) return undefined;
  return { digits, valueLength: fixedValueLengths[firstTwo] };
}

/** The longest value of a field without a fixed length: batch and serial have 20 characters, others at most 90. */
export const longestValue = (identifier: string): number => (['10', '21'].includes(identifier) ? 20 : 90);
