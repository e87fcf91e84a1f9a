/**
 * A sentence of ours as somebody in the United States says it. For sentences the product makes; never for what a person typed,
 * and never for what is stored: notes, letters kept and the words of a protocol stay as they were written.
 */
const american: readonly (readonly [RegExp, string])[] = [
  [/(?<![-\w])take bloods\b/g, 'draw labs'],
  [/(?<![-\w])Take bloods\b/g, 'Draw labs'],
  [/(?<![-\w])bloods(?![-\w])/g, 'labs'],
  [/(?<![-\w])Bloods(?![-\w])/g, 'Labs'],
  [/\badrenaline\b/g, 'epinephrine (adrenaline)'],
  [/\bAdrenaline\b/g, 'Epinephrine (adrenaline)'],
  [/\bparacetamol\b/g, 'acetaminophen'],
  [/\bParacetamol\b/g, 'Acetaminophen'],
  [/\bRing the emergency number of your local guideline\b/g, 'Call 911, or the number of your local guideline'],
  [/\bRing the emergency number\b/g, 'Call 911'],
  [/\bring the emergency number\b/g, 'call 911'],
  [/\bring(?= (?:the|them|us|or|back|them|you|first|whoever)\b|$|[.:,;?])/g, 'call'],
  [/\bRing(?= (?:the|them|us|or|back|first|whoever)\b|$|[.:,;])/g, 'Call'],
  [/\b(?<=you |to |whom to )ring\b/g, 'call'],
  [/\brang us\b/g, 'called us'],
  [/\bA fit, or a faint\b/g, 'A seizure, or a faint'],
  [/\ba fit\b/g, 'a seizure'],
  [/\blight-shy\b/g, 'light-sensitive'],
  [/\boff food\b/g, 'not wanting to eat'],
  [/\beye casualty\b/g, 'eye emergency department'],
  [/\bdiarrhoea\b/g, 'diarrhea'],
  [/\bcoeliac\b/g, 'celiac'],
  [/\bplaster, oedema\b/g, 'a cast, edema'],
  [/\boedema\b/g, 'edema'],
  [/\bcolour(?=less\b|s?\b)/g, 'color'],
  [/\bcentre(?=s?\b)/g, 'center'],
  [/\benrol\b/g, 'enroll'],
  [/\bEnrol\b/g, 'Enroll'],
  [/\bjudgement\b/g, 'judgment'],
];

export const inAmerican = (says: string): string =>
  american.reduce((said, [british, words]) => said.replaceAll(british, words), says);
