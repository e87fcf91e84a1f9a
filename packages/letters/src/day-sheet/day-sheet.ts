/**
 * The day sheet: the list of a session on paper, and a card for each person with a box for each step, for when the network is
 * down. Pages are made here and not by the browser, so that each says which of how many it is wherever it is printed.
 */
import { escaped } from '../letter.ts';
import { type Language, paperOf, saidIn, weekdayDateIn } from '../speaker.ts';
import { chairCard } from './chair-card.ts';
import type { DaySheetFacts, DaySheetPerson } from './facts.ts';

/** Signs that stand on one line of each column, with room to spare: bold and broken words take more. */
const signsALine = { who: 22, dose: 8, words: 30 } as const;
/** Lines of the list that fit a page under its head, with what is said below the first. A row takes a third of one more. */
const linesAPage = 52;
const rowAlone = 0.4;

const linesOf = (text: string, signs: number): number => Math.max(1, Math.ceil(text.length / signs));

/** As many as the longest of its columns needs. */
const linesOfRow = ({ name, dose, nurse, allergies, readiness }: DaySheetPerson): number =>
  rowAlone +
  Math.max(
    linesOf(name, signsALine.who) + 2,
    linesOf(dose, signsALine.dose),
    linesOf(allergies, signsALine.words),
    linesOf(readiness, signsALine.words) + (nurse === undefined ? 0 : linesOf(`nurse ${nurse}`, signsALine.words)),
  );

/** Whoever fits on one page of the list stands on it: nobody leafs for one more name. */
function onPages(people: readonly DaySheetPerson[]): readonly (readonly DaySheetPerson[])[] {
  const pages: DaySheetPerson[][] = [[]];
  let lines = 0;
  for (const person of people) {
    const more = linesOfRow(person);
    if (lines + more > linesAPage && lines > 0) {
      pages.push([]);
      lines = 0;
    }
    pages.at(-1)?.push(person);
    lines += more;
  }
  return pages;
}

const listHeads = ['time', 'who', 'dose', 'allergies', 'readiness, as far as is known', 'chair'];

const row = (
  { arriveAt, name, born, number, dose, allergies, readiness, chair, nurse }: DaySheetPerson,
  language: Language,
): string =>
  `<tr><td>${escaped(arriveAt)}</td><td><strong>${escaped(name)}</strong><br>born ${escaped(born)}<br>${escaped(number)}</td><td>${escaped(dose)}</td><td>${escaped(allergies)}</td><td>${escaped(saidIn(language, readiness))}${nurse === undefined ? '' : `<br>nurse ${escaped(nurse)}`}</td><td>${chair ?? ''}</td></tr>`;

function listPages(people: readonly DaySheetPerson[], language: Language): readonly string[] {
  let from = 0;
  return onPages(people).map((some) => {
    const [first, last] = [from + 1, from + some.length];
    const rest = some.length === people.length ? '' : `: ${first} to ${last} of ${people.length}`;
    const isFirst = from === 0;
    from = last;
    return `<h2>The list${rest}</h2>${
      some.length === 0
        ? '<p>Nobody is on the list.</p>'
        : `<table class="list"><thead><tr>${listHeads.map((head) => `<th scope="col">${escaped(head)}</th>`).join('')}</tr></thead><tbody>${some.map((person) => row(person, language)).join('')}</tbody></table>`
    }${
      isFirst
        ? '<p><strong>A sheet of this day printed later stands instead of this one: the higher commit number is the newer. Put this one away then, and type in first what was written on it.</strong></p><p>For when the network is down: a card for each person follows, to lie at the chair. Steps are written with their time; whoever gives a dose and whoever checks it both sign. Type it into the notes as soon as the network is back. Local protocol and a licensed prescriber decide.</p>'
        : ''
    }`;
  });
}

