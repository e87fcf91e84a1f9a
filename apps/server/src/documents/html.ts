/** Text made harmless for HTML, and the plain sheet every document of ours is printed on. */
import { type Language, paperOf } from '@twelvemonth/letters';

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);

/** Black on white: reads the same on a screen, on a fax and in a black-and-white print. */
const sheet = (
  language: Language,
): string => `body{font:11pt/1.4 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;max-width:60em;margin:1.5em auto;padding:0 1.5em}
h1{font-size:1.4em;margin:.6em 0 .2em}h2{font-size:1.05em;margin:1.4em 0 .3em;border-bottom:1px solid #000}
table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;border-top:1px solid #888;padding:.25em .6em .25em 0}th{font-weight:600}
.demo{border:2px solid #000;padding:.3em .6em;font-weight:700}.gone{text-decoration:line-through}footer{margin-top:2em;border-top:1px solid #777;font-size:.85em}
@page{size:${paperOf(language)};margin:16mm}@media print{body{margin:0;max-width:none;padding:0}tr{break-inside:avoid}}`;

export const document = ({
  language,
  title,
  demo,
  body,
  foot,
}: {
  readonly language: Language;
  readonly title: string;
  readonly demo: boolean;
  readonly body: string;
  readonly foot: string;
}): string =>
  `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(title)}</title><style>${sheet(language)}</style></head><body><main>${
    demo ? '<p class="demo">Demonstration: nobody here is real.</p>' : ''
  }${body}</main><footer>${escaped(foot)}</footer></body></html>`;

/** What is known, a line each: its name heads the row. */
export const factsTable = (rows: readonly (readonly [string, string])[]): string =>
  `<table><tbody>${rows
    .map(([name, says]) => `<tr><th scope="row">${escaped(name)}</th><td>${escaped(says)}</td></tr>`)
    .join('')}</tbody></table>`;

export const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  `<table><thead><tr>${heads.map((head) => `<th scope="col">${escaped(head)}</th>`).join('')}</tr></thead><tbody>${rows
    .map((cells) => `<tr>${cells.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`)
    .join('')}</tbody></table>`;
