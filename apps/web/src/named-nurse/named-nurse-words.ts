import type { NamedNurseView } from '@twelvemonth/exchange';

/** Who looks after them, or that nobody does: told as loudly as somebody who has gone. */
export const nurseInWords = (nurse: NamedNurseView | undefined): string =>
  nurse === undefined
    ? 'no nurse named'
    : nurse.isHere
      ? `nurse ${nurse.name}`
      : `nurse ${nurse.name} is not here any more`;

/** Of somebody who is here and whom no nurse who is here looks after. */
export const needsNurse = (nurse: NamedNurseView | undefined): boolean => nurse?.isHere !== true;