/** Black on white, no shade or colour that says anything. Letter paper is 18 mm shorter than A4, so there it is set a little smaller. */
const sheet = (language: Language): string => `
body{font:9.5pt/1.3 "Atkinson Hyperlegible Next",Arial,sans-serif;color:#000;background:#fff;margin:0}
section{max-width:190mm;margin:0 auto 10mm;padding:0 4mm}h1{font-size:12pt;margin:0}h2{font-size:13pt;margin:1mm 0}h3{font-size:9.5pt;margin:0}p{margin:.5mm 0;overflow-wrap:anywhere}
.head{display:flex;justify-content:space-between;gap:6mm;border-bottom:1.5pt solid #000;padding-bottom:.8mm}.head div:last-child{text-align:right}
table{border-collapse:collapse;width:100%}th,td{border:.6pt solid #000;padding:.6mm 1.2mm;text-align:left;vertical-align:top;overflow-wrap:anywhere}
.list{font-size:8.4pt;table-layout:fixed}.list :is(th,td):nth-child(1){width:11mm}.list :is(th,td):nth-child(2){width:42mm}.list :is(th,td):nth-child(3){width:16mm}.list :is(th,td):nth-child(6){width:12mm}.list td:first-child{font-weight:700}
.steps{font-size:8.4pt;line-height:1.19;table-layout:fixed}.steps :is(th,td){padding-block:.35mm}.steps col:first-child{width:25mm}.steps col:last-child{width:20mm}.who{margin-bottom:1mm}.allergies{border:1.5pt solid #000;padding:.3mm 1.5mm;font-weight:700}
.one{white-space:nowrap;display:inline-block;margin-right:1.5mm}.box{display:inline-block;width:2.8mm;height:2.8mm;border:.8pt solid #000;margin:0 1mm -.4mm 0}.blank{display:inline-block;min-width:17mm;border-bottom:.6pt solid #000;height:4mm}.short{min-width:11mm}.long{min-width:34mm}
.questions{margin:0;padding:0;list-style:none;columns:2;column-gap:4mm}.questions li{break-inside:avoid;display:flex;justify-content:space-between;gap:2mm}.answer{flex:none}
.sign .blank{min-width:46mm;height:5.2mm}.fold{border-top:1pt dashed #000;margin-top:1.2mm;font-size:8.4pt}.foldwords{text-align:center;font-size:7.5pt;margin-top:0}.typed{border-top:.6pt solid #000;margin-top:1.5mm;font-size:8.4pt}.demo{font-weight:700}
@page{size:${paperOf(language)} portrait;margin:8mm 10mm 7mm}@media print{section{max-width:none;margin:0;padding:0 .4mm 0 0${language === 'en-US' ? ';zoom:.95' : ''}}section+section{break-before:page}}`;

/** A whole HTML document; nothing in it runs or is loaded from anywhere. */
export function daySheetHtml(facts: DaySheetFacts): string {
  const { language, unit, on, printedAt, commit, protocolVersion, people } = facts;
  const pages = [
    ...listPages(people, language),
    ...people.filter(({ gone }) => !gone).map((person) => chairCard(person, language)),
  ];
  const head = (page: number): string =>
    `<div class="head"><div><h1>Day sheet · ${escaped(unit.name)}</h1><p>${escaped(weekdayDateIn(language, on))}${unit.demo ? ' · <span class="demo">Demonstration: nobody here is real.</span>' : ''}</p></div><div><strong>page ${page} of ${pages.length}</strong><p>printed ${escaped(printedAt)} · last commit ${commit} · ${protocolVersion === undefined ? 'no protocol in force' : `protocol ${escaped(protocolVersion)}`}</p></div></div>`;
  const title = `Day sheet of ${weekdayDateIn(language, on)}, ${unit.name}`;
  return `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(title)}</title><style>${sheet(language)}</style></head><body><main>${pages.map((page, index) => `<section aria-label="page ${index + 1}">${head(index + 1)}${page}</section>`).join('')}</main></body></html>`;
}
