/**
 * What a person told us holds later days too: an illness told on the checklist, teeth, secondary causes, a consent for this dose
 * (docs/readiness.md R1, R8, R13, R14; safety.md: "unwell until someone records well since"). Asked on 25 November 2026.
 */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  type RequirementId,
  addDays,
  day,
  everyDay,
  plainDate,
  protocolFrom,
  readiness,
  teaching,
  usualDayQuestions,
  teachingSheet,
} from '@twelvemonth/clinical';
import { judge, verdictsOn } from './judging.ts';
import { type Line, asked, at, bloods, born, doseGiven, personOf, weighed, clear } from './person.ts';

const listed = (answers: Record<string, 'yes' | 'no'>, date = '2026-11-23', id = 'c') =>
  at(
    date,
    'checklist',
    { answers: Object.fromEntries(Object.entries(answers).map(([key, answer]) => [key, { answer }])) },
    id,
  );
const context = { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: everyDay };
const answerOf = (lines: readonly Line[]) => readiness(personOf(lines), context, asked);
const good: readonly Line[] = [
  born('1941-06-02'),
  ...clear,
  weighed('2026-11-01', '56.2'),
  ...bloods('2026-11-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L', 'vitamin D': '68 nmol/L' }),
];

describe('an illness told on the checklist', () => {
  test.each(['unwell-now', 'ill-since-bloods'])('%s: yes is not ready on every later date', (question) => {
    expect(verdictsOn('illness', [listed({ [question]: 'yes' })], '2026-11-25', '2027-11-25')).toEqual([
      'not ready',
      'not ready',
    ]);
    expect(verdictsOn('illness', [listed({ [question]: 'no' })], '2026-11-25')).toEqual(['ready']);
  });
  test('the bloods before it no longer count, and there is no window until it is over', () => {
    const { window, noWindow, timelines } = answerOf([...good, listed({ 'unwell-now': 'yes' })]);
    expect(window).toBeUndefined();
    const cause = (id: RequirementId) => timelines.find(({ requirement }) => requirement === id)?.spans[0]?.cause;
    expect(cause('kidney-function')).toBe('bloods of 1 Nov 2026 no longer count');
    expect(cause('calcium')).toBe('bloods of 1 Nov 2026 no longer count');
    expect(noWindow?.needs.map(({ requirement }) => requirement)).toContain('illness');
    // Two days well before a sample, usable three days later: 27 and 30 November.
    expect(noWindow?.ifSettled && plainDate(noWindow.ifSettled.first)).toBe('2026-11-30');
  });
  test('it is over with a later "well since", by date or, on the same day, by what was written later', () => {
    const told = listed({ 'unwell-now': 'yes' });
    const well = (date: string) => at(date, 'well-since', {});
    expect(verdictsOn('illness', [told, well('2026-11-24')], '2026-11-25')).toEqual(['ready']);
    expect(verdictsOn('illness', [told, well('2026-11-22')], '2026-11-25')).toEqual(['not ready']);
    expect(verdictsOn('illness', [told, well('2026-11-23')], '2026-11-25')).toEqual(['ready']);
    expect(verdictsOn('illness', [well('2026-11-23'), told], '2026-11-25')).toEqual(['not ready']);
  });
  test('neither a later "no" nor somebody clearing the checklist ends it; a corrected tap does', () => {
    const told = listed({ 'unwell-now': 'yes' });
    expect(verdictsOn('illness', [told, listed({ 'unwell-now': 'no' }, '2026-11-24', 'd')], '2026-11-25')).toEqual([
      'not ready',
    ]);
    expect(
      verdictsOn(
        'illness',
        [told, at('2026-11-24', 'symptom-cleared', { entry: 'c', question: 'unwell-now', finding: 'better' })],
        '2026-11-25',
      ),
    ).toEqual(['not ready']);
    const corrected: Line = { ...listed({ 'unwell-now': 'no' }, '2026-11-23', 'e'), amends: 'c' };
    expect(verdictsOn('illness', [told, corrected], '2026-11-25')).toEqual(['ready']);
  });
  test('which answers are one is the protocol, not the code', () => {
    const sheet = {
      ...teachingSheet,
      dayQuestions: usualDayQuestions.map((question) =>
        question.id === 'drunk-enough' ? { ...question, event: 'dehydration' as const } : question,
      ),
    };
    const made = protocolFrom(sheet);
    if (!('protocol' in made)) throw new Error('empty number');
    const told = [listed({ 'drunk-enough': 'no' })];
    expect(judge('illness', told).on(asked).verdict).toBe('ready');
    expect(judge('illness', told, made.protocol).on(asked).verdict).toBe('not ready');
    expect(
      judge('illness', told, made.protocol)
        .on(asked)
        .working()
        .inputs.map(({ label }) => label),
    ).toEqual(['dehydration']);
  });
  test.each(['new-medicine', 'other-bone-medicine'])('%s: yes stays until someone has looked', (question) => {
    const told = listed({ [question]: 'yes' });
    expect(verdictsOn('symptoms', [told], '2027-01-25')).toEqual(['cannot say']);
    const looked = at('2026-11-24', 'symptom-cleared', { entry: 'c', question, finding: 'eye drops' });
    expect(verdictsOn('symptoms', [told, looked], '2027-01-25')).toEqual(['ready']);
  });
});

