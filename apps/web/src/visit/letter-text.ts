/** The text of a letter that is shown as a document: what the person who signs it has read, for the notes. */

/** Line by line; a label and its value on one line, an item of a list behind a hyphen. */
export function letterText(html: string): string {
  const marked = html
    .replace(/<head[\s\S]*?<\/head>/i, '') // its style sheet is looks, not words
    .replace(/<li[^>]*>/gi, '- ')
    .replace(/<\/th>\s*<td[^>]*>/gi, ': ')
    .replace(/<(?:br|\/p|\/h\d|\/tr|\/li|\/address|\/ul|\/table|\/main)[^>]*>/gi, '\n');
  const body = new DOMParser().parseFromString(marked, 'text/html').body.textContent ?? '';
  return body
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n');
}

/** Which wording it was, as the letter itself says at its foot. */
export const wordingOf = (text: string): string => /Wording (\S+?)\.(?:\s|$)/.exec(text)?.[1] ?? 'not named';
