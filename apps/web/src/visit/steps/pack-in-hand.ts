/** The pack as it is being read for a preparation: from its code, or typed with a reason. */
import type { BodyOfKind, PackProduct } from '@twelvemonth/clinical';
import type { PackReadingView } from '@twelvemonth/exchange';

export type ScannedPack = NonNullable<PackReadingView['pack']>;
export type TypedBecause = NonNullable<BodyOfKind<'preparation'>['typedBecause']>;
export type TypedPack = {
  readonly product: PackProduct | undefined;
  readonly batch: string;
  readonly expiresOn: string | undefined;
  readonly because: TypedBecause | undefined;
};
export const nothingTyped: TypedPack = { product: undefined, batch: '', expiresOn: undefined, because: undefined };

/** What goes into the notes; undefined: something is still missing. What the code says is never typed over. */
export function packToRecord(
  scanned: ScannedPack | undefined,
  typed: TypedPack,
  asksWhyTyped: boolean,
):
  | (Pick<BodyOfKind<'preparation'>, 'product' | 'batch' | 'scan' | 'typedBecause'> & { expiresOn: string })
  | undefined {
  const product = scanned === undefined ? typed.product : scanned.product;
  const batch = scanned?.batch ?? typed.batch.trim();
  const expiresOn = scanned?.expiresOn ?? typed.expiresOn;
  if (product === undefined || batch === '' || expiresOn === undefined) return undefined;
  if (scanned !== undefined) {
    const { code, productNumber, serial } = scanned;
    return { product, batch, expiresOn, scan: { code, productNumber, ...(serial === undefined ? {} : { serial }) } };
  }
  if (!asksWhyTyped) return { product, batch, expiresOn };
  return typed.because === undefined ? undefined : { product, batch, expiresOn, typedBecause: typed.because };
}
