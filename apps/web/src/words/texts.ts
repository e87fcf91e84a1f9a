/** Small turns of phrase that several screens share. */

/** "1 person", "3 people" */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Joins what is there with a middle dot. */
export const dotted = (...parts: readonly (string | undefined | false)[]): string =>
  parts.filter((part) => typeof part === 'string' && part !== '').join(' · ');

/** A number or a telephone number that stays on one line. */
export const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');
