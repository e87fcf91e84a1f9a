/**
 * Whether one practitioner gives a dose at home alone. A second check is another person's own reading of pack, order and person:
 * by telephone nobody reads the pack. So alone means that another checked it when it was prepared, before they left. Common
 * practice, no source: services differ, the unit decides; a sheet that says nothing allows nobody to go alone.
 */
export const homeDoseRules = ['not allowed', 'where another checked it before they left'] as const;

/** When the second check of a dose at home was made, by somebody who was there to read the pack. */
export const homeCheckTimes = ['there, before it ran', 'when it was prepared, before they left'] as const;
