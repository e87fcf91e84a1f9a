/**
 * Code without its comments, or without its comments and quoted text, so that a rule about code is not set off by a sentence.
 * What is taken out becomes spaces: lines and columns stay where they were. A plain scanner, not a parser: a regular
 * expression that contains a quote may confuse it, which at worst hides the rest of that line.
 */

const blank = (text: string): string => text.replaceAll(/[^\n]/g, ' ');

/** The end of a quoted text that starts at `start`; a line break ends an unclosed one. */
function endOfQuote(code: string, start: number): number {
  const quote = code[start];
  for (let at = start + 1; at < code.length; at += 1) {
    if (code[at] === '\\') at += 1;
    else if (code[at] === quote) return at + 1;
    else if (code[at] === '\n') return at;
  }
  return code.length;
}

/** Blanks the words of a template, keeps the code in its `${}`; answers with the text and where the template ends. */
function template(code: string, start: number, keepQuoted: boolean): { readonly text: string; readonly end: number } {
  let text = keepQuoted ? '`' : ' ';
  let at = start + 1;
  while (at < code.length && code[at] !== '`') {
    if (code.startsWith('${', at)) {
      const inside = scan(code, at + 2, keepQuoted, '}');
      text += keepQuoted ? `\${${inside.text}}` : `  ${inside.text} `;
      at = inside.end + 1;
    } else {
      const step = code[at] === '\\' ? 2 : 1;
      const words = code.slice(at, at + step);
      text += keepQuoted ? words : blank(words);
      at += step;
    }
  }
  return { text: text + (keepQuoted ? '`' : ' '), end: at + 1 };
}

function scan(
  code: string,
  start: number,
  keepQuoted: boolean,
  until?: string,
): { readonly text: string; readonly end: number } {
  let text = '';
  let depth = 0;
  let at = start;
  while (at < code.length) {
    const here = code[at] ?? '';
    if (here === until && depth === 0) break;
    if (until !== undefined && here === '{') depth += 1;
    if (until !== undefined && here === '}') depth -= 1;
    let end = at + 1;
    let taken = here;
    if (code.startsWith('//', at)) {
      const lineEnd = code.indexOf('\n', at);
      end = lineEnd === -1 ? code.length : lineEnd;
      taken = blank(code.slice(at, end));
    } else if (code.startsWith('/*', at)) {
      const close = code.indexOf('*/', at + 2);
      end = close === -1 ? code.length : close + 2;
      taken = blank(code.slice(at, end));
    } else if (here === '`') {
      ({ text: taken, end } = template(code, at, keepQuoted));
    } else if (here === '"' || (here === "'" && !/\w/.test(code[at - 1] ?? ''))) {
      // An apostrophe after a letter is a word in the text of a screen ("it's"), not the start of a quotation.
      end = endOfQuote(code, at);
      taken = keepQuoted ? code.slice(at, end) : blank(code.slice(at, end));
    }
    text += taken;
    at = end;
  }
  return { text, end: at };
}

/** The code with comments blanked. */
export const withoutComments = (code: string): string => scan(code, 0, true).text;

/** The code with comments and quoted text blanked; what stands in a template's `${}` stays. */
export const codeOnly = (code: string): string => scan(code, 0, false).text;
