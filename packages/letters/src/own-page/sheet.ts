/** The sheet every page of a person stands on: what is around its words, and how it looks. */
import { escaped } from '../letter.ts';
import { type Language, type Speaker, speakerOf } from '../speaker.ts';
import { type OwnPageWords, ownPageWordsEnGB } from './words-en-gb.ts';
import { ownPageWordsEnUS } from './words-en-us.ts';

export const ownPageWords: Readonly<Record<Language, OwnPageWords>> = {
  'en-GB': ownPageWordsEnGB,
  'en-US': ownPageWordsEnUS,
};
export type OwnPageSpeaker = Speaker<keyof OwnPageWords>;
export const speaker = (language: Language): OwnPageSpeaker => speakerOf(ownPageWords[language], language);

/** Served beside the pages under this name: a page may then load no other style. */
export const ownPageStyle = `body{font:1.25rem/1.5 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;max-width:34em;margin:0 auto;padding:.5em min(1em,4vw) 3em;overflow-wrap:anywhere}
h1{font-size:1.4em;line-height:1.2;margin:.6em 0 .4em}h2{font-size:1.15em;margin:1.4em 0 .4em}p,ul{margin:.5em 0}ul{padding-left:1.1em}li{margin:.3em 0}
dl{margin:0}dt{font-weight:700;margin-top:.5em}dd{margin:0}
.warning{border:3px solid #000;padding:.2em min(.8em,4vw);margin:1em 0}.demo{border:2px dashed #000;padding:.2em .6em;font-weight:700}.trouble{border-left:.4em solid #000;padding-left:.6em;font-weight:700}
fieldset{border:0;border-top:2px solid #000;margin:1em 0;padding:.5em 0 0;min-width:0}legend{font-weight:700;float:left;width:100%;padding:0;margin-bottom:.2em}legend+*{clear:both}
label{display:block;padding:.45em 0;min-height:2.4rem}input[type=radio]{width:1.4rem;height:1.4rem;vertical-align:-.2em;margin:0 .5em 0 0}
input[type=text],textarea,select{font:inherit;color:inherit;background:#fff;border:2px solid #000;width:100%;min-width:0;box-sizing:border-box;padding:.4em min(.4em,3vw);min-height:3rem}
.born{display:flex;flex-wrap:wrap;gap:.8em}.born label{flex:1 1 4em;min-width:0}
button,.go{font:inherit;font-weight:700;color:#fff;background:#000;border:2px solid #000;padding:.6em min(1.2em,4vw);max-width:100%;min-height:3rem;display:inline-block;text-decoration:none;margin:.4em 0}
a{color:#000;display:inline-block;padding:.7em 0}:focus-visible{outline:4px solid #000;outline-offset:3px}
.ticks{white-space:nowrap}.tick{display:inline-block;width:1em;height:1em;border:2px solid #000;margin:0 .4em 0 .8em;vertical-align:-.15em}.line{border-bottom:1px solid #000;height:1.8em;margin:0}
@page{size:A4;margin:16mm}@media print{body{font-size:14pt;max-width:none}}`;

type Sheet = { readonly language: Language; readonly demo: boolean; readonly title: string; readonly body: string };

/** `style`: a link to the style, or the style itself where the sheet stands alone. */
export const documentOf = ({ language, demo, title, body }: Sheet, style: string): string =>
  `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="robots" content="noindex"><title>${escaped(title)}</title>${style}</head><body><main>${
    demo ? `<p class="demo">${escaped(ownPageWords[language].demo)}</p>` : ''
  }${body}</main></body></html>`;

export const page = (sheet: Sheet): string => documentOf(sheet, '<link rel="stylesheet" href="/own-page.css">');
const list = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;

export function warning({ say }: OwnPageSpeaker): string {
  return `<div class="warning"><p><strong>${escaped(say('notNow'))}</strong></p>${list(say('notNowItems', { emergency: say('emergency') }).split('|'))}</div>`;
}
