import { type Ratio, ratioText } from '../exact/ratio.ts';

/** At most so many decimals, at least one asked for, none that are nought: 58, 56.2. */
export function shortest(value: Ratio, places: number): string {
  const text = ratioText(value, places);
  let end = text.length;
  while (text.charAt(end - 1) === '0') end -= 1;
  if (text.charAt(end - 1) === '.') end -= 1;
  return text.slice(0, end);
}
