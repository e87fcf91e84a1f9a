/**
 * The page a person opens with their own address. What must not stand where others may see it: practice page 1a row 15, hazard 48.
 * How hard it may be to read: `references.md` 1.6 (grade 6, two counters of different make).
 */
import { aftercareScript, aheadQuestions, day, redFlagNamed, redFlagNames } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import {
  type OwnPageFacts,
  afterPage,
  afterThanksPage,
  birthDatePage,
  closedPage,
  fleschKincaidGrade,
  ownPageHtml,
  ownPageStyle,
  ownPageWords,
  questionsOnPaper,
  readingLevelOf,
  thanksPage,
  tooHardBecause,
} from '@twelvemonth/letters';
import { secondCounts } from '../patient-pack/second-counter.ts';

const facts: OwnPageFacts = {
  language: 'en-GB',
  demo: false,
  unit: { name: 'Thornbeck Day Unit', telephone: '01632 960100', address: '4 Weir Lane, Thornbeck' },
  visit: { on: day('2026-12-03'), arriveAt: '10:40' },
  bloods: { from: day('2026-11-26'), until: day('2026-11-30') },
  pack: true,
  dosedOn: undefined,
  toldOn: undefined,
};
const at = '/p/secret';
const form = { at, sheet: 'sheet-1', nothingSaid: false };
const american: OwnPageFacts = { ...facts, language: 'en-US' };
const shown = (html: string): string =>
  html
    .replaceAll(/<style>.*?<\/style>/gs, '')
    .replaceAll(/<[^>]+>/g, '\n')
    .replaceAll(/\n+/g, '\n');
const everyPage = (of: OwnPageFacts): readonly string[] => [
  ownPageHtml(of, form),
  thanksPage(of, { answers: { teeth: { answer: 'yes' } }, otherDay: 'Monday' }, at),
  birthDatePage(of.language, false, { is: 'wrong' }),
  closedPage(of.language),
  questionsOnPaper(of, 'Wilhelmina Arkwright-Poe, born 2 June 1941'),
];

