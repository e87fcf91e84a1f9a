/**
 * A sentence of ours as somebody in the United States says it. For sentences the product makes; never for what a person typed,
 * and never for what is stored: notes, letters kept and the words of a protocol stay as they were written.
 */
const american: readonly (readonly [RegExp, string])[] = [
  [/(?<![-\w])take bloods\b/g, 'draw labs'],
  [/(?<![-\w])Take bloods\b/g, 'Draw labs'],
  [/(?<![-\w])bloods(?![-\w])/g, 'labs'],
  [/(?<![-\w])Bloods(?![-\w])/g, 'Labs'],
  [/\bparacetamol\b/g, 'acetaminophen'],
  [/\bParacetamol\b/g, 'Acetaminophen'],
  [/\bRing the emergency number\b/g, 'Call 911'],
  [/\bring the emergency number\b/g, 'call 911'],
  [/\bA fit, or a faint\b/g, 'A seizure, or a faint'],
  [/\ba fit\b/g, 'a seizure'],
  [/\boff food\b/g, 'not wanting to eat'],
  [/\beye casualty\b/g, 'eye emergency department'],
];

export const inAmerican = (says: string): string =>
  american.reduce((said, [british, words]) => said.replaceAll(british, words), says);
