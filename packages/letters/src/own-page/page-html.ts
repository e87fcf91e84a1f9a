/**
 * The pages a person sees through their own address: HTML that works without scripts, loads nothing, keeps one column at any
 * size, and is a few kilobytes.
 */
import { type AheadQuestion, aheadQuestions, looksOn } from '@twelvemonth/clinical';
import { escaped } from '../letter.ts';
import { type Language, type Speaker, speakerOf } from '../speaker.ts';
import type { OwnPageFacts } from './facts.ts';
import { type OwnPageWords, ownPageWordsEnGB } from './words-en-gb.ts';
import { ownPageWordsEnUS } from './words-en-us.ts';

export const ownPageWords: Readonly<Record<Language, OwnPageWords>> = {
  'en-GB': ownPageWordsEnGB,
  'en-US': ownPageWordsEnUS,
};
type OwnPageSpeaker = Speaker<keyof OwnPageWords>;
const speaker = (language: Language): OwnPageSpeaker => speakerOf(ownPageWords[language], language);

/** Served beside the pages under this name: a page may then load no other style. */
export const ownPageStyle = `body{font:1.25rem/1.5 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;max-width:34em;margin:0 auto;padding:.5em min(1em,4vw) 3em;overflow-wrap:anywhere}
h1{font-size:1.4em;line-height:1.2;margin:.6em 0 .4em}h2{font-size:1.15em;margin:1.4em 0 .4em}p,ul{margin:.5em 0}ul{padding-left:1.1em}li{margin:.3em 0}
dl{margin:0}dt{font-weight:700;margin-top:.5em}dd{margin:0}
.warning{border:3px solid #000;padding:.2em min(.8em,4vw);margin:1em 0}.demo{border:2px dashed #000;padding:.2em .6em;font-weight:700}.trouble{border-left:.4em solid #000;padding-left:.6em;font-weight:700}
fieldset{border:0;border-top:2px solid #000;margin:1em 0;padding:.5em 0 0;min-width:0}legend{font-weight:700;float:left;width:100%;padding:0;margin-bottom:.2em}legend+*{clear:both}
label{display:block;padding:.45em 0;min-height:2.4rem}input[type=radio]{width:1.4rem;height:1.4rem;vertical-align:-.2em;margin:0 .5em 0 0}
input[type=text],textarea{font:inherit;color:inherit;background:#fff;border:2px solid #000;width:100%;min-width:0;box-sizing:border-box;padding:.4em min(.4em,3vw);min-height:3rem}
.born{display:flex;flex-wrap:wrap;gap:.8em}.born label{flex:1 1 4em;min-width:0}
button,.go{font:inherit;font-weight:700;color:#fff;background:#000;border:2px solid #000;padding:.6em min(1.2em,4vw);max-width:100%;min-height:3rem;display:inline-block;text-decoration:none;margin:.4em 0}
a{color:#000}:focus-visible{outline:4px solid #000;outline-offset:3px}
.ticks{white-space:nowrap}.tick{display:inline-block;width:1em;height:1em;border:2px solid #000;margin:0 .4em 0 .8em;vertical-align:-.15em}.line{border-bottom:1px solid #000;height:1.8em;margin:0}
@page{size:A4;margin:16mm}@media print{body{font-size:14pt;max-width:none}}`;

type Sheet = { readonly language: Language; readonly demo: boolean; readonly title: string; readonly body: string };

/** `style`: a link to the style, or the style itself where the sheet stands alone. */
const documentOf = ({ language, demo, title, body }: Sheet, style: string): string =>
  `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="robots" content="noindex"><title>${escaped(title)}</title>${style}</head><body><main>${
    demo ? `<p class="demo">${escaped(ownPageWords[language].demo)}</p>` : ''
  }${body}</main></body></html>`;

const page = (sheet: Sheet): string => documentOf(sheet, '<link rel="stylesheet" href="/own-page.css">');
const list = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;

function warning({ say }: OwnPageSpeaker): string {
  return `<div class="warning"><p><strong>${escaped(say('notNow'))}</strong></p>${list(say('notNowItems', { emergency: say('emergency') }).split('|'))}</div>`;
}

export type BirthTrouble = { readonly is: 'wrong' } | { readonly is: 'wait'; readonly seconds: number };

/** Asks for the birth date before anything is shown; it does not say whose page it is. */
export function birthDatePage(language: Language, demo: boolean, trouble?: BirthTrouble): string {
  const { say } = speaker(language);
  const field = (name: 'day' | 'month' | 'year', label: string): string =>
    `<label>${escaped(label)}<input type="text" inputmode="numeric" name="${name}" autocomplete="bday-${name}" maxlength="4" required></label>`;
  const day = field('day', say('bornDay'));
  const month = field('month', say('bornMonth'));
  const said =
    trouble === undefined
      ? ''
      : `<p class="trouble" role="alert">${escaped(trouble.is === 'wrong' ? say('bornWrong') : say('bornWait', { seconds: String(trouble.seconds) }))}</p>`;
  return page({
    language,
    demo,
    title: say('bornTitle'),
    body: `<h1>${escaped(say('bornTitle'))}</h1>${said}<form method="post"><fieldset><legend>${escaped(say('bornAsk'))}</legend><div class="born">${language === 'en-US' ? month + day : day + month}${field('year', say('bornYear'))}</div></fieldset><button>${escaped(say('bornOpen'))}</button></form>`,
  });
}

