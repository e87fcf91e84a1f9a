/**
 * A second counter of words, sentences and syllables, of another make than the one in the product: it walks the letters, and
 * counts syllables by the additions and subtractions of Greg Fast's Lingua::EN::Syllable (from memory).
 */
const subtracted = [/cial/, /tia/, /cius/, /cious/, /giu/, /ion/, /iou/, /sia$/, /.ely$/, /[^td]ed$/, /[^sxzcgh]es$/];
const added = [
  /ia/,
  /riet/,
  /dien/,
  /iu/,
  /io/,
  /ii/,
  /[aeiouym]bl$/,
  /[aeiou]{3}/,
  /^mc/,
  /ism$/,
  /([^aeiouy])\1l$/,
  /[^l]lien/,
  /^coa[dglx]./,
  /[^gq]ua[^auieo]/,
  /dnt$/,
];

export function syllablesOf(word: string): number {
  const bare = word.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (bare === '') return 1;
  const scrubbed = bare.replace(/e$/, '');
  let groups = 0;
  let before = false;
  for (const letter of scrubbed) {
    const vowel = 'aeiouy'.includes(letter);
    if (vowel && !before) groups += 1;
    before = vowel;
  }
  groups -= subtracted.filter((pattern) => pattern.test(scrubbed)).length;
  groups += added.filter((pattern) => pattern.test(scrubbed)).length;
  return Math.max(1, groups);
}

export function secondCounts(text: string): { words: number; sentences: number; syllables: number; longest: number } {
  let sentences = 0;
  let longest = 0;
  let syllables = 0;
  let words = 0;
  for (const line of text.split('\n'))
    for (const sentence of line.split(/[.!?](?=\s|$)/)) {
      const own = sentence.split(/\s+/).filter((token) => /[A-Za-z0-9]/.test(token));
      if (own.length === 0) continue;
      sentences += 1;
      words += own.length;
      longest = Math.max(longest, own.length);
      syllables += own.reduce((sum, token) => sum + syllablesOf(token), 0);
    }
  return { words, sentences, syllables, longest };
}
