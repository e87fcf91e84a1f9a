/** A person's name in one cell, taken apart. Where the order is not told by a comma, the reading says that it supposed one. */
export type NameRead = {
  readonly family: string;
  readonly given: string;
  readonly title: string | undefined;
  /** True where nothing in the text tells which part is the family name. */
  readonly supposed: boolean;
};

const titles = /^(?:mr|mrs|ms|miss|mx|dr|prof|professor|sir|dame|lady|lord|rev|revd|father|sister)\.?\s+/i;
const trailingTitle = /[\s,]+\(?(mr|mrs|ms|miss|mx|dr|prof|sir|dame|rev|revd)\.?\)?$/i;
const particles = new Set([
  'van',
  'von',
  'de',
  'der',
  'den',
  'del',
  'della',
  'di',
  'da',
  'dos',
  'du',
  'la',
  'le',
  'ter',
  'ten',
  'al',
  'el',
  'bin',
  'ibn',
  'st',
]);
const isAllCapitals = (word: string): boolean => /\p{Lu}{2}/u.test(word) && word === word.toUpperCase();

/** Undefined where the text holds only one name. */
export function readName(cell: string): NameRead | undefined {
  let text = cell.replaceAll(/\s+/g, ' ').trim();
  let title: string | undefined;
  const leading = titles.exec(text);
  if (leading !== null) {
    title = leading[0].trim();
    text = text.slice(leading[0].length);
  }
  const trailing = trailingTitle.exec(text);
  if (trailing !== null) {
    title ??= trailing[1];
    text = text.slice(0, trailing.index);
  }
  const comma = text.indexOf(',');
  if (comma >= 0) {
    const family = text.slice(0, comma).trim();
    let given = text.slice(comma + 1).trim();
    const inner = titles.exec(`${given} `);
    if (inner !== null) {
      title ??= inner[0].trim();
      given = given.slice(inner[0].trim().length).trim();
    }
    return family === '' || given === '' ? undefined : { family, given, title, supposed: false };
  }
  const words = text.split(' ').filter((word) => word !== '');
  if (words.length < 2) return undefined;
  const capitals = words.filter(isAllCapitals);
  if (capitals.length > 0 && capitals.length < words.length) {
    const family = capitals.join(' ');
    return { family, given: words.filter((word) => !isAllCapitals(word)).join(' '), title, supposed: false };
  }
  let start = words.length - 1;
  while (start > 1 && particles.has((words[start - 1] ?? '').toLowerCase())) start -= 1;
  return { family: words.slice(start).join(' '), given: words.slice(0, start).join(' '), title, supposed: true };
}

/** A name for comparison: letters only, no accents, lower case. */
export const nameLetters = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/[^\p{L}]/gu, '')
    .toLowerCase();
