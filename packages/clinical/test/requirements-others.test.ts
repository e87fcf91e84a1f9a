/** Who it is, what they told and agreed to, what was ordered (docs/readiness.md R8, R9), day by day at its edges. Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  type GradedTerm,
  type RequirementId,
  addDays,
  day,
  requirementIds,
  requirements,
} from '@twelvemonth/clinical';
import { judge, verdictsOn, verdictOf } from './judging.ts';
import { type Line, asked, at, born, doseGiven } from './person.ts';

describe('identity', () => {
  test.each([
    ['1941-06-02', 'ready'],
    ['1941-06', 'cannot say'],
    ['1941', 'cannot say'],
    ['2027-01-01', 'cannot say'],
  ])('born %s: %s', (birth, expected) => {
    expect(verdictOf('identity', [born(birth)])).toBe(expected);
  });
  test('nobody recorded: cannot say', () => expect(verdictOf('identity', [])).toBe('cannot say'));
  // Zoledronic acid product text 4.2 (EU/UK): not for those under 18 (from memory).
  test('under 18 nothing is said, from the birthday on it is', () => {
    const lines = [born('2008-11-30')];
    expect(verdictOf('identity', lines, day('2026-11-29'))).toBe('cannot say');
    expect(verdictOf('identity', lines, day('2026-11-30'))).toBe('ready');
  });
});

describe('hypersensitivity', () => {
  const none = at('2026-01-01', 'allergy', { answer: 'none known' });
  const other = (substance: string, medicine?: Extract<BodyOfKind<'allergy'>, { answer: 'other' }>['medicine']) =>
    at('2026-01-01', 'allergy', { answer: 'other', substance, ...(medicine === undefined ? {} : { medicine }) });
  const ours = at('2025-01-01', 'allergy', { answer: 'bisphosphonate', reaction: 'rash after tablets' });
  test('silence is not "none"', () => expect(verdictOf('hypersensitivity', [])).toBe('cannot say'));
  test('"none known", and an allergy that says it is to no bone medicine, pass', () => {
    expect(verdictOf('hypersensitivity', [none])).toBe('ready');
    expect(verdictOf('hypersensitivity', [other('penicillin', 'medicine not for bones')])).toBe('ready');
    expect(verdictOf('hypersensitivity', [other('latex', 'not a medicine')])).toBe('ready');
    expect(verdictOf('hypersensitivity', [other('denosumab', 'denosumab')])).toBe('ready');
  });
  // Zoledronic acid product text 4.3 (EU/UK): any bisphosphonate.
  test.each([
    ['the answer', other('the weekly tablet', 'bisphosphonate')],
    ['words in the substance', other('alendronic acid 70 mg', 'medicine not for bones')],
    ['misspelt', other('Risedronat', 'not known which')],
    ['the group', other('biphosphonates')],
    [
      'words in the reaction',
      at('2026-01-01', 'allergy', { answer: 'other', substance: 'tablet', reaction: 'gullet, ibandronate' }),
    ],
  ])('an allergy written as "other" that names a bisphosphonate stops: %s', (_, line) =>
    expect(verdictOf('hypersensitivity', [line, none])).toBe('not ready'),
  );
  // Common practice, no source: unknown is never safe.
  test('one that does not say which medicine it is to: cannot say, until it is corrected', () => {
    expect(verdictOf('hypersensitivity', [other('penicillin'), none])).toBe('cannot say');
    expect(verdictOf('hypersensitivity', [other('a drip', 'not known which')])).toBe('cannot say');
    const told = at('2026-01-01', 'allergy', { answer: 'other', substance: 'a drip' }, 'told');
    const corrected: Line = {
      ...at('2026-01-02', 'allergy', { answer: 'other', substance: 'vancomycin', medicine: 'medicine not for bones' }),
      amends: 'told',
    };
    expect(verdictOf('hypersensitivity', [told, corrected])).toBe('ready');
  });
  const reacted = (severity: 'mild' | 'moderate' | 'severe') =>
    at('2025-10-02', 'reaction', { what: 'face swollen, wheeze', severity }, 'reaction');
  const lookedInto = (about: string) =>
    at('2026-10-01', 'prescriber-decision', {
      question: 'severe reaction looked into',
      about,
      reason: 'flu-like, no allergy',
    });
  // Safety page, hazard 64: common practice, no source.
  test('a severe reaction to an earlier dose holds every date until a prescriber has decided about it', () => {
    expect(verdictsOn('hypersensitivity', [none, reacted('severe')], '2026-11-25', '2029-01-01')).toEqual([
      'cannot say',
      'cannot say',
    ]);
    expect(verdictOf('hypersensitivity', [none, reacted('severe'), lookedInto('reaction')])).toBe('ready');
    expect(verdictOf('hypersensitivity', [none, reacted('severe'), lookedInto('another')])).toBe('cannot say');
    expect(verdictOf('hypersensitivity', [none, reacted('mild')])).toBe('ready');
    expect(verdictOf('hypersensitivity', [none, reacted('moderate')])).toBe('ready');
  });
  const graded = (term: GradedTerm, grade: number | undefined, severity: 'mild' | 'moderate' = 'mild') =>
    at('2025-10-02', 'reaction', { what: 'felt', severity, term, grade, gradeVersion: '5.0' }, 'reaction');
  // CTCAE 5.0, general scale: grade 3 is severe (reference sheet 2.7).
  test('a grade of 3 is severe whatever it was called; of 2 it is not', () => {
    expect(verdictOf('hypersensitivity', [none, graded('fever', 3)])).toBe('cannot say');
    expect(verdictOf('hypersensitivity', [none, graded('fever', 3), lookedInto('reaction')])).toBe('ready');
    expect(verdictOf('hypersensitivity', [none, graded('fever', 2, 'moderate')])).toBe('ready');
  });
  // Clinical page 4d E4 (eye: rechallenge avoided or a specialist's decision, from memory) and 4c; anaphylaxis: label, contraindicated.
  test.each(['uveitis', 'osteonecrosis of the jaw', 'anaphylaxis'] as const)(
    '%s waits for a prescriber however mild',
    (term) => {
      expect(verdictOf('hypersensitivity', [none, graded(term, undefined)])).toBe('cannot say');
      expect(verdictOf('hypersensitivity', [none, graded(term, undefined), lookedInto('reaction')])).toBe('ready');
    },
  );
  test('any bisphosphonate stops, whatever is recorded later', () =>
    expect(verdictOf('hypersensitivity', [ours, none])).toBe('not ready'));
});

describe('pregnancy', () => {
  test('never asked: cannot say, whatever the age', () =>
    expect(verdictOf('pregnancy', [born('1941-06-02')])).toBe('cannot say'));
  test('a recorded reason why it does not apply', () =>
    expect(
      verdictOf('pregnancy', [at('2020-01-01', 'pregnancy', { answer: 'does not apply', reason: 'told us' })]),
    ).toBe('does not apply'));
  test('"no" counts 14 days and not one more', () => {
    const no = [at('2026-11-20', 'pregnancy', { answer: 'no' })];
    expect(verdictsOn('pregnancy', no, '2026-12-04', '2026-12-05')).toEqual(['ready', 'cannot say']);
  });
  test.each(['pregnant', 'breast-feeding'] as const)('%s: not ready', (answer) =>
    expect(verdictOf('pregnancy', [at('2026-11-20', 'pregnancy', { answer })])).toBe('not ready'),
  );
});

describe('illness', () => {
  const ill = at('2026-11-10', 'illness', { what: 'flu', sort: 'illness' });
  test('none recorded: ready', () => expect(verdictOf('illness', [])).toBe('ready'));
  test('not over until someone says so; the day it began is late enough', () => {
    expect(verdictOf('illness', [ill])).toBe('not ready');
    expect(verdictOf('illness', [at('2026-11-09', 'well-since', {}), ill])).toBe('not ready');
    expect(verdictOf('illness', [ill, at('2026-11-10', 'well-since', {})])).toBe('ready');
  });
  test('a new illness after it needs a new word', () => {
    expect(
      verdictOf('illness', [
        ill,
        at('2026-11-12', 'well-since', {}),
        at('2026-11-20', 'illness', { what: 'fall, dehydrated', sort: 'dehydration' }),
      ]),
    ).toBe('not ready');
  });
});

describe('prescription', () => {
  const order = (from: string, until: string, regimen = 'zoledronic-acid-yearly') =>
    at('2026-01-01', 'prescription', { regimen, validFrom: from as never, validUntil: until as never });
  test('none: cannot say', () => expect(verdictOf('prescription', [])).toBe('cannot say'));
  test('before, first day, last day, after', () => {
    expect(
      verdictsOn(
        'prescription',
        [order('2026-12-01', '2026-12-31')],
        '2026-11-30',
        '2026-12-01',
        '2026-12-31',
        '2027-01-01',
      ),
    ).toEqual(['not ready', 'ready', 'ready', 'cannot say']);
  });
  test('a regimen the protocol does not know: cannot say', () =>
    expect(verdictOf('prescription', [order('2026-01-01', '2027-01-01', 'something-else')])).toBe('cannot say'));
});

describe('consent', () => {
  test.each([
    [[], 'cannot say'],
    [[at('2026-01-01', 'consent', { decision: 'given', how: 'spoken' })], 'ready'],
    [
      [at('2026-01-01', 'consent', { decision: 'best interest', basis: 'no capacity', consulted: 'daughter' })],
      'ready',
    ],
    [
      [
        at('2026-01-01', 'consent', { decision: 'given', how: 'spoken' }),
        at('2026-02-01', 'consent', { decision: 'not given' }),
      ],
      'not ready',
    ],
  ] as const)('%#: %s', (lines, expected) => expect(verdictOf('consent', lines)).toBe(expected));
});

describe('every requirement', () => {
  const possible: readonly RequirementId[] = ['symptoms', 'vitamin-d', 'teeth-and-jaw', 'hip-repair', 'course'];
  // safety.md: what nobody can make an exception for. "Age of bloods" passes over the age of a sample, never over a value.
  test('an exception is possible for teeth and jaw among the symptoms, vitamin D, days since hip repair and the course review only', () => {
    expect(requirementIds.filter((id) => requirements[id].exceptionPossible)).toEqual(possible);
  });
  test('has a title, says who can clear it, and has a working with a sentence on every date', () => {
    for (const id of requirementIds) {
      expect(requirements[id].title.length).toBeGreaterThan(3);
      expect(requirements[id].clearedBy.length).toBeGreaterThan(3);
      for (const lines of [[], [born('1941')], [doseGiven('2025-10-01')]]) {
        for (const ahead of [0, 30, 400])
          expect(judge(id, lines).on(addDays(asked, ahead)).working().says.length).toBeGreaterThan(5);
      }
    }
  });
  test('an exception of a sort that has no place in a requirement changes nothing', () => {
    const teeth = at('2026-11-01', 'prescriber-exception', {
      requirement: 'teeth and jaw',
      reason: 'r',
      expiresOn: '2027-12-31' as never,
    });
    for (const id of requirementIds.filter((one) => one !== 'teeth-and-jaw'))
      expect(verdictOf(id, [teeth])).toBe(verdictOf(id, []));
    expect(verdictOf('teeth-and-jaw', [teeth])).toBe('ready');
  });
});
