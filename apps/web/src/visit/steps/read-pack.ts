import type { PackProduct } from '@twelvemonth/clinical';

/** What somebody has read off the pack so far, without seeing another's reading. */
export type PackSoFar = { readonly product: PackProduct | undefined; readonly batchLastFour: string };
export const nothingRead: PackSoFar = { product: undefined, batchLastFour: '' };

/** Undefined until both are read. */
export function readPack({ product, batchLastFour }: PackSoFar) {
  const last = batchLastFour.trim();
  return product === undefined || last === '' ? undefined : { product, batchLastFour: last };
}