describe('contrast, dehydration, an admission', () => {
  test.each(['contrast', 'dehydration', 'nephrotoxic medicine', 'admission'] as const)(
    '%s since the sample: not ready, and the sample no longer counts',
    (sort) => {
      const lines = [...good, at('2026-11-20', 'illness', { sort, what: 'told at the call' })];
      expect(verdictsOn('illness', lines, '2026-12-25')).toEqual(['not ready']);
      expect(judge('kidney-function', lines).on(asked).cause).toBe('bloods of 1 Nov 2026 no longer count');
    },
  );
});

describe('a medicine hard on the kidneys, written again', () => {
  const drug = (date: string, more: Partial<BodyOfKind<'medicine'>> = {}) =>
    at(date, 'medicine', { name: 'naproxen', sort: 'nephrotoxic', ...more });
  const kidneys = (...lines: Line[]) => judge('kidney-function', [...good, ...lines]).on(asked).verdict;
  test('begun since the sample: the sample no longer counts', () =>
    expect(kidneys(drug('2026-11-10'))).toBe('cannot say'));
  test('taken long since and only told again: it does', () => {
    expect(kidneys(drug('2024-03-01'), drug('2026-11-10'))).toBe('ready');
    expect(kidneys(drug('2024-03-01'), drug('2026-11-10', { name: ' Naproxen ' }))).toBe('ready');
    expect(kidneys(drug('2024-03-01'), drug('2026-11-10', { stoppedOn: '2026-11-12' as never }))).toBe('ready');
  });
  test('another dose, another name, or taken again after a stop: it does not', () => {
    expect(kidneys(drug('2024-03-01'), drug('2026-11-10', { dailyDose: '1 g' }))).toBe('cannot say');
    expect(kidneys(drug('2024-03-01'), drug('2026-11-10', { name: 'naproxen 500' }))).toBe('cannot say');
    expect(kidneys(drug('2024-03-01', { stoppedOn: '2025-01-01' as never }), drug('2026-11-10'))).toBe('cannot say');
  });
  test('told again after the stop was told: begun again', () =>
    expect(
      kidneys(drug('2024-03-01'), drug('2026-11-05', { stoppedOn: '2026-11-04' as never }), drug('2026-11-10')),
    ).toBe('cannot say'));
});