/** The same for a page that is over and for one that never was. */
export function closedPage(language: Language): string {
  const { say } = speaker(language);
  return page({
    language,
    demo: false,
    title: say('closedTitle'),
    body: `<h1>${escaped(say('closedTitle'))}</h1><p>${escaped(say('closedSays'))}</p>`,
  });
}

function datesOf({ say, date, time }: OwnPageSpeaker, { visit, bloods, unit }: OwnPageFacts): string {
  const rows: (readonly [string, string])[] = [
    [
      say('visit'),
      visit === undefined
        ? say('noVisit')
        : say('visitAt', { date: date(visit.on), time: time(visit.arriveAt), unit: unit.name }),
    ],
    ...(bloods === undefined
      ? []
      : [[say('bloods'), say('bloodsAt', { from: date(bloods.from), until: date(bloods.until) })] as const]),
    [say('ringUs'), unit.telephone],
  ];
  return `<dl>${rows.map(([head, says]) => `<dt>${escaped(head)}</dt><dd>${escaped(says)}</dd>`).join('')}</dl>`;
}

function questionHtml({ say }: OwnPageSpeaker, question: AheadQuestion): string {
  const choice = (value: 'yes' | 'no'): string =>
    `<label><input type="radio" name="${question}" value="${value}">${escaped(say(value))}</label>`;
  return `<fieldset><legend>${escaped(say(question))}</legend>${choice('no')}${choice('yes')}<label>${escaped(say('more'))}<input type="text" name="${question}-words" maxlength="500"></label></fieldset>`;
}

/** `at`: the address of the page, to which its parts are added. `sheet`: a name of this very form, so that it is taken in once. */
export function ownPageHtml(
  facts: OwnPageFacts,
  { at, sheet, nothingSaid }: { readonly at: string; readonly sheet: string; readonly nothingSaid: boolean },
): string {
  const { language, demo, visit, toldOn } = facts;
  const speaks = speaker(language);
  const { say, date } = speaks;
  const links = [
    `<p><a href="${at}/pack">${escaped(say('pack'))}</a></p>`,
    ...(visit === undefined ? [] : [`<p><a href="${at}/visit.ics">${escaped(say('calendar'))}</a></p>`]),
  ].join('');
  const told = toldOn === undefined ? '' : `<p>${escaped(say('toldOn', { date: date(toldOn) }))}</p>`;
  const nothing = nothingSaid ? `<p class="trouble" role="alert">${escaped(say('nothing'))}</p>` : '';
  return page({
    language,
    demo,
    title: say('title'),
    body: `<h1>${escaped(say('title'))}</h1>${nothing}${warning(speaks)}<h2>${escaped(say('dates'))}</h2>${datesOf(speaks, facts)}${links}<h2>${escaped(say('questions'))}</h2><p>${escaped(say('questionsSay'))}</p>${told}<form method="post" action="${at}/told"><input type="hidden" name="sheet" value="${escaped(sheet)}">${aheadQuestions.map((question) => questionHtml(speaks, question)).join('')}<fieldset><legend>${escaped(say('otherDay'))}</legend><label>${escaped(say('otherDayHelp'))}<textarea name="other-day" rows="2" maxlength="500"></textarea></label></fieldset><button>${escaped(say('send'))}</button></form>`,
  });
}

export type ToldAnswers = Partial<Readonly<Record<AheadQuestion, { readonly answer: 'yes' | 'no' }>>>;

/** What happens with what they told us, and what to do until then. */
export function thanksPage(
  { language, demo }: Pick<OwnPageFacts, 'language' | 'demo'>,
  { answers, otherDay }: { readonly answers: ToldAnswers; readonly otherDay?: string | undefined },
  at: string,
): string {
  const speaks = speaker(language);
  const { say } = speaks;
  const worries = aheadQuestions.some((question) => answers[question]?.answer === looksOn(question));
  const says = [
    say('thanks'),
    ...(worries ? [say('thanksWorry'), say('thanksWorse', { night: say('night') })] : []),
    ...(otherDay === undefined ? [] : [say('thanksMove')]),
  ];
  return page({
    language,
    demo,
    title: say('thanksTitle'),
    body: `<h1>${escaped(say('thanksTitle'))}</h1>${says.map((line) => `<p>${escaped(line)}</p>`).join('')}${warning(speaks)}<p><a href="${at}">${escaped(say('back'))}</a></p>`,
  });
}

/** The same questions on paper, for whoever has no use for a page. */
export function questionsOnPaper(
  { language, demo, unit }: Pick<OwnPageFacts, 'language' | 'demo' | 'unit'>,
  about: string,
): string {
  const { say } = speaker(language);
  const box = (word: 'yes' | 'no'): string => `<span class="tick"></span>${escaped(say(word))}`;
  const questions = aheadQuestions.map(
    (question) =>
      `<li><p><strong>${escaped(say(question))}</strong> <span class="ticks">${box('no')}${box('yes')}</span></p><p class="line"></p></li>`,
  );
  const back =
    unit.address === undefined
      ? say('paperBackNoAddress', { unit: unit.name, telephone: unit.telephone })
      : say('paperBack', { unit: unit.name, address: unit.address, telephone: unit.telephone });
  return documentOf(
    {
      language,
      demo,
      title: say('paperTitle'),
      body: `<h1>${escaped(say('paperTitle'))}</h1><p><strong>${escaped(about)}</strong></p><p>${escaped(say('paperSay'))}</p><ol>${questions.join('')}</ol><p><strong>${escaped(say('paperDay'))}</strong></p><p class="line"></p><p>${escaped(back)}</p>`,
    },
    `<style>${ownPageStyle}</style>`,
  );
}
