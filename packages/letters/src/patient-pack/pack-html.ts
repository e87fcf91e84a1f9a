/** A pack as a document and as plain text. Black on white, one column, nothing loaded from anywhere, each part on its own page. */
import { escaped } from '../letter.ts';
import { type Language, paperOf } from '../speaker.ts';
import type { PackBlock, PackPart, PatientPack } from './blocks.ts';

export type PackSize = 'normal' | 'large' | 'very large';
export const packPoints: Readonly<Record<PackSize, number>> = { normal: 14, large: 18, 'very large': 24 };

const list = (items: readonly string[]): string =>
  items.length === 0 ? '' : `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;
const rows = (all: readonly (readonly [string, string])[]): string =>
  `<table><tbody>${all.map(([head, says]) => `<tr><th scope="row">${escaped(head)}</th><td>${escaped(says)}</td></tr>`).join('')}</tbody></table>`;

function blockHtml(block: PackBlock): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p>${escaped(block.text)}</p>`;
    case 'heading':
      return `<h2>${escaped(block.text)}</h2>`;
    case 'list':
      return list(block.items);
    case 'clock':
    case 'facts':
      return rows(block.rows);
    case 'warning':
      return `<div class="warning"><h2>${escaped(block.heading)}</h2>${list(block.items)}</div>`;
  }
}

/** 400 % on a phone of 320 px keeps one column: nothing has a fixed width, long words break. */
const sheet = (points: number, language: Language): string => `
body{font:${points}pt/1.5 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;max-width:38em;margin:1.5em auto;padding:0 1em;text-align:left;overflow-wrap:anywhere}
h1{font-size:1.4em;line-height:1.2;margin:.8em 0 .4em}h2{font-size:1.1em;margin:1.1em 0 .3em}p{margin:.5em 0}ul{margin:.4em 0;padding-left:1.1em}li{margin:.3em 0}
table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;border-top:1px solid #555;padding:.3em .6em .3em 0}th{font-weight:700;width:32%}
.warning{border:3px solid #000;padding:.1em .8em .4em;margin:.9em 0;break-inside:avoid}.warning h2{margin:.4em 0 .2em}.demo{border:2px dashed #000;padding:.2em .6em;font-weight:700}
.about{font-weight:700}footer{margin-top:1.5em;border-top:1px solid #555;font-size:.8em}
@page{size:${paperOf(language)};margin:16mm 16mm 20mm;@bottom-right{content:counter(page) " / " counter(pages);font:11pt Arial,sans-serif}}
@media print{body{margin:0;max-width:none;padding:0}section+section{break-before:page}h1,h2{break-after:avoid}li,tr{break-inside:avoid}}`;

const partHtml = ({ title, blocks }: PackPart, about: string, index: number): string =>
  `<section aria-labelledby="part-${index}"><h1 id="part-${index}">${escaped(title)}</h1><p class="about">${escaped(about)}</p>${blocks.map(blockHtml).join('')}</section>`;

/** A whole document with language, title and headings. Each part names the person, for when pages are parted. */
export function patientPackHtml(pack: PatientPack, size: PackSize): string {
  const title = pack.parts.map((part) => part.title).join(' · ');
  return `<!doctype html><html lang="${pack.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(title)}</title><style>${sheet(packPoints[size], pack.language)}</style></head><body><main>${
    pack.demo === undefined ? '' : `<p class="demo">${escaped(pack.demo)}</p>`
  }${pack.parts.map((part, index) => partHtml(part, pack.about, index + 1)).join('')}</main><footer><p>${escaped(pack.foot)}</p></footer></body></html>`;
}

export function patientPackText(pack: PatientPack): string {
  const items = (all: readonly string[]): readonly string[] => all.map((item) => `- ${item}`);
  const block = (one: PackBlock): string => {
    switch (one.kind) {
      case 'paragraph':
        return one.text;
      case 'heading':
        return one.text.toUpperCase();
      case 'list':
        return items(one.items).join('\n');
      case 'clock':
      case 'facts':
        return one.rows.map(([head, says]) => `${head}: ${says}`).join('\n');
      case 'warning':
        return [`!! ${one.heading}`, ...items(one.items)].join('\n');
    }
  };
  return [
    ...(pack.demo === undefined ? [] : [pack.demo.toUpperCase()]),
    ...pack.parts.flatMap(({ title, blocks }) => [`== ${title} ==`, pack.about, ...blocks.map(block)]),
    pack.foot,
  ].join('\n\n');
}
