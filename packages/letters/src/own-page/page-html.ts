/**
 * The pages a person sees through their own address: HTML that works without scripts, loads nothing, keeps one column at any
 * size, and is a few kilobytes.
 */
import { type AheadQuestion, aheadQuestions, looksOn } from '@twelvemonth/clinical';
import { escaped } from '../letter.ts';
import type { Language } from '../speaker.ts';
import type { OwnPageFacts } from './facts.ts';
import { type OwnPageSpeaker, documentOf, ownPageStyle, page, speaker, warning } from './sheet.ts';

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

function datesOf({ say, date, time, within }: OwnPageSpeaker, { visit, bloods, unit }: OwnPageFacts): string {
  const rows: (readonly [string, string])[] = [
    [
      say('visit'),
      visit === undefined
        ? say('noVisit')
        : say('visitAt', { date: date(visit.on), time: time(visit.arriveAt), unit: unit.name }),
    ],
    ...(bloods === undefined ? [] : [[say('bloods'), say('bloodsAt', { when: within(bloods) })] as const]),
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
    ...(facts.pack ? [`<p><a href="${at}/pack">${escaped(say('pack'))}</a></p>`] : []),
    ...(visit === undefined ? [] : [`<p><a href="${at}/visit.ics">${escaped(say('calendar'))}</a></p>`]),
  ].join('');
  const told = toldOn === undefined ? '' : `<p>${escaped(say('toldOn', { date: date(toldOn) }))}</p>`;
  const after =
    facts.dosedOn === undefined
      ? ''
      : `<p><a class="go" href="${at}/after">${escaped(say('afterLink', { date: date(facts.dosedOn) }))}</a></p>`;
  const nothing = nothingSaid ? `<p class="trouble" role="alert">${escaped(say('nothing'))}</p>` : '';
  return page({
    language,
    demo,
    title: say('title'),
    body: `<h1>${escaped(say('title'))}</h1>${nothing}${warning(speaks)}${after}<h2>${escaped(say('dates'))}</h2>${datesOf(speaks, facts)}${links}<h2>${escaped(say('questions'))}</h2><p>${escaped(say('questionsSay'))}</p>${told}<form method="post" action="${at}/told"><input type="hidden" name="sheet" value="${escaped(sheet)}">${aheadQuestions.map((question) => questionHtml(speaks, question)).join('')}<fieldset><legend>${escaped(say('otherDay'))}</legend><label>${escaped(say('otherDayHelp'))}<textarea name="other-day" rows="2" maxlength="500"></textarea></label></fieldset><button>${escaped(say('send'))}</button></form>`,
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