describe('teeth and jaw', () => {
  const teeth = (answer: BodyOfKind<'dental'>['answer'], date = '2026-11-10', checkedOn?: string) =>
    at(date, 'dental', { answer, ...(checkedOn === undefined ? {} : { checkedOn: checkedOn as never }) });
  const seen = teeth('seen: nothing left to heal', '2026-11-20');
  test('never asked: cannot say, and asking is a step of today', () => {
    expect(verdictsOn('teeth-and-jaw', [], '2026-11-25')).toEqual(['cannot say']);
    const { window, nextSteps } = answerOf(good.filter(({ kind }) => kind !== 'dental'));
    expect(window && plainDate(window.first)).toBe('2026-11-25');
    expect(window?.certain).toBe(false);
    expect(nextSteps.map(({ kind, earliest }) => [kind, plainDate(earliest)])).toEqual([['ask teeth', '2026-11-25']]);
  });
  // clinical.md J2, 42 in practice.md: an unhealed socket delays the start.
  test.each([
    ['work pending', 'not ready'],
    ['socket not healed', 'not ready'],
    ['jaw pain or loose tooth', 'cannot say'],
    ['sore or loose denture', 'cannot say'],
  ] as const)('%s: %s until healing is seen and recorded, however much time has passed', (answer, verdict) => {
    expect(verdictsOn('teeth-and-jaw', [teeth(answer)], '2026-11-25', '2028-11-25')).toEqual([verdict, verdict]);
    expect(verdictsOn('teeth-and-jaw', [teeth(answer), teeth('nothing pending', '2026-11-20')], '2026-11-25')).toEqual([
      verdict,
    ]);
    expect(
      verdictsOn('teeth-and-jaw', [teeth(answer), teeth('cannot get a dentist', '2026-11-20')], '2026-11-25'),
    ).toEqual([verdict]);
    expect(verdictsOn('teeth-and-jaw', [teeth(answer), seen], '2026-11-25')).toEqual(['ready']);
    expect(verdictsOn('teeth-and-jaw', [seen, teeth(answer, '2026-11-21')], '2026-11-25')).toEqual([verdict]);
  });
  test('trouble gives no window; the one there would be if it were seen healed today is told', () => {
    const { window, noWindow } = answerOf([...good, teeth('socket not healed')]);
    expect(window).toBeUndefined();
    expect(noWindow?.needs.map(({ requirement, who }) => [requirement, who])).toEqual([['teeth-and-jaw', 'nurse']]);
    expect(noWindow?.ifSettled && plainDate(noWindow.ifSettled.first)).toBe('2026-11-25');
  });
  test('an answer counts for its days, and is then asked again', () => {
    const until = addDays(day('2026-11-10'), teaching.number.teethAnswerDays);
    expect(
      verdictsOn('teeth-and-jaw', [teeth('nothing pending')], plainDate(until), plainDate(addDays(until, 1))),
    ).toEqual(['ready', 'cannot say']);
  });
  test('a dentist who cannot be had is recorded, and holds only where a check is demanded', () => {
    const made = protocolFrom({ ...teachingSheet, dentalCheck: 'demanded' });
    if (!('protocol' in made)) throw new Error('empty number');
    const demanding = (...lines: Line[]) => judge('teeth-and-jaw', lines, made.protocol).on(asked);
    expect(verdictsOn('teeth-and-jaw', [teeth('cannot get a dentist')], '2026-11-25')).toEqual(['ready']);
    expect(demanding(teeth('cannot get a dentist'))).toMatchObject({
      verdict: 'cannot say',
      cause: 'cannot get a dentist',
    });
    expect(demanding(teeth('nothing pending')).cause).toBe('no dental check in date');
    expect(demanding(teeth('nothing pending', '2026-11-10', '2026-09-03')).verdict).toBe('ready');
    expect(demanding(teeth('nothing pending', '2026-11-10', '2025-11-24')).verdict).toBe('cannot say');
    expect(demanding(teeth('nothing pending', '2026-11-10', '2025-11-25')).verdict).toBe('ready');
    expect(demanding(teeth('nothing pending', '2026-11-10', '2026-12-01')).verdict, 'a check that lies ahead').toBe(
      'cannot say',
    );
  });
  test("a prescriber's exception passes over it to its last day, and is shown", () => {
    const exception = at('2026-11-20', 'prescriber-exception', {
      requirement: 'teeth and jaw',
      reason: 'spoke with the dentist',
      expiresOn: '2026-11-30' as never,
    });
    const lines = [teeth('socket not healed'), exception];
    expect(verdictsOn('teeth-and-jaw', lines, '2026-11-25', '2026-11-30', '2026-12-01')).toEqual([
      'ready',
      'ready',
      'not ready',
    ]);
    expect(judge('teeth-and-jaw', lines).on(asked).exception).toBe('e2');
  });
});

describe('secondary causes', () => {
  const looked = (answer: BodyOfKind<'secondary-causes'>['answer']) => at('2026-11-10', 'secondary-causes', { answer });
  test.each([
    [[], 'cannot say'],
    [[looked('none found')], 'ready'],
    [[looked('found, dealt with')], 'ready'],
    [[looked('found, to be dealt with first')], 'cannot say'],
    [[doseGiven('2025-11-01')], 'ready'],
    [[doseGiven('2025-11-01'), looked('found, to be dealt with first')], 'ready'],
  ] as const)('before a first dose, %#: %s', (lines, verdict) =>
    expect(verdictsOn('secondary-causes', lines, '2026-11-25')).toEqual([verdict]),
  );
  test('never looked for: a step of today, and good is assumed', () => {
    const { window, nextSteps } = answerOf(good.filter(({ kind }) => kind !== 'secondary-causes'));
    expect(window && plainDate(window.first)).toBe('2026-11-25');
    expect(nextSteps.map(({ kind }) => kind)).toEqual(['look for causes']);
  });
});