describe('what it says', () => {
  test('the visit, the bloods between two dates, whom to ring, and that it is not for help in a hurry', () => {
    const text = shown(ownPageHtml(facts, form));
    expect(text).toContain('Thursday 3 December 2026 at 10:40, Thornbeck Day Unit');
    expect(text).toContain('between Thursday 26 November 2026 and Monday 30 November 2026, not before');
    expect(text).toContain('01632 960100');
    expect(text).toContain('Chest pain, or you cannot get your breath? Ring 999 now.');
    expect(text).toContain('No one reads this page at night');
  });
  test('without a place no date is made up and no calendar is offered', () => {
    const html = ownPageHtml({ ...facts, visit: undefined, bloods: undefined }, form);
    expect(html).not.toMatch(/visit\.ics|20\d\d|undefined|\{/);
  });
  test('sheets are offered only where there are any, and a single day for bloods is a day', () => {
    expect(ownPageHtml(facts, form)).toContain(`${at}/pack`);
    expect(ownPageHtml({ ...facts, pack: false }, form)).not.toContain(`${at}/pack`);
    const on = day('2026-11-30');
    expect(shown(ownPageHtml({ ...facts, bloods: { from: on, until: on } }, form))).toContain(
      'on Monday 30 November 2026, not before',
    );
  });
  test('every question is asked, and none is answered beforehand', () => {
    const html = ownPageHtml(facts, form);
    for (const question of aheadQuestions) expect(html).toContain(`name="${question}"`);
    expect(html).not.toContain('checked');
  });
  test('on paper the same questions stand in the same order', () => {
    const asked = aheadQuestions.map((question) => ownPageWords['en-GB'][question]);
    const onPaper = shown(questionsOnPaper(facts, 'W'));
    expect(asked.map((question) => onPaper.indexOf(question))).toEqual(
      asked.map((question) => onPaper.indexOf(question)).toSorted((a, b) => a - b),
    );
    expect(asked.every((question) => onPaper.includes(question))).toBe(true);
  });
  test('a worry is answered with what to do until somebody rings; none is not frightened', () => {
    const worried = shown(thanksPage(facts, { answers: { thigh: { answer: 'yes' } } }, at));
    expect(worried).toContain('If you get worse, do not wait for us. Ring your doctor, or 111 if they are closed.');
    expect(worried).toContain('Ring 999 now.');
    const cannotDrink = shown(thanksPage(facts, { answers: { 'can-drink': { answer: 'no' } } }, at));
    expect(cannotDrink).toContain('We may ring you');
    const well = shown(thanksPage(facts, { answers: { thigh: { answer: 'no' }, 'can-drink': { answer: 'yes' } } }, at));
    expect(well).not.toContain('If you get worse');
  });
  test('who asks for another day keeps the place until somebody has rung', () => {
    const text = shown(thanksPage(facts, { answers: {}, otherDay: 'any Monday' }, at));
    expect(text).toContain('your place is still yours');
  });
});

describe('how it is kept', () => {
  test('no drug, no diagnosis and no name stands on a page', () => {
    for (const html of [...everyPage(facts), ...everyPage(american)].filter((one) => !one.includes('Wilhelmina')))
      expect(shown(html)).not.toMatch(/zoledron|infusion|drip|osteopor|Arkwright/i);
  });
  test('what is not opened yet does not say whose it is', () => {
    expect(shown(birthDatePage('en-GB', false))).not.toMatch(/Thornbeck|2026/);
  });
  test('nothing runs in it, nothing is loaded but its own style, and it is far under 60 kB', () => {
    for (const html of everyPage(facts)) {
      expect(html).not.toMatch(/<script|<img|https?:/);
      expect(html.length + ownPageStyle.length).toBeLessThan(60_000);
    }
  });
  test('what came from the notes cannot become part of the page', () => {
    const html = ownPageHtml({ ...facts, unit: { ...facts.unit, name: '<b>x</b>' } }, form);
    expect(html).toContain('&lt;b&gt;x&lt;/b&gt;');
  });
  test('American English has its own order of a date, number to call and words', () => {
    const html = ownPageHtml(american, form);
    expect(html).toContain('Thursday, December 3, 2026 at 10:40 am');
    expect(shown(html)).toContain('Call 911 now.');
    const born = birthDatePage('en-US', false);
    expect(born.indexOf('name="month"')).toBeLessThan(born.indexOf('name="day"'));
  });
});

describe.each([facts, american])('how hard it is to read, $language', (of) => {
  test('grade 6 at most by both counters, no sentence over 20 words', () => {
    const words = ownPageWords[of.language];
    const prose = [
      ...aheadQuestions.map((question) => words[question]),
      ...(['notNow', 'questionsSay', 'thanks', 'thanksWorry', 'thanksMove', 'otherDayHelp', 'paperSay'] as const).map(
        (key) => words[key],
      ),
      ...(['closedSays', 'bornAsk', 'bornWrong', 'nothing', 'noVisit', 'paperDay'] as const).map((key) => words[key]),
      ...words.notNowItems.replaceAll('{emergency}', words.emergency).split('|'),
      words.thanksWorse.replace('{night}', words.night),
    ].join('\n');
    expect(tooHardBecause(prose)).toBeUndefined();
    expect(readingLevelOf(prose).grade).toBeLessThanOrEqual(6);
    expect(fleschKincaidGrade(secondCounts(prose))).toBeLessThanOrEqual(6);
  });
});

describe('after a dose', () => {
  const asking = { at, sheet: 'sheet-1', dosedOn: day('2026-12-03'), today: day('2026-12-05') };
  test('days since the dose are offered, by name, and no other', () => {
    const html = afterPage(facts, asking);
    expect(html).toContain('<option value="2026-12-03">Thursday 3 December 2026</option>');
    expect(html).toContain('<option value="2026-12-05">');
    expect(html).not.toContain('2026-12-06');
  });
  test('what to do now names the number of the place', () => {
    const flags = [redFlagNamed('chest pain or stroke signs'), redFlagNamed('more paracetamol than told')];
    expect(shown(afterThanksPage(facts, flags, at))).toContain('Ring 999 now. Do not wait for us');
    const us = shown(afterThanksPage(american, flags, at));
    expect(us).toContain('Call 911 now.');
    expect(us).toContain('Take no more acetaminophen.');
  });
  test('every danger sign and what to do about it reads at grade 6, no sentence over 20 words', () => {
    const prose = [
      ...aftercareScript.map(({ asks }) => asks),
      ...redFlagNames.map((name) => redFlagNamed(name).doNow),
      ...(['afterSay', 'afterMild', 'afterModerate', 'afterSevere', 'afterNotKept'] as const).map(
        (key) => ownPageWords['en-GB'][key],
      ),
    ].join('\n');
    expect(tooHardBecause(prose)).toBeUndefined();
    expect(fleschKincaidGrade(secondCounts(prose))).toBeLessThanOrEqual(6);
  });
});
