/** A measured value as typed: the unit is never guessed, so it may be missing until someone says it. */
export type TypedQuantity = {
  readonly comparator: '' | '<' | '<=' | '>' | '>=';
  readonly value: string;
  readonly unit: string | undefined;
};
export const nothingTyped: TypedQuantity = { comparator: '', value: '', unit: undefined };
