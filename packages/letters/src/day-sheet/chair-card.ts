/**
 * The card of one person: what is known at the head, a box for each step and both signatures. What the preparer read stands
 * below the fold, so that the checker reads the pack without seeing it.
 */
import { type VisitStepName, lineLookedAlong } from '@twelvemonth/clinical';
import { escaped } from '../letter.ts';
import { type Language, saidIn } from '../speaker.ts';
import type { DaySheetPerson } from './facts.ts';

const box = (says: string): string => `<span class="one"><span class="box"></span>${escaped(says)}</span> `;
const boxes = (...all: readonly string[]): string => all.map(box).join('');
const blank = (before: string, after = ''): string =>
  `<span class="one">${escaped(before)} <span class="blank"></span>${after === '' ? '' : ` ${escaped(after)}`}</span> `;
/** Room for words. */
const words = (before: string): string =>
  `<span class="one">${escaped(before)} <span class="blank long"></span></span> `;
const identifiers = boxes('full name', 'birth date', 'number', 'address');
const signature = `<p class="sign">${blank('name')}${blank('signature')}</p>`;

/** A number without its unit would have to be guessed when it is typed in: where scales read either, the unit is ticked. */
const weightBlank: Readonly<Record<Language, string>> = {
  'en-GB': blank('weight', 'kg'),
  'en-US': `${blank('weight')}${boxes('kg', 'lb')}`,
};
const degrees: Readonly<Record<Language, string>> = { 'en-GB': '°C', 'en-US': '°F' };

type Line = {
  readonly step: VisitStepName;
  readonly title: string;
  readonly asks: string;
  /** The step is written with a time of its own. */
  readonly time: string;
};

function lines(
  { questions, leastMinutes, watchMinutes, running }: DaySheetPerson,
  language: Language,
): readonly Line[] {
  const at = 'at';
  return [
    { step: 'arrive', title: 'Arrived', time: at, asks: `asked and matched: ${identifiers}${blank('chair')}` },
    {
      step: 'observations',
      title: 'Observations',
      time: at,
      asks: `${weightBlank[language]}${blank('pulse', '/min')}${blank('pressure', '/')}${blank('', 'mmHg')}${blank('temperature', degrees[language])}${blank('saturation', '%')}<span class="one">pulse newly irregular: ${boxes('no', 'yes')}</span>`,
    },
    {
      step: 'checklist',
      title: 'Questions',
      time: at,
      asks:
        questions.length === 0
          ? 'no protocol is in force: ask nothing from this sheet, give no dose'
          : `<ul class="questions">${questions.map((asks) => `<li>${escaped(asks)} <span class="answer">${boxes('no', 'yes')}</span></li>`).join('')}</ul>`,
    },
    {
      step: 'decision',
      title: 'Decision',
      time: at,
      asks: `${boxes('go', 'put off', 'ask a prescriber')}${words('why')}${boxes('seen weeks before', 'in the last days', 'only today')}${words('what next')}${blank('by when')}${blank('whose')}${blank('who tells the patient')}${blank('by')}`,
    },
    {
      step: 'cannula',
      title: 'Cannula',
      time: at,
      asks: `${boxes('left', 'right')} ${boxes('forearm', 'hand', 'elbow')} gauge ${boxes('20', '22', '24')}${blank('tries')}${blank('by')}`,
    },
    {
      step: 'flush',
      title: 'Flush',
      time: at,
      asks: `${blank('saline', 'mL')}${boxes('ran freely, no swelling', 'nothing with calcium in this line')}`,
    },
    {
      step: 'second check',
      title: 'Second check, by another person',
      time: at,
      asks: `Fold the foot of this page back first. Your own reading of the pack: ${blank('product and strength')}${blank('last four of the batch')}${blank('expiry, month')}${blank('pump', 'mL/h')}or ${blank('minutes')} matched: ${identifiers}${signature}`,
    },
    {
      step: 'infusion',
      title: 'Infusion',
      time: 'started at',
      asks: `${
        running === undefined
          ? `at the chair: ${identifiers}<br><span class="one">along the line: <span class="box"></span>${lineLookedAlong}</span> `
          : `<strong>in the notes: ${escaped(running)}</strong><br>`
      }site after 5 minutes: ${boxes('well', 'not well: stop, look, resite')}paused from <span class="blank short"></span> to <span class="blank short"></span>, from <span class="blank short"></span> to <span class="blank short"></span><br>${
        leastMinutes === undefined
          ? 'no protocol is in force: the shortest running time is not known'
          : `a whole dose runs at least ${leastMinutes} minutes; paused minutes do not count`
      } · <strong>ended at</strong> <span class="blank short"></span> ${blank('given', 'mL')}${blank('timed by whom, which clock')}${words('if stopped: why')}`,
    },
    {
      step: 'removal',
      title: 'Cannula out',
      time: at,
      asks: `site ${boxes('looks well', 'red', 'swollen', 'bruised')}`,
    },
    {
      step: 'observe',
      title: 'Watched',
      time: at,
      asks: `${blank('minutes')}${watchMinutes === undefined ? '' : `(${watchMinutes} by the protocol) `}${boxes('well', 'not well:')}<span class="blank"></span>`,
    },
    { step: 'leave', title: 'Left', time: at, asks: boxes(saidIn(language, 'card with whom to ring given')) },
  ];
}

