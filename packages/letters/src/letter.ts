/**
 * A letter as a value becomes HTML for the screen and the printer, and plain text for the notes. What it says is decided
 * elsewhere; here is how it looks.
 */
import type { LetterBlock, LetterSheet } from '@twelvemonth/clinical';
import { type Language, paperOf } from './speaker.ts';

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);

function blockHtml(block: LetterBlock): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p>${escaped(block.text)}</p>`;
    case 'list':
      return `<h2>${escaped(block.heading)}</h2><ul>${block.items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;
    case 'facts':
      return `<h2>${escaped(block.heading)}</h2><table><tbody>${block.rows.map(([label, text]) => `<tr><th scope="row">${escaped(label)}</th><td>${escaped(text)}</td></tr>`).join('')}</tbody></table>`;
    case 'reply':
      return `<section class="reply"><h2>${escaped(block.heading)}</h2><p>${escaped(block.about)}</p><ol>${block.questions.map((question) => `<li>${escaped(question)}</li>`).join('')}</ol><p>${escaped(block.sendBackTo)}</p></section>`;
  }
}

/** Black on white, 12 pt, one column: reads the same on a screen, on a fax and in a black-and-white print. */
const sheet = (language: Language): string => `
body{font:12pt/1.45 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;max-width:42em;margin:2em auto;padding:0 1.5em}
h1{font-size:1.3em;margin:1.2em 0 .6em}h2{font-size:1em;margin:1.1em 0 .3em}p{margin:.5em 0}
table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;border-top:1px solid #777;padding:.25em .5em .25em 0}th{font-weight:600;width:38%}
address{font-style:normal;white-space:pre-line}.demo{border:2px solid #000;padding:.3em .6em;font-weight:700}footer{margin-top:2em;border-top:1px solid #777;font-size:.8em}
.reply{break-before:page}.reply li{border-bottom:1px solid #777;padding-bottom:2.6em;margin-bottom:.6em}article+article{break-before:page}
@page{size:${paperOf(language)};margin:18mm}@media print{body{margin:0;max-width:none;padding:0}}`;

const articleOf = (letter: LetterSheet): string =>
  `<article lang="${letter.language}">${
    letter.demo ? '<p class="demo">Demonstration: nobody here is real. Do not send.</p>' : ''
  }<address>${letter.from.map(escaped).join('<br>')}</address><p>${escaped(letter.dated)}</p><address>${letter.to.map(escaped).join('<br>')}</address><h1>${escaped(letter.about === '' ? letter.title : letter.about)}</h1>${letter.blocks
    .filter(({ kind }) => kind !== 'reply')
    .map(blockHtml)
    .join(
      '',
    )}${letter.closing.map((line) => `<p>${escaped(line)}</p>`).join('')}<footer>${escaped(letter.foot)}</footer>${letter.blocks
    .filter(({ kind }) => kind === 'reply')
    .map(blockHtml)
    .join('')}</article>`;

const languageOf = (letters: readonly LetterSheet[]): Language => letters[0]?.language ?? 'en-GB';

/** A whole HTML document with title, language and headings, each letter on a page of its own; nothing is loaded from anywhere. */
export const lettersHtml = (title: string, letters: readonly LetterSheet[]): string =>
  `<!doctype html><html lang="${languageOf(letters)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(title)}</title><style>${sheet(languageOf(letters))}</style></head><body><main>${letters.map(articleOf).join('')}</main></body></html>`;

export const letterHtml = (letter: LetterSheet): string => lettersHtml(letter.title, [letter]);

export function letterText(letter: LetterSheet): string {
  const block = (part: LetterBlock): string => {
    switch (part.kind) {
      case 'paragraph':
        return part.text;
      case 'list':
        return [part.heading, ...part.items.map((item) => `- ${item}`)].join('\n');
      case 'facts':
        return [part.heading, ...part.rows.map(([label, text]) => `${label}: ${text}`)].join('\n');
      case 'reply':
        return [
          part.heading,
          part.about,
          ...part.questions.map((question) => `${question}: ____`),
          part.sendBackTo,
        ].join('\n');
    }
  };
  return [
    ...(letter.demo ? ['DEMONSTRATION: NOBODY HERE IS REAL. DO NOT SEND.'] : []),
    letter.from.join('\n'),
    letter.dated,
    letter.to.join('\n'),
    letter.about === '' ? letter.title : letter.about,
    ...letter.blocks.map(block),
    letter.closing.join('\n'),
    letter.foot,
  ].join('\n\n');
}
