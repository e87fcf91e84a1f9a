import { type Ratio, ratioText } from '../exact/ratio.ts';

/** At most so many decimals, none that are nought: 58, 56.2. */
export const shortest = (value: Ratio, places: number): string => ratioText(value, places).replace(/\.?0+$/, '');
