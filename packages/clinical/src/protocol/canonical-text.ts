/** One content, one text: keys in order, whoever wrote it down and in which order. */
import type { ProtocolSheet } from './protocol.ts';

/** The text of a sheet that is stored and hashed. */
export const canonicalText = (sheet: ProtocolSheet): string => textInOrder(sheet);

/** The text of a part of a sheet, to compare it or to show it. */
export const textInOrder = (value: unknown): string => JSON.stringify(inOrder(value));

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, one]) => [key, inOrder(one)]),
  );
}
