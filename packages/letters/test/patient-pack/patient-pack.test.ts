/**
 * The patient pack: this person's own dates, what is said where something is not known, and how it looks. Content: practice page
 * 8 and safety page (common practice, no source); warning signs: fact sheet 7; amounts: fact sheet 2n (NHS Telford 2018, read).
 */
import { describe, expect, test } from 'vitest';
import { day } from '@twelvemonth/clinical';
import {
  type PackFacts,
  type PackSize,
  packParts,
  packPoints,
  packWords,
  patientPackHtml,
  patientPackOf,
  patientPackText,
} from '@twelvemonth/letters';
import { everyone, first, later } from './people.ts';

const textOf = (facts: PackFacts, ...parts: (typeof packParts)[number][]): string =>
  patientPackText(patientPackOf(facts, { parts: parts.length === 0 ? packParts : parts }).pack);

describe('this person', () => {
  test('getting ready: the place, the bloods between two dates, vitamin D to finish, medicines to ask about', () => {
    const text = textOf(first, 'getting ready');
    expect(text).toContain('Your drip is on Thursday 3 December 2026. Please come at 10:40.');
    expect(text).toContain('between Thursday 26 November 2026 and Monday 30 November 2026');
    expect(text).toContain('Finish your vitamin D course by Sunday 29 November 2026.');
    expect(text).toContain(
      'Ask us about these before the day: furosemide 40 mg, hydroxychloroquine. Do not stop them on your own.',
    );
    expect(text).toContain('Plan for about one and a half hours.');
  });
  test('a single day for bloods is a day, not a span', () => {
    const on = day('2026-11-30');
    const text = textOf({ ...first, bloods: { from: on, until: on } }, 'getting ready');
    expect(text).toContain('Have your blood test on Monday 30 November 2026.');
    expect(text).not.toContain('between');
  });
  test('vitamin D: a course that ends after the visit has no day to finish by, one nobody prescribed is not told as begun', () => {
    const told = (vitaminDCourse: PackFacts['vitaminDCourse']) => textOf({ ...first, vitaminDCourse }, 'getting ready');
    expect(told({ is: 'taken', endsOn: day('2026-12-31') })).toContain('Ask us when to finish your vitamin D course.');
    expect(told({ is: 'to be started' })).toContain('You need more vitamin D first.');
    expect(told({ is: 'to be started' })).not.toMatch(/Finish your vitamin D/);
  });
  test('how long is said as the clock of the day says it, and only a first-timer is asked to bring somebody', () => {
    // 35 minutes until it runs, 30 it runs, 15 of watch: 80, by the clock on the next sheet.
    const again = { ...first, firstTimer: false, minutes: { drip: 30, watch: 15 } };
    expect(textOf(again, 'getting ready')).toContain('Plan for about one and a half hours.');
    expect(textOf(again, 'getting ready')).not.toContain('someone to take you home');
    expect(textOf(first, 'getting ready')).toContain('someone to take you home, as this is your first time');
    const short = { ...first, minutes: { drip: 15, watch: 0 } };
    expect(textOf(short, 'getting ready')).toContain('Plan for about one hour.');
  });
  test('whoever has no drip ahead is told to get ready for none, and it says why', () => {
    const noneAhead = 'no dose is planned now: on planned break: review on 12 Mar 2028';
    const { pack, leftOut } = patientPackOf({ ...later, next: undefined, noneAhead }, { parts: packParts });
    expect(pack.parts.map(({ title }) => title)).toEqual(['After your drip']);
    expect(leftOut.slice(0, 2)).toEqual([
      { part: 'getting ready', because: noneAhead },
      { part: 'the day', because: noneAhead },
    ]);
    expect(patientPackOf({ ...later, noneAhead }, { easy: true }).leftOut).toEqual([
      { part: 'easy page', because: noneAhead },
    ]);
  });
  test('a day to worry on that has passed is not given: it is now', () => {
    const text = textOf({ ...first, today: day('2027-11-01') }, 'next year');
    expect(text).toContain('!! If you have not heard from us yet, ring 01632 960100.');
    expect(text).toContain('It is time to plan it.');
    expect(text).not.toMatch(/from Friday 24 September 2027|by Friday 8 October 2027/);
  });
  test('where nothing is known nothing is made up', () => {
    const text = textOf(later, 'getting ready', 'the day');
    expect(text).toContain('We will ring or write with your date.');
    expect(text).toContain('We will tell you if you need a blood test.');
    expect(text).not.toMatch(/\d{2}:\d{2}|20\d\d-|undefined|\{/);
  });
  test('the day: a clock of this visit', () => {
    const clock = textOf(first, 'the day').match(/^\d{2}:\d{2}/gm);
    // Arrives 10:40; drip from 11:15 for 30 minutes; watched 30 minutes; home 12:15.
    expect(clock).toEqual(['10:40', '10:45', '11:05', '11:15', '11:45', '12:15']);
    expect(textOf(first, 'the day')).toContain('at least 30 minutes');
  });
  test('next year: due, who calls from when, the day to worry, bloods not before', () => {
    const text = textOf(first, 'next year');
    expect(text).toContain('Your next drip is due from: Friday 3 December 2027');
    expect(text).toContain('We will ring or write to you from Friday 24 September 2027.');
    expect(text).toContain('!! If you have not heard from us by Friday 8 October 2027, ring 01632 960100.');
    expect(text).toContain('Batch: PA-2391');
    expect(textOf(later, 'next year')).toContain('You have had all the drips we had planned.');
  });
  test('without a next date the sheet is left out and it is said why', () => {
    const { pack, leftOut } = patientPackOf({ ...first, next: undefined }, { parts: packParts });
    expect(pack.parts).toHaveLength(3);
    expect(leftOut).toEqual([{ part: 'next year', because: expect.stringContaining('no date') }]);
  });
  test('every part names the person, for when the pages are parted', () => {
    expect(textOf(first).split('Wilhelmina Arkwright-Poe, born 2 June 1941, number 999 204 7713')).toHaveLength(5);
  });
});

describe('what must be said', () => {
  test.each(['en-GB', 'en-US'] as const)('%s: every warning sign of the fact sheet (7) has its line', (language) => {
    const text = textOf({ ...first, language }, 'afterwards');
    for (const sign of [
      /get your breath/, // anaphylaxis, bronchospasm
      /face, lips or tongue swell/,
      /pass out/,
      /chest hurts/,
      /heart races or skips/,
      /face drops/, // stroke
      /fever for more than three days, or above (39 degrees|102 F)/,
      /tingling round the mouth .* at any time in the next months/, // low calcium, for months
      /pass very little water/, // kidneys
      /red or sore eye.*same day/,
      /loose tooth, a sore jaw/,
      /thigh, hip or groin, at any time/,
      /ear hurts/,
    ])
      expect(text).toMatch(sign);
  });
  test('a first-timer hears that it is common, later ones that it is rarer, nobody that they are allergic', () => {
    expect(textOf(first, 'afterwards')).toMatch(
      /32 of 100 people.*7.*3\..*does not mean that you cannot have the next one/s,
    );
    expect(textOf({ ...later, next: first.next }, 'afterwards')).toContain('much less common now');
    for (const facts of everyone) expect(textOf(facts)).not.toMatch(/allerg/i);
  });
  test('drinking always has its exception', () => {
    for (const facts of everyone) {
      const drinks = textOf(facts).match(/[^.\n]*\bDrink\b[^.\n]*[.][^\n]*/g) ?? [];
      expect(drinks.length).toBeGreaterThan(1);
      expect(drinks.filter((line) => !/limit/.test(line))).toEqual([]);
    }
  });
  test('no pack tells anyone to leave out or stop a medicine', () => {
    for (const facts of everyone)
      for (const text of [textOf(facts), patientPackText(patientPackOf(facts, { easy: true }).pack)])
        expect(text).not.toMatch(/leave out|water tablet|diuretic|stop taking|skip your|do not take your/i);
  });
  test('to a patient never "not ready", "failed", "lost", "holiday"', () => {
    for (const facts of everyone) expect(textOf(facts)).not.toMatch(/not ready|failed|\blost\b|holiday/i);
  });
});

describe('paracetamol', () => {
  test('the amount, the hours between, the most in a day, for which weight of which day', () => {
    const text = textOf(first, 'afterwards');
    expect(text).toContain('You may take 1 or 2 tablets of paracetamol 500 mg, up to 4 times a day.');
    expect(text).toContain('Leave 4 hours or more between. Never take more than 8 tablets in 24 hours.');
    expect(text).toContain('This is for your weight of 56.2 kg on Friday 20 November 2026, and for a healthy liver.');
  });
  test('wherever an amount stands, the medicine is named in the same sentence, on the easy page too', () => {
    for (const language of ['en-GB', 'en-US'] as const) {
      const facts = { ...first, language };
      for (const text of [textOf(facts, 'afterwards'), patientPackText(patientPackOf(facts, { easy: true }).pack)]) {
        expect(text).toMatch(/tablets of (paracetamol|acetaminophen) 500 mg/);
        expect(text).toMatch(/nothing else you take.*warfarin/);
      }
    }
  });
  test('one tablet where the table has one', () => {
    const one = { ...first.paracetamol, tabletsADose: [1, 1], mostTabletsADay: 4 } as PackFacts['paracetamol'];
    expect(textOf({ ...first, paracetamol: one }, 'afterwards')).toContain(
      'You may take 1 tablet of paracetamol 500 mg',
    );
  });
  test.each(['not asked', 'liver', 'weight not known', 'weight too old', 'below the table'] as const)(
    'no amount at all: %s',
    (because) => {
      for (const language of ['en-GB', 'en-US'] as const) {
        const facts = { ...first, language, paracetamol: { told: false as const, because } };
        for (const text of [textOf(facts, 'afterwards'), patientPackText(patientPackOf(facts, { easy: true }).pack)]) {
          expect(text).toMatch(/Ask your nurse how much/);
          expect(text).not.toMatch(/\d+ tablets?|500 mg|times a day/);
        }
      }
    },
  );
  test('always: nothing else with it, warfarin asked about, a lasting fever is something else', () => {
    for (const facts of everyone)
      expect(textOf(facts, 'afterwards')).toMatch(
        /nothing else you take.*warfarin.*more than three days is not from the drip/s,
      );
  });
});

describe('languages', () => {
  test('have the same keys and the same places to fill in', () => {
    const places = (words: Record<string, string>) =>
      Object.fromEntries(
        Object.entries(words).map(([key, text]) => [key, [...text.matchAll(/\{\w+\}/g)].map(String).toSorted()]),
      );
    expect(places(packWords['en-US'])).toEqual(places(packWords['en-GB']));
    const lists = (words: Record<string, string>) => Object.values(words).map((text) => text.split('|').length);
    expect(lists(packWords['en-US'])).toEqual(lists(packWords['en-GB']));
  });
  test('American: acetaminophen, 911, call, month first, twelve hours', () => {
    const text = textOf({ ...first, language: 'en-US' });
    expect(text).toContain('on Thursday, December 3, 2026. Please come at 10:40 am.');
    expect(text).toMatch(/acetaminophen/);
    expect(text).toMatch(/Call 911/);
    expect(text).not.toMatch(/paracetamol|\b999 at\b|\bring (us|the|01632)/i);
  });
});

describe('how it looks', () => {
  const sizes = Object.entries(packPoints) as [PackSize, number][];
  test.each(sizes)('%s: %i pt, black on white, nothing loaded, nothing that runs', (size, points) => {
    const html = patientPackHtml(patientPackOf(first, { parts: packParts }).pack, size);
    expect(html).toContain(`font:${points}pt`);
    expect(
      [...html.matchAll(/#[0-9a-f]{3,6}/gi)].map(String).filter((colour) => !/^#(000|fff|555)$/i.test(colour)),
    ).toEqual([]);
    expect(html).not.toMatch(/<script|<link|<img|url\(|https?:|style="/);
    expect(html.length).toBeLessThan(60_000);
  });
  test('language, title, one first heading a part, no heading level left out', () => {
    const html = patientPackHtml(patientPackOf(first, { parts: packParts }).pack, 'normal');
    expect(html).toMatch(/^<!doctype html><html lang="en-GB"><head><meta charset="utf-8">/);
    expect(/<title>([^<]*)/.exec(html)?.[1]).toBe(
      'Getting ready for your drip · The day of your drip · After your drip · Your next drip',
    );
    expect(html.match(/<h1 /g)).toHaveLength(4);
    expect(html).not.toMatch(/<h[3-6]/);
    expect(html.match(/<th /g)?.length).toBe(html.match(/<th scope="row">/g)?.length);
    expect(html).toContain('counter(page) " / " counter(pages)');
  });
  test('who made it, which words, which day, which rules', () => {
    expect(textOf(first)).toContain(
      'Thornbeck Day Unit. pack-2, Wednesday 25 November 2026. Rules of the unit: thornbeck-1.',
    );
    expect(textOf(first)).toContain('DEMONSTRATION: NOBODY HERE IS REAL.');
    expect(textOf(later)).not.toMatch(/DEMONSTRATION/);
  });
  test('names of people and medicines cannot become markup', () => {
    const odd = { ...first, person: { ...first.person, name: '<b>Ann & "Bo"</b>' }, askAbout: ['a<script>'] };
    const html = patientPackHtml(patientPackOf(odd, { parts: packParts }).pack, 'normal');
    expect(html).toContain('&lt;b&gt;Ann &amp; &quot;Bo&quot;&lt;/b&gt;');
    expect(html).not.toContain('<script');
  });
  test('plain text says all that the document says', () => {
    const { pack } = patientPackOf(first, { parts: packParts });
    const bare = (text: string) => text.toLowerCase().replaceAll(/[^a-z0-9]+/g, ' ');
    const text = bare(patientPackText(pack));
    const lines = patientPackHtml(pack, 'normal')
      .replace(/<style>[\s\S]*?<\/style>|<title>[\s\S]*?<\/title>/g, '')
      .replaceAll(/<[^>]+>/g, '\n')
      .replaceAll('&#39;', "'")
      .split('\n')
      .map(bare)
      .filter((line) => line.trim() !== '');
    expect(lines.filter((line) => !text.includes(line.trim()))).toEqual([]);
  });
  test('the same facts, the same bytes; another medicine name never takes a part away', () => {
    const html = () => patientPackHtml(patientPackOf(first, { parts: packParts }).pack, 'large');
    expect(html()).toBe(html());
    const long = { ...first, askAbout: ['trimethoprim-sulfamethoxazole', 'spironolactone', 'hydrochlorothiazide'] };
    expect(patientPackOf(long, { parts: packParts }).leftOut).toEqual([]);
  });
  test('29 February: a year later is 28 February (readiness page)', () => {
    const next = { ...first.next, is: 'dose' as const, due: day('2029-02-28') } as NonNullable<PackFacts['next']>;
    expect(textOf({ ...first, next }, 'next year')).toContain('Wednesday 28 February 2029');
  });
});
