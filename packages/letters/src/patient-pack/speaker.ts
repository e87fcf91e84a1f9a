/** The pack's words in each language, and who says them. */
import { type Speaker, speakerOf } from '../speaker.ts';
import type { PackLanguage } from './facts.ts';
import { type PackWords, wordsEnGB } from './words-en-gb.ts';
import { wordsEnUS } from './words-en-us.ts';

export const packWords: Readonly<Record<PackLanguage, PackWords>> = { 'en-GB': wordsEnGB, 'en-US': wordsEnUS };

export type PackSpeaker = Speaker<keyof PackWords>;
export const packSpeaker = (language: PackLanguage): PackSpeaker => speakerOf(packWords[language], language);