describe('someone found not able to decide this', () => {
  // Mental Capacity Act 2005 sections 1 to 4 (from memory): then nobody consents for them; a decision in their best interest does.
  const given = at('2026-01-05', 'consent', { decision: 'given', how: 'spoken' });
  const cannot = at('2026-02-01', 'capacity', {
    answer: 'cannot decide this',
    because: 'cannot keep it in mind',
    tried: 'pictures, in the morning',
    mayReturn: 'not known',
  });
  test('no consent of theirs counts, given before or after, until they can decide', () => {
    expect(verdictsOn('consent', [cannot], '2026-11-25')).toEqual(['cannot say']);
    expect(verdictsOn('consent', [given, cannot], '2026-11-25')).toEqual(['cannot say']);
    const can = at('2026-03-01', 'capacity', { answer: 'can decide this' });
    expect(verdictsOn('consent', [given, cannot, can], '2026-11-25')).toEqual(['ready']);
  });
  test('a best-interest decision counts, and when it is withdrawn nothing older does', () => {
    const best: Line = {
      ...at('2026-10-01', 'consent', { decision: 'best interest', basis: 'x', consulted: 'daughter' }),
      id: 'b',
    };
    expect(verdictsOn('consent', [given, cannot, best], '2026-11-25')).toEqual(['ready']);
    const withdrawn = at('2026-10-02', 'withdrawal', { entry: 'b', reason: 'of another person' });
    expect(verdictsOn('consent', [given, cannot, best, withdrawn], '2026-11-25')).toEqual(['cannot say']);
  });
});

describe('a no after a consent', () => {
  // GMC, Decision making and consent (2020): a patient may withdraw consent at any time (from memory).
  const given = (date: string) => at(date, 'consent', { decision: 'given', how: 'spoken' });
  const best = at('2026-11-21', 'consent', { decision: 'best interest', basis: 'x', consulted: 'daughter' });
  const no = (to: 'this dose' | 'this medicine' | 'all contact', date = '2026-11-20') =>
    at(date, 'refusal', { to, words: 'not again' });

  test.each(['this dose', 'this medicine', 'all contact'] as const)('to %s ends it, for every date', (to) => {
    expect(verdictsOn('consent', [given('2026-11-01'), no(to)], '2026-11-25', '2027-06-01')).toEqual([
      'not ready',
      'not ready',
    ]);
    const found = judge('consent', [given('2026-11-01'), no(to)]).on(day('2026-11-25'));
    expect(found.cause).toBe(`said no to ${to}`);
  });
  test('said where nobody had asked for consent, it holds as well', () => {
    expect(verdictsOn('consent', [no('this dose')], '2026-11-25')).toEqual(['not ready']);
  });
  test('ends with a consent, or a decision in their best interest, that is written after it', () => {
    expect(verdictsOn('consent', [given('2026-11-01'), no('this dose'), given('2026-11-21')], '2026-11-25')).toEqual([
      'ready',
    ]);
    expect(verdictsOn('consent', [no('this dose'), best], '2026-11-25')).toEqual(['ready']);
  });
  test('of one day, what was written last counts', () => {
    const [yes, refused] = [given('2026-11-20'), no('this dose')];
    expect(verdictsOn('consent', [yes, refused], '2026-11-25')).toEqual(['not ready']);
    expect(verdictsOn('consent', [refused, yes], '2026-11-25')).toEqual(['ready']);
  });
});

describe('consent for this dose', () => {
  const given = at('2026-01-05', 'consent', { decision: 'given', how: 'spoken' });
  const bestInterest = (date: string) =>
    at(date, 'consent', { decision: 'best interest', basis: 'no capacity', consulted: 'daughter' });
  const others = good.filter(({ kind }) => kind !== 'consent');
  test('counts for its days from the day it was asked, and is then asked again', () => {
    const until = addDays(day('2026-01-05'), teaching.number.consentValidDays);
    expect(verdictsOn('consent', [given], plainDate(until), plainDate(addDays(until, 1)))).toEqual([
      'ready',
      'cannot say',
    ]);
    const late = readiness(personOf([...others, given]), context, addDays(until, 1));
    expect(late.nextSteps.map(({ kind }) => kind)).toContain('ask consent');
  });
  // safety.md: "no consent or lawful best-interest record"; practice.md 41: confirmed again per dose.
  test('a best-interest decision is for one dose', () => {
    expect(verdictsOn('consent', [bestInterest('2026-01-05')], '2026-11-25')).toEqual(['ready']);
    expect(verdictsOn('consent', [bestInterest('2025-11-01'), doseGiven('2025-11-01')], '2026-11-25')).toEqual([
      'cannot say',
    ]);
    expect(
      verdictsOn(
        'consent',
        [bestInterest('2025-11-01'), doseGiven('2025-11-02'), bestInterest('2026-11-01')],
        '2026-11-25',
      ),
    ).toEqual(['ready']);
    expect(
      verdictsOn('consent', [given, doseGiven('2026-02-01')], '2026-11-25'),
      'the consent of the person stands',
    ).toEqual(['ready']);
  });
  test('a new best-interest decision is never assumed', () => {
    const { window, noWindow } = answerOf([...others, bestInterest('2025-10-01'), doseGiven('2025-10-02')]);
    expect(window).toBeUndefined();
    expect(noWindow?.needs.map(({ requirement }) => requirement)).toEqual(['consent']);
    expect(noWindow?.ifSettled && plainDate(noWindow.ifSettled.first)).toBe('2026-11-25');
  });
});
