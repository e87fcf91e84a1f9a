/**
 * The letters: what a person must find in each, that they are easy to read, and when one is not printed. Contents: practice page
 * 1a rows 4, 6, 14, 15 and 22 to 29, safety page "the service around the unit" (common practice, no source). Reading level: AMA
 * and NHS guidance, grade 6 (fact sheet 2k, from memory), by two counters of different make.
 */
import { describe, expect, test } from 'vitest';
import { day, letterSheet } from '@twelvemonth/clinical';
import {
  type LetterFacts,
  type LetterMatter,
  type LetterName,
  fleschKincaidGrade,
  letterHtml,
  letterNames,
  letterSorts,
  letterText,
  letterWords,
  lettersHtml,
  proseIn,
  readingLimits,
  writeLetter,
} from '@twelvemonth/letters';
import { secondCounts } from '../patient-pack/second-counter.ts';
import { matters, someone } from './everyone.ts';

const languages = ['en-GB', 'en-US'] as const;
const written = (matter: LetterMatter, more: Partial<LetterFacts> = {}) => writeLetter({ ...someone, ...more, matter });
const firstOf = (name: LetterName): LetterMatter => {
  const found = matters.find((matter) => matter.name === name);
  if (found === undefined) throw new Error(`no example of ${name}`);
  return found;
};
const textOf = (matter: LetterMatter, more: Partial<LetterFacts> = {}): string =>
  letterText(written(matter, more).letter);

