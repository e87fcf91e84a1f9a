/** What a nurse asks a pack to be, and the question that becomes to the server. */
import type { Asked } from '../server/paths.ts';

export const sizes = [
  { value: 'normal', says: 'Normal, 14 pt' },
  { value: 'large', says: 'Large, 18 pt' },
  { value: 'very large', says: 'Very large, 24 pt' },
  { value: 'easy', says: 'One easy page' },
] as const;
export const parts = [
  { value: 'getting ready', says: 'Getting ready' },
  { value: 'the day', says: 'The day' },
  { value: 'afterwards', says: 'Afterwards' },
  { value: 'next year', says: 'Next year' },
] as const;
export const languages = [
  { value: 'en-GB', says: 'English (British)' },
  { value: 'en-US', says: 'English (American)' },
] as const;
export const liverAnswers = [
  { value: 'fine', says: 'No, none of these' },
  { value: 'trouble', says: 'Yes, or not sure' },
] as const;

export type PackWish = {
  readonly size: (typeof sizes)[number]['value'];
  readonly parts: readonly (typeof parts)[number]['value'][];
  /** Undefined: as the unit writes. */
  readonly language: (typeof languages)[number]['value'] | undefined;
  readonly liver: (typeof liverAnswers)[number]['value'] | undefined;
};
export const noWish: PackWish = {
  size: 'normal',
  parts: parts.map(({ value }) => value),
  language: undefined,
  liver: undefined,
};

/** The easy page is printed large. With no sheet ticked all are shown: nothing to print is not a pack. */
export const queryOf = ({ size, parts: wanted, language, liver }: PackWish): Asked => ({
  size: size === 'easy' ? 'large' : size,
  easy: size === 'easy' ? 'yes' : undefined,
  parts: size === 'easy' || wanted.length === 0 ? undefined : wanted.join(','),
  language,
  liver,
});
