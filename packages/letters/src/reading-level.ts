/**
 * How hard a text is to read. The formula is Flesch-Kincaid's (Kincaid 1975); what is unstable is the counting of syllables, so
 * the counter is named with every figure, formulas are tested on counts, and a second counter of another make stands in the
 * tests. Numbers, times and telephone numbers count as one word of one syllable, as most counters have it.
 */
export type TextCounts = { readonly words: number; readonly sentences: number; readonly syllables: number };

/** Grade of a US school; 6 is a reading age of about eleven. Not a number without words. */
export const fleschKincaidGrade = ({ words, sentences, syllables }: TextCounts): number =>
  0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;

/** Flesch reading ease (Flesch 1948): higher is easier. */
export const fleschReadingEase = ({ words, sentences, syllables }: TextCounts): number =>
  206.835 - 1.015 * (words / sentences) - 84.6 * (syllables / words);

/** SMOG grade (McLaughlin 1969; constants from memory), from words of three syllables or more; made for 30 sentences. */
export const smogGrade = (polysyllables: number, sentences: number): number =>
  1.043 * Math.sqrt((polysyllables * 30) / sentences) + 3.1291;

export const wordsIn = (text: string): readonly string[] => text.match(/[\p{L}\p{N}][\p{L}\p{N}'’:.,/-]*/gu) ?? [];

/** Ends at a stop, a question or exclamation mark, a colon before a line's end, or the end of the line. */
export const sentencesIn = (text: string): readonly string[] =>
  text
    .split(/(?<=[.!?])\s+|\n+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => wordsIn(sentence).length > 0);

/** Words the rule below counts wrongly. */
const exceptions: ReadonlyMap<string, number> = new Map([
  ['people', 2],
  ['someone', 2],
  ['area', 3],
  ['idea', 3],
  ['eye', 1],
  ['eyes', 1],
  ['trial', 2],
  ['trials', 2],
  ['reaction', 3],
]);

/** Groups of vowels, less the silent e at the end, in -es and -ed after most letters, and before -ly; ia, io, ua and the like are two. */
export function syllablesIn(word: string): number {
  const letters = word.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (letters.length === 0) return 1;
  const known = exceptions.get(letters);
  if (known !== undefined) return known;
  const spoken = letters
    .replace(/([^aeiouy])ely$/, '$1ly')
    .replace(/(?:[^laeiouysxzcgh]es|[^dtaeiouy]ed|[^laeiouy]e)$/, (end) => end.charAt(0))
    .replace(/^y(?=[aeiou])/, '');
  const groups = spoken.match(/[aeiouy]{1,2}/g)?.length ?? 0;
  const apart = spoken.match(/ia(?!n$|l$)|io(?!us|n)|ua(?!r)|uo|iu/g)?.length ?? 0;
  return Math.max(1, groups + apart);
}

export function countsOf(text: string): TextCounts {
  const words = wordsIn(text);
  return {
    words: words.length,
    sentences: sentencesIn(text).length,
    syllables: words.reduce((sum, word) => sum + syllablesIn(word), 0),
  };
}

export type ReadingLevel = {
  readonly grade: number;
  readonly longest: { readonly sentence: string; readonly words: number };
};

export function readingLevelOf(text: string): ReadingLevel {
  const longest = sentencesIn(text)
    .map((sentence) => ({ sentence, words: wordsIn(sentence).length }))
    .reduce((most, one) => (one.words > most.words ? one : most), { sentence: '', words: 0 });
  return { grade: fleschKincaidGrade(countsOf(text)), longest };
}

/** What a text for a person has to keep to: AMA and NHS guidance for leaflets (from memory); sentences: common practice. */
export const readingLimits = { grade: 6, wordsInASentence: 20 } as const;

/** Why a text may not go out; undefined: it may. */
export function tooHardBecause(text: string): string | undefined {
  const { grade, longest } = readingLevelOf(text);
  if (longest.words > readingLimits.wordsInASentence)
    return `a sentence of ${longest.words} words: "${longest.sentence}"`;
  return grade > readingLimits.grade ? `reading grade ${grade.toFixed(1)}, above ${readingLimits.grade}` : undefined;
}
