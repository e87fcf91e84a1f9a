/** A change of bone density or of a bone marker since before treatment, in words: the same on every screen. */
import { shortDate } from '../../calendar/day.ts';
import { quantityText } from '../../exact/quantity.ts';
import { ratioText } from '../../exact/ratio.ts';
import type { DensityThen } from './density.ts';
import type { MarkerThen } from './markers-then.ts';

/** "-4.7 % since 3 Mar 2023 (-1.6 % a year), more than the least significant change of 5.0 %"; "not comparable" with why. */
export function changeInWords({ first, percent, percentPerYear, noise, notComparable }: DensityThen): string {
  if (first === undefined || percent === undefined || percentPerYear === undefined)
    return notComparable.length === 0
      ? 'scanned once: nothing to compare'
      : 'not comparable: another scanner or side before';
  return `${signed(percent)} % since ${shortDate(first.on)} (${signed(percentPerYear)} % a year)${
    noise === undefined
      ? ''
      : `, ${noise.isExceeded ? 'more than' : 'within'} the least significant change of ${noise.leastChange}`
  }`;
}
const signed = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(1)}`;

/** "before treatment 0.5 ug/L on 3 Mar 2023: fallen by 62 %, more than chance" */
export function fallInWords({ before, fallPercent, fell }: MarkerThen): string {
  if (before === undefined || fallPercent === undefined)
    return 'not measured both before and on treatment: nothing to compare';
  const change =
    fallPercent.top < 0
      ? `risen by ${ratioText({ ...fallPercent, top: -fallPercent.top }, 0)} %`
      : `fallen by ${ratioText(fallPercent, 0)} %`;
  return `before treatment ${quantityText(before.body.quantity)} on ${shortDate(before.on)}: ${change}, ${fell === true ? 'more than chance' : 'within chance'}`;
}
