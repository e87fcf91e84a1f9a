/**
 * How somebody was after a dose, asked on their own page by the same script as on the telephone. What may not wait is answered
 * at once, at any hour, whether or not the rest of the form was complete.
 */
import {
  type Day,
  type RedFlag,
  type ScriptQuestion,
  addDays,
  aftercareScript,
  plainDate,
  symptomSeverities,
} from '@twelvemonth/clinical';
import { escaped } from '../letter.ts';
import type { OwnPageFacts } from './facts.ts';
import { saidIn } from '../speaker.ts';
import { type OwnPageSpeaker, page, speaker, warning } from './sheet.ts';

/** A form that came back, as it was filled in. */
export type AfterForm = Readonly<Record<string, string | undefined>>;

/** Longest a day is offered to choose from: what began later is told on the telephone (a list's length, common practice). */
const DAYS_OFFERED = 14;

/** The name a question has in the form. */
export const fieldOf = (question: ScriptQuestion): string =>
  question.id === 'sign'
    ? `sign ${question.sign}`
    : question.id === 'symptom'
      ? `felt ${question.symptom}`
      : question.id;

type Asking = Pick<OwnPageFacts, 'language'> & {
  readonly speaks: OwnPageSpeaker;
  readonly days: readonly Day[];
  readonly said: AfterForm;
};

const choice = (name: string, value: string, says: string, said: AfterForm, required: boolean): string =>
  `<label><input type="radio" name="${escaped(name)}" value="${escaped(value)}"${said[name] === value ? ' checked' : ''}${required ? ' required' : ''}>${escaped(says)}</label>`;

const group = (legend: string, inside: string): string =>
  `<fieldset><legend>${escaped(legend)}</legend>${inside}</fieldset>`;

const pickedFrom = (
  name: string,
  label: string,
  options: readonly (readonly [value: string, says: string])[],
  said: AfterForm,
): string =>
  `<label>${escaped(label)}<select name="${escaped(name)}">${options
    .map(
      ([value, says]) =>
        `<option value="${escaped(value)}"${said[name] === value ? ' selected' : ''}>${escaped(says)}</option>`,
    )
    .join('')}</select></label>`;

function questionHtml(question: ScriptQuestion, { speaks, language, days, said }: Asking): string {
  const { say, date } = speaks;
  const name = fieldOf(question);
  const asks = saidIn(language, question.asks);
  switch (question.id) {
    case 'feels':
    case 'drinks':
    case 'paracetamol':
      return group(asks, question.options.map((option) => choice(name, option, option, said, true)).join(''));
    case 'sign':
      return group(asks, choice(name, 'no', say('no'), said, false) + choice(name, 'yes', say('yes'), said, false));
    case 'symptom': {
      const none = ['', say('afterChoose')] as const;
      const each = days.map((day) => [plainDate(day), date(day)] as const);
      return group(
        asks,
        choice(name, 'no', say('no'), said, false) +
          choice(name, 'yes', say('yes'), said, false) +
          pickedFrom(`${name} began`, say('afterBegan'), [none, ...each], said) +
          pickedFrom(
            `${name} how bad`,
            say('afterHowBad'),
            [
              none,
              ...symptomSeverities.map(
                (severity) =>
                  [
                    severity,
                    say(({ mild: 'afterMild', moderate: 'afterModerate', severe: 'afterSevere' } as const)[severity]),
                  ] as const,
              ),
            ],
            said,
          ) +
          pickedFrom(
            `${name} over`,
            say('afterOver'),
            [
              none,
              ['not yet', say('afterNotOver')],
              ...days.map((day) => [plainDate(day), say('afterOverOn', { date: date(day) })] as const),
            ],
            said,
          ),
      );
    }
    case 'temperature':
    case 'words':
      return `<label>${escaped(question.id === 'words' ? say('afterWords') : say('afterTemperature', { unit: say('degrees') }))}<input type="text" name="${name}" maxlength="500" value="${escaped(said[name] ?? '')}"></label>`;
  }
}

export type AfterAsked = {
  readonly at: string;
  readonly sheet: string;
  readonly dosedOn: Day;
  readonly today: Day;
  /** What was sent and could not be taken in. */
  readonly said?: AfterForm;
  readonly missing?: readonly string[];
  readonly flags?: readonly RedFlag[];
};

export function afterPage(
  { language, demo }: Pick<OwnPageFacts, 'language' | 'demo'>,
  { at, sheet, dosedOn, today, said = {}, missing = [], flags = [] }: AfterAsked,
): string {
  const speaks = speaker(language);
  const { say } = speaks;
  const days = Array.from({ length: Math.min(today - dosedOn, DAYS_OFFERED) + 1 }, (_, index) =>
    addDays(dosedOn, index),
  );
  const asking = { speaks, language, days, said };
  const trouble =
    missing.length === 0
      ? ''
      : `<p class="trouble" role="alert">${escaped(say('afterMissing', { questions: missing.join('; ') }))}</p>`;
  const who = group(
    say('afterWho'),
    choice('who', 'the person', say('afterWhoSelf'), said, true) +
      choice('who', 'a carer or relative', say('afterWhoOther'), said, true),
  );
  return page({
    language,
    demo,
    title: say('afterTitle'),
    body: `<h1>${escaped(say('afterTitle'))}</h1>${flags.length === 0 ? '' : flagsHtml(speaks, flags, say('afterNotKept'))}${trouble}${warning(speaks)}<p>${escaped(say('afterSay'))}</p><form method="post" action="${at}/after"><input type="hidden" name="sheet" value="${escaped(sheet)}">${who}${aftercareScript.map((question) => questionHtml(question, asking)).join('')}<button>${escaped(say('send'))}</button></form>`,
  });
}

const flagsHtml = (speaks: OwnPageSpeaker, flags: readonly RedFlag[], kept: string): string =>
  `<div class="warning" role="alert"><h2>${escaped(speaks.say('afterNow'))}</h2>${flags
    .map(({ doNow }) => `<p><strong>${escaped(spoken(speaks, doNow))}</strong></p>`)
    .join('')}<p>${escaped(kept)}</p></div>`;

/** With the number itself, in the words of the place. */
function spoken({ say }: OwnPageSpeaker, doNow: string): string {
  const [ring] = say('ringUs').split(' ');
  return doNow
    .replaceAll(
      /\b([Rr])ing the emergency number/g,
      (_, first: string) => `${first === 'R' ? ring : ring?.toLowerCase()} ${say('emergency')}`,
    )
    .replaceAll('paracetamol', say('paracetamolName'));
}

/** What to do now where something may not wait; what to do if it gets worse, always. */
export function afterThanksPage(
  { language, demo }: Pick<OwnPageFacts, 'language' | 'demo'>,
  flags: readonly RedFlag[],
  at: string,
): string {
  const speaks = speaker(language);
  const { say } = speaks;
  return page({
    language,
    demo,
    title: flags.length === 0 ? say('thanksTitle') : say('afterNow'),
    body: `<h1>${escaped(flags.length === 0 ? say('thanksTitle') : say('afterTitle'))}</h1>${
      flags.length === 0 ? `<p>${escaped(say('thanks'))}</p>` : flagsHtml(speaks, flags, say('afterKept'))
    }<p>${escaped(say('afterWell', { night: say('night') }))}</p>${warning(speaks)}<p><a href="${at}">${escaped(say('back'))}</a></p>`,
  });
}