const lineHtml = ({ step, title, asks, time }: Line, { recorded }: DaySheetPerson): string => {
  const already = recorded[step];
  return `<tr><th scope="row">${escaped(title)}</th>${
    already === undefined
      ? `<td>${asks}</td><td class="time">${escaped(time)}</td>`
      : `<td colspan="2"><strong>in the notes: ${escaped(already)}</strong></td>`
  }</tr>`;
};

/** Below the fold: the one who prepares writes it before, and the checker does not see it. */
function preparation({ recorded }: DaySheetPerson, language: Language): string {
  const already = recorded.preparation;
  return `<div class="fold"><p class="foldwords">fold back here before the second check</p><h3>Preparation, by whoever gives it</h3>${
    already === undefined
      ? `<p>From the pack: ${blank('product and strength')}${blank('batch')}${blank('expiry')}${blank('to run in', 'minutes')}${boxes(saidIn(language, 'clear and colourless'))} matched: ${identifiers}${blank('at')}</p>${signature}`
      : `<p><strong>In the notes: ${escaped(already)}</strong></p>`
  }</div>`;
}

export function chairCard(person: DaySheetPerson, language: Language): string {
  const { arriveAt, name, born, number, dose, firstTimer, allergies, armToAvoid, needs, nearNames } = person;
  const also = [
    ...(armToAvoid === undefined ? [] : [`NOT the ${armToAvoid}`]),
    ...needs,
    ...(nearNames.length === 0 ? [] : [`near names today: ${nearNames.join(', ')}`]),
  ];
  return `<div class="who"><h2>${escaped(name)}</h2><p><strong>born ${escaped(born)} · ${escaped(number)}</strong> · comes at ${escaped(arriveAt)}${person.chair === undefined ? '' : ` · chair ${person.chair}`} · ${escaped(dose)}${firstTimer && dose !== 'first dose' ? ' · first time' : ''}${person.nurse === undefined ? '' : ` · nurse ${escaped(person.nurse)}`}</p><p class="allergies">${escaped(allergies)}</p>${
    also.length === 0 ? '' : `<p>${escaped(also.join(' · '))}</p>`
  }<p>${escaped(saidIn(language, person.readiness))}</p><p>Ordered: ${escaped(person.order)}</p></div><table class="steps"><colgroup><col><col><col></colgroup><tbody>${lines(
    person,
    language,
  )
    .map((line) => lineHtml(line, person))
    .join(
      '',
    )}</tbody></table>${preparation(person, language)}<p class="typed">${blank('typed into the notes by')}${blank('on')}</p>`;
}
