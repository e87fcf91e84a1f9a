/** The products to choose from at the second check: in another order each time, so that the eye reads and the hand does not remember. */
import { type PackProduct, packProducts } from '@twelvemonth/clinical';

const other: PackProduct = 'another product';

/** Every order is as likely as any other; "another product" is always the last resort. */
export function inRandomOrder(): readonly PackProduct[] {
  const left: PackProduct[] = packProducts.filter((product) => product !== other);
  const drawn: PackProduct[] = [];
  while (left.length > 0) {
    const [number = 0] = crypto.getRandomValues(new Uint32Array(1));
    drawn.push(...left.splice(number % left.length, 1));
  }
  return [...drawn, other];
}
