/** What the writers of letters have in common: a title, blocks, and who says them. */
import type { LetterBlock } from '@twelvemonth/clinical';
import type { Speaker } from '../speaker.ts';
import type { LetterFacts, LetterMatter } from './facts.ts';
import type { LetterWords } from './words-en-gb.ts';

export type LetterSpeaker = Speaker<keyof LetterWords>;
export type Body = { readonly title: string; readonly blocks: readonly LetterBlock[] };

export type Writer<Name extends LetterMatter['name']> = (
  matter: Extract<LetterMatter, { name: Name }>,
  facts: LetterFacts,
  speaker: LetterSpeaker,
) => Body;

export const paragraph = (text: string): LetterBlock => ({ kind: 'paragraph', text });
export const paragraphs = (...texts: readonly string[]): readonly LetterBlock[] => texts.map(paragraph);
export const list = (heading: string, items: readonly string[]): LetterBlock => ({
  kind: 'list',
  heading,
  items: [...items],
});

/** Denosumab wears off when it is late: spine bones may break (safety page, "a promise with a date"). */
export const hasToBeOnTime = (medicine: string): boolean => medicine.startsWith('denosumab');