describe('every letter', () => {
  test('is written in both languages, names who writes and may be printed', () => {
    expect(new Set(matters.map(({ name }) => name))).toEqual(new Set(letterNames));
    for (const language of languages) {
      for (const matter of matters) {
        const { letter, notPrintable } = written(matter, { language });
        expect([matter, notPrintable]).toEqual([matter, []]);
        expect(letterSheet.parse(letter)).toEqual(letter);
        const text = letterText(letter);
        expect(text).toContain('01632 960100');
        expect(text).toContain('Imre Sandoval, nurse in charge');
        expect(text).not.toMatch(/undefined|\{|\bNaN\b/);
      }
    }
  });
  test('to the person reads at grade 6 or below, in sentences of 20 words or fewer, by both counters', () => {
    for (const language of languages) {
      for (const matter of matters.filter(({ name }) => letterSorts[name].to === 'patient')) {
        const { letter } = written(matter, { language, unit: { ...someone.unit, name: 'our unit' } });
        const second = secondCounts(proseIn(letter.blocks.slice(1)).join('\n'));
        expect([matter, fleschKincaidGrade(second) <= readingLimits.grade]).toEqual([matter, true]);
        expect(second.longest).toBeLessThanOrEqual(readingLimits.wordsInASentence);
      }
    }
  });
  test('never tells anyone to leave out a medicine, and never says failed or lost', () => {
    for (const matter of matters)
      expect(textOf(matter)).not.toMatch(/leave out|water tablet|diuretic|failed|\blost\b/i);
  });
  test('is the same every time: byte for byte', () => {
    for (const matter of matters) expect(letterHtml(written(matter).letter)).toBe(letterHtml(written(matter).letter));
  });
});

describe('what each must say', () => {
  test.each<[LetterName, readonly (string | RegExp)[]]>([
    ['invitation', ['Thursday 3 December 2026', '13:40', 'between Thursday 26 November 2026', 'If you cannot come']],
    ['bloods needed', ['Tests: creatinine, adjusted calcium', 'A test before then does not count', 'kidneys']],
    [
      'put off',
      ['Tuesday 24 November 2026', 'We need a new blood test.', 'What comes next', 'Tuesday 8 December 2026'],
    ],
    ['no answer', ['due from Thursday 25 November 2027', 'by Wednesday 9 December 2026', 'You may say no']],
    [
      'no answer, to the family doctor',
      ['three calls, a letter', 'Last dose: Tuesday 25 November 2025', 'They have died'],
    ],
    ['review outcome', ['up to 6 in all', 'We will ring or write to you', 'you break a bone', 'calcium and vitamin D']],
    [
      'transfer',
      [
        /stay on our list until you tell us/,
        'batch PA-2391',
        'no known allergies',
        '1 of 3 planned',
        'fever and aching, 2 days',
        'We have them on our list',
      ],
    ],
    ['closing', ['has come to an end', 'you break a bone', 'If you want to come back']],
    [
      'request to the family doctor',
      ['creatinine and adjusted calcium', 'Wednesday 9 December 2026', 'What you cannot do'],
    ],
    [
      'request to the dentist',
      [
        'first dose of zoledronic acid 5 mg',
        'rare at this dose',
        'do not tell them to stop',
        'We cannot see them in time',
      ],
    ],
  ])('%s', (name, wanted) => {
    const text = textOf(firstOf(name));
    for (const one of wanted) expect(text).toMatch(typeof one === 'string' ? new RegExp(escapedIn(one)) : one);
  });
  test('whoever has injections reads of an injection, and that it has to be on time', () => {
    const treatment = { medicine: 'denosumab 60 mg', by: 'injection' } as const;
    for (const language of languages)
      for (const matter of matters.filter(
        ({ name }) => name !== 'transfer' && name !== 'no answer, to the family doctor',
      )) {
        const { letter, notPrintable } = written(matter, { language, treatment });
        expect([matter, notPrintable]).toEqual([matter, []]);
        const text = letterText(letter);
        if (matter.name === 'put off' && matter.reason === 'no cannula') continue;
        expect(text).not.toMatch(/\bdrip\b|infusion|zoledronic/);
      }
    expect(textOf(firstOf('invitation'), { treatment })).toMatch(
      /Your place for the injection[\s\S]*has to be on time/,
    );
    expect(textOf(firstOf('invitation'), { treatment })).not.toContain('The sheets with this letter');
    expect(textOf(firstOf('request to the dentist'), { treatment })).toContain('can lead to broken spine bones');
    expect(textOf(firstOf('invitation'))).not.toContain('has to be on time');
  });
  test('a dentist is not told that harm is rare at the dose of an oncology service', () => {
    const treatment = { medicine: 'denosumab 120 mg', by: 'injection' } as const;
    expect(textOf(firstOf('request to the dentist'), { treatment })).not.toContain('rare');
  });
  test('a family doctor is not told of a next dose where none is planned', () => {
    const noDose = matters.find((one) => one.name === 'request to the family doctor' && !one.doseAhead);
    expect(textOf(noDose ?? firstOf('closing'))).not.toContain('the next dose of');
    expect(textOf(firstOf('request to the family doctor'))).toContain('the next dose of zoledronic acid 5 mg');
  });
  test('a day to worry on that has passed is not given: it is now; what a nurse wrote is a sentence', () => {
    const passed: LetterMatter = {
      name: 'put off',
      on: day('2026-11-05'),
      reason: 'bloods',
      nextStep: 'bloods again, then another place',
      worryOn: day('2026-11-17'),
    };
    expect(textOf(passed)).toContain('If you have not heard from us yet, ring 01632 960100.');
    expect(textOf(passed)).not.toContain('17 November');
    expect(textOf(passed)).toContain('- Bloods again, then another place.');
  });
  test('a single day for bloods is a day, not a span', () => {
    const on = day('2026-11-30');
    const text = textOf({ name: 'bloods needed', between: { from: on, until: on }, tests: ['creatinine'] });
    expect(text).toContain('Have it on Monday 30 November 2026.');
    expect(text).toContain('When: on Monday 30 November 2026');
    expect(text).not.toContain('between');
  });
  test('a planned break names its end, another treatment its day and whom to ring when it has not begun', () => {
    const outcome = (found: string): LetterMatter =>
      matters.find((one) => one.name === 'review outcome' && one.decided.outcome === found) ?? firstOf('closing');
    expect(textOf(outcome('planned break'))).toContain('Sunday 25 November 2029');
    expect(textOf(outcome('planned break'))).not.toContain('holiday');
    expect(textOf(outcome('other treatment'))).toMatch(
      /start on Sunday 20 December 2026[\s\S]*If it has not, ring 01632/,
    );
  });
  test('those who do not know the person get a form to send back, with an address and a day', () => {
    for (const matter of matters.filter(({ name }) => letterSorts[name].to !== 'patient')) {
      const { blocks } = written(matter).letter;
      expect(blocks.at(-1)).toMatchObject({ kind: 'reply', sendBackTo: expect.stringContaining('4 Weir Lane') });
      expect(textOf(matter)).toContain('9 December 2026');
    }
  });
  test('American: dates, times, and words of there', () => {
    const text = textOf(firstOf('invitation'), { language: 'en-US' });
    expect(text).toContain('Thursday, December 3, 2026');
    expect(text).toContain('1:40 pm');
    expect(text).toContain('you have been sick');
    for (const [key, value] of Object.entries(letterWords['en-US']))
      expect([key, value]).not.toEqual([key, expect.stringMatching(/\bring (?:us|\{telephone\})/)]);
  });
});

const escapedIn = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

describe('what may not be printed', () => {
  test('a letter to nobody: no address, no family doctor, no dentist', () => {
    const nowhere = { ...someone.person, address: undefined };
    expect(written(firstOf('invitation'), { person: nowhere }).notPrintable).toEqual([
      'no address of the person is in the notes',
    ]);
    const nobody = { name: undefined, address: undefined };
    expect(written(firstOf('request to the dentist'), { reader: nobody }).notPrintable).toEqual([
      'no dentist is named in the notes',
    ]);
    expect(written(firstOf('no answer, to the family doctor'), { reader: nobody }).notPrintable).toEqual([
      'no family doctor is named in the notes',
    ]);
  });
  test('a form that cannot come back', () =>
    expect(
      written(firstOf('request to the dentist'), { unit: { ...someone.unit, postalAddress: undefined } }).notPrintable,
    ).toEqual([expect.stringContaining('no postal address')]));
  test('words too hard to read, whoever wrote them: the reason names the sentence or the grade', () => {
    const hard = {
      ownWords: 'Administration necessitates precautionary rehydration notwithstanding contraindications.',
    };
    expect(written({ name: 'closing' }, hard).notPrintable).toEqual([
      expect.stringMatching(/^too hard to read: reading grade/),
    ]);
    const nextStep =
      'Venepuncture for biochemistry necessitates attendance notwithstanding previously communicated arrangements '.repeat(
        4,
      );
    const putOff: LetterMatter = {
      name: 'put off',
      on: day('2026-11-24'),
      reason: 'bloods',
      nextStep,
      worryOn: undefined,
    };
    expect(written(putOff).notPrintable).toContainEqual(expect.stringMatching(/^too hard to read: a sentence of/));
    const long = { ownWords: `${'and so on '.repeat(7)}it goes.` };
    expect(written(firstOf('request to the dentist'), long).notPrintable).toEqual([
      expect.stringMatching(/^a sentence of \d+ words/),
    ]);
  });
});

describe('on paper', () => {
  test('many letters are one document, each on a page of its own, the reply form on another', () => {
    const letters = matters.map((matter) => written(matter).letter);
    const html = lettersHtml('Letters to send', letters);
    expect(html.match(/<h1>/g)).toHaveLength(letters.length);
    expect(html).toContain('<title>Letters to send</title>');
    expect(html).toContain('article+article{break-before:page}');
    expect(html).toContain('.reply{break-before:page}');
    expect(html).not.toMatch(/src=|href=|url\(/);
  });
  test('the name in a greeting and the address are text, never markup', () => {
    const person = { ...someone.person, name: '<b>X</b>', address: '<i>Y</i>' };
    expect(letterHtml(written({ name: 'closing' }, { person }).letter)).not.toMatch(/<b>X|<i>Y/);
  });
});
