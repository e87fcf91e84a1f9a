/** What was asked and matched to be sure who is here: two at least. */
export const identifierOptions = [
  { value: 'full name' },
  { value: 'birth date' },
  { value: 'number' },
  { value: 'address' },
] as const;
export type Identifier = (typeof identifierOptions)[number]['value'];
