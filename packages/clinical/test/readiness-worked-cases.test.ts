/** The worked cases of docs/readiness.md, column by column. Asked on Wednesday 25 November 2026 under the teaching protocol. */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type DecisionContext,
  day,
  everyDay,
  plainDate,
  readiness,
  teaching,
  verdictOn,
  viewOf,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, doseGiven, personOf, weighed } from './person.ts';

const context: DecisionContext = { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: everyDay };

type Answer = ReturnType<typeof answerFor>;
function answerFor(lines: readonly Line[], options: { readonly today?: Day; readonly place?: string } = {}) {
  const record = personOf(lines);
  const today = options.today ?? asked;
  const found = readiness(record, context, today, options.place === undefined ? {} : { place: day(options.place) });
  const view = viewOf(found, record, context);
  return { found, view, today: verdictOn(found, today), on: (date: string) => verdictOn(found, day(date)) };
}
const steps = ({ view }: Answer) => view.nextSteps.map(({ kind, earliest, latest }) => [kind, earliest, latest]);
const troubles = ({ today }: Answer) =>
  today.requirements
    .filter(({ verdict }) => verdict === 'not ready' || verdict === 'cannot say')
    .map(({ requirement, verdict }) => [requirement, verdict]);
const chain = ({ view }: Answer) => view.window?.waitingFor.map(({ what, until }) => [what, until]);

const woman = [...clear, born('1941-06-02')];
const goodBloods = (on: string, signedOn = on) =>
  bloods(on, { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L' }, signedOn);
const october = [...woman, weighed('2026-10-09', '56.2'), ...goodBloods('2026-10-09')];
const vitaminD = (text: string, on = '2026-10-09') => bloods(on, { 'vitamin D': text });
const first = [...october, ...vitaminD('68 nmol/L'), doseGiven('2025-03-14')];

describe('case 1: a second dose, all in date', () => {
  const answer = answerFor(first);
  test('ready today', () => {
    expect(answer.today.verdict).toBe('ready');
    expect(answer.view.headline).toBe('ready until Fri 4 Dec 2026');
  });
  test('from today to the last day of the bloods, certainly', () => {
    expect(answer.view.window).toMatchObject({
      first: '2026-11-25',
      last: '2026-12-04',
      certain: true,
      certainUntil: '2026-12-04',
      says: '25 Nov - 4 Dec 2026',
    });
    expect([answer.on('2026-12-04').verdict, answer.on('2026-12-05').verdict]).toEqual(['ready', 'cannot say']);
  });
  test('waits for nothing; the bloods of 9 October run out', () => {
    expect(chain(answer)).toEqual([]);
    expect(answer.view.window?.runsOut).toBe('bloods of 9 Oct 2026 out of date on 5 Dec 2026');
    expect(answer.on('2026-12-05').headline).toBe('cannot say: bloods of 9 Oct 2026 out of date');
  });
  test('no step; a draw by 2 December would run on without a gap', () => {
    expect(answer.view.nextSteps).toEqual([]);
    expect(answer.found.window?.runOn).toMatchObject({ by: day('2026-12-02'), last: day('2027-01-27') });
    expect(answer.view.window?.runOn).toContain('by 2 Dec 2026');
  });
  test('the weight of 9 October counts to 7 January', () => {
    const fresh = answerFor([...first, ...goodBloods('2026-11-25')]);
    expect(fresh.on('2027-01-07').verdict).toBe('ready');
    expect(fresh.on('2027-01-08').headline).toBe('cannot say: weight of 9 Oct 2026 out of date');
  });
});

describe('case 2: vitamin D low, loading begun yesterday', () => {
  const lines = [
    ...october,
    doseGiven('2025-03-14'),
    ...vitaminD('31 nmol/L', '2026-11-12'),
    at('2026-11-24', 'vitamin-d-loading', {
      doses: 6,
      everyDays: 7,
      unitsPerDose: 50000,
      startOn: '2026-11-24' as never,
    }),
    at('2026-11-24', 'vitamin-d-taken', { doses: 1, source: 'told us' }),
  ];
  const answer = answerFor(lines);
  test('not ready: vitamin D, and nothing else', () => {
    expect(answer.today.verdict).toBe('not ready');
    expect(troubles(answer)).toEqual([['vitamin-d', 'not ready']]);
    expect(answer.view.headline).toBe(
      'not ready: vitamin D loading not finished. Possible from Fri 8 Jan 2027, if good',
    );
  });
  test('8 January to 2 March, if good', () => {
    expect(answer.view.window).toMatchObject({
      first: '2027-01-08',
      last: '2027-03-02',
      certain: false,
      says: '8 Jan - 2 Mar 2027, if good',
    });
  });
  test('loading to 29 December, calcium sample from 5 January, usable 8 January; the new bloods run out', () => {
    expect(chain(answer)).toEqual([
      ['vitamin D loading to 29 Dec 2026', '2026-12-29'],
      ['calcium sample from 5 Jan 2027', '2027-01-05'],
      ['result usable 8 Jan 2027', '2027-01-08'],
    ]);
    expect(answer.found.window?.next?.first).toBe(asked);
    expect(answer.view.window?.runsOut).toBe('bloods of 5 Jan 2027 out of date on 3 Mar 2027');
  });
  test('five loading doses, then draw and weigh on 5 January', () => {
    expect(steps(answer)).toEqual([
      ['loading dose', '2026-12-01', '2026-12-01'],
      ['draw', '2027-01-05', '2027-01-05'],
    ]);
    expect(answer.found.nextSteps[0]?.doses).toEqual({ count: 5, everyDays: 7, last: day('2026-12-29') });
    expect(answer.found.nextSteps[1]).toMatchObject({
      tests: ['creatinine', 'calcium'],
      effectFrom: day('2027-01-08'),
      assumed: true,
    });
    expect(answer.view.nextSteps[1]?.what).toBe('take bloods (creatinine and calcium) and weigh');
  });
  test('for a place on 28 January: draw from 5 to 25 January', () => {
    expect(steps(answerFor(lines, { place: '2027-01-28' }))[1]).toEqual(['draw', '2027-01-05', '2027-01-25']);
  });
});

describe('case 3: hip repaired, vitamin D never measured', () => {
  const answer = answerFor([
    ...woman,
    at('2026-11-13', 'surgery', { what: 'hip repair' }),
    weighed('2026-11-24', '56.2'),
    ...goodBloods('2026-11-24', '2026-11-25'),
  ]);
  test('not ready: hip; cannot say: vitamin D', () => {
    expect(answer.today.verdict).toBe('not ready');
    expect(troubles(answer)).toEqual([
      ['vitamin-d', 'cannot say'],
      ['hip-repair', 'not ready'],
    ]);
    expect(answer.today.headline).toBe('not ready: hip repair of 13 Nov 2026; cannot say: vitamin D never measured');
  });
  test('28 November to 19 January, if vitamin D is 50 or more; if below, loading from the day the result is usable', () => {
    expect(answer.view.window).toMatchObject({ first: '2026-11-28', last: '2027-01-19', certain: false });
    expect(answer.view.window?.says).toBe('28 Nov 2026 - 19 Jan 2027, if vitamin D is 50 nmol/L or more');
    // Loading 28 Nov, 5, 12, 19, 26 Dec, 2 Jan; calcium from 9 Jan; usable 12 Jan.
    expect(answer.view.window?.otherwise).toEqual(['if vitamin D is below 50 nmol/L: from 12 Jan 2027']);
  });
  test('waits for the vitamin D result, next the hip on 27 November; the bloods of 24 November run out', () => {
    expect(chain(answer)).toEqual([['vitamin D result 28 Nov 2026', '2026-11-28']]);
    expect(answer.found.window?.next).toEqual({ first: day('2026-11-27'), what: 'hip repair of 13 Nov 2026' });
    expect(answer.view.window?.runsOut).toContain('bloods of 24 Nov 2026');
  });
  test('draw vitamin D today, and nothing else', () => {
    expect(steps(answer)).toEqual([['draw', '2026-11-25', '2026-11-25']]);
    expect(answer.found.nextSteps[0]?.tests).toEqual(['vitamin D']);
  });
});

describe('case 4: a week to the anniversary, bloods that run out before it', () => {
  const answer = answerFor([
    ...woman,
    weighed('2026-11-25', '56.2'),
    ...goodBloods('2026-10-01'),
    ...vitaminD('68 nmol/L', '2026-10-01'),
    doseGiven('2025-12-02'),
  ]);
  test('not ready: interval', () => {
    expect(troubles(answer)).toEqual([['interval', 'not ready']]);
    expect(answer.today.verdict).toBe('not ready');
  });
  test('2 December to 20 January', () => {
    expect(answer.view.window).toMatchObject({
      first: '2026-12-02',
      last: '2027-01-20',
      certain: false,
      says: '2 Dec 2026 - 20 Jan 2027, if good',
    });
  });
  test('waits for the interval; the bloods of 25 November run out', () => {
    expect(chain(answer)).toEqual([['interval since the dose of 2 Dec 2025', '2026-12-02']]);
    expect(answer.view.window?.runsOut).toContain('bloods of 25 Nov 2026');
  });
  test('draw from 25 to 29 November: the old bloods are in date today and out on 27 November', () => {
    expect(steps(answer)).toEqual([['draw', '2026-11-25', '2026-11-29']]);
    const kidney = answer.view.requirements.find(({ id }) => id === 'kidney-function');
    expect(kidney?.today).toMatchObject({ verdict: 'ready', until: '2026-11-26' });
  });
});

describe('case 5: near the limit until a birthday', () => {
  const answer = answerFor([
    ...clear,
    born('1942-01-15'),
    weighed('2026-11-20', '48.5'),
    ...bloods('2026-11-20', { creatinine: '80 umol/L', 'adjusted calcium': '2.31 mmol/L', 'vitamin D': '68 nmol/L' }),
  ]);
  const kidney = answer.view.requirements.find(({ id }) => id === 'kidney-function');
  test('ready, near the limit: 35.31 and 35.43 mL/min at 84', () => {
    expect(answer.today).toMatchObject({ verdict: 'ready', nearLimit: true, headline: 'ready, near the limit' });
    expect(kidney?.working.says).toContain('35.31 mL/min by one form, 35.43 by the other');
  });
  test('25 November to 14 January: the birthday ends it, a day before the bloods would', () => {
    expect(answer.view.window).toMatchObject({ first: '2026-11-25', last: '2027-01-14', certain: true });
    expect(answer.view.window?.runsOut).toBe(
      'kidney function at 85: 34.68 mL/min by one form, 34.80 by the other (just below 35) on 15 Jan 2027',
    );
    expect(answer.on('2027-01-15').requirements.find(({ requirement }) => requirement === 'calcium')?.verdict).toBe(
      'ready',
    );
    expect(answer.on('2027-01-16').requirements.find(({ requirement }) => requirement === 'calcium')?.verdict).toBe(
      'cannot say',
    );
  });
  test('a repeat that would fail adds nothing', () => {
    expect(answer.found.window?.runOn).toBeUndefined();
  });
  test('weigh and recompute on the day', () => {
    expect(kidney?.working.cautions.join(' ')).toContain('weigh and recompute on the day');
    expect(answer.view.askedOnTheDay[0]).toContain('Weigh');
  });
});

describe('case 6: just below 35 by one form', () => {
  const answer = answerFor([
    ...woman,
    weighed('2026-11-20', '52'),
    ...bloods('2026-11-20', { creatinine: '85 umol/L', 'adjusted calcium': '2.31 mmol/L', 'vitamin D': '68 nmol/L' }),
  ]);
  test('not ready: 34.99 by one form, 35.11 by the other', () => {
    expect(answer.today.headline).toBe(
      'not ready: kidney function at 85: 34.99 mL/min by one form, 35.11 by the other (just below 35)',
    );
  });
  test('no window: a repeat is not assumed; a prescriber', () => {
    expect(answer.view.window).toBeUndefined();
    expect(answer.found.noWindow?.needs).toMatchObject([{ requirement: 'kidney-function', who: 'prescriber' }]);
  });
  test('repeat creatinine and weight; what weight or creatinine would clear it', () => {
    expect(answer.view.nextSteps.every(({ assumed }) => !assumed)).toBe(true);
    expect(answer.view.nextSteps[0]?.what).toContain('repeat creatinine and weight');
    const kidney = answer.view.requirements.find(({ id }) => id === 'kidney-function');
    expect(kidney?.working.formulas.slice(2, 4)).toMatchObject([
      { name: 'least weight that passes with this creatinine', gives: '52.1 kg' },
      { name: 'highest creatinine that passes with this weight', gives: '84 umol/L' },
    ]);
  });
});

describe('case 7: the anniversary of 29 February', () => {
  const lines = [
    ...woman,
    weighed('2025-02-10', '56.2'),
    ...goodBloods('2025-02-10'),
    ...vitaminD('68 nmol/L', '2025-02-10'),
    doseGiven('2024-02-29'),
  ];
  const interval = (today: string) =>
    answerFor(lines, { today: day(today) }).today.requirements.find(({ requirement }) => requirement === 'interval')
      ?.verdict;
  test('asked on 28 February 2025 the interval is met, the day before not', () => {
    expect([interval('2025-02-27'), interval('2025-02-28')]).toEqual(['not ready', 'ready']);
  });
});

describe('case 9: three of three doses, no review', () => {
  const answer = answerFor([
    ...october,
    ...vitaminD('68 nmol/L'),
    doseGiven('2023-09-25'),
    doseGiven('2024-09-25'),
    doseGiven('2025-09-25'),
  ]);
  test('not ready: review', () => {
    expect(troubles(answer)).toEqual([['course', 'not ready']]);
  });
  test('no window; if a review says carry on today, by the rest', () => {
    expect(answer.view.window).toBeUndefined();
    expect(answer.found.noWindow).toMatchObject({
      needs: [{ requirement: 'course', who: 'prescriber' }],
      ifSettled: { first: asked, last: day('2026-12-04') },
    });
    expect(answer.view.noWindow?.ifSettled).toBe('if settled today: 25 Nov - 4 Dec 2026, if good');
    expect(answer.view.nextSteps.map(({ kind }) => kind)).toEqual(['review']);
  });
});

describe('case 10: only the year of birth is known', () => {
  const answer = answerFor([
    ...clear,
    at('2020-01-01', 'identity', {
      family: 'Arkwright-Poe',
      given: 'Wilhelmina',
      born: '1941',
      sex: 'female',
      number: '999 204 7713',
    }),
    weighed('2026-10-09', '56.2'),
    ...goodBloods('2026-10-09'),
    ...vitaminD('68 nmol/L'),
  ]);
  test('cannot say: age, so clearance', () => {
    expect(answer.today.headline).toBe('cannot say: birth date known only as 1941, age not known, so clearance');
  });
  test('no window, and none even if settled: never the first of January', () => {
    expect(answer.view.window).toBeUndefined();
    expect(answer.found.noWindow?.ifSettled).toBeUndefined();
    expect(answer.view.nextSteps.map(({ kind, what }) => [kind, what])).toEqual([
      ['complete identity', 'the birth date to the day: ask, never assume one'],
    ]);
  });
});

describe('case 11: vitamin D "<20"', () => {
  const answer = answerFor([...october, ...vitaminD('<20 nmol/L', '2026-11-20'), doseGiven('2025-03-14')]);
  test('not ready: vitamin D, and "<20" is kept', () => {
    expect(answer.today.headline).toBe('not ready: vitamin D <20 nmol/L, below 50 nmol/L');
  });
  test('9 January to 3 March, if good', () => {
    expect(answer.view.window?.says).toBe('9 Jan - 3 Mar 2027, if good');
  });
  test('loading from today to 30 December, calcium 6 January, usable 9 January; those bloods run out', () => {
    expect(chain(answer)).toEqual([
      ['vitamin D loading to 30 Dec 2026', '2026-12-30'],
      ['calcium sample from 6 Jan 2027', '2027-01-06'],
      ['result usable 9 Jan 2027', '2027-01-09'],
    ]);
    expect(answer.view.window?.runsOut).toContain('bloods of 6 Jan 2027');
  });
  test('start loading', () => {
    expect(answer.found.nextSteps[0]).toMatchObject({
      kind: 'loading dose',
      who: 'prescriber',
      earliest: asked,
      doses: { count: 6, everyDays: 7, last: day('2026-12-30') },
    });
    expect(plainDate(answer.found.nextSteps[1]?.earliest ?? asked)).toBe('2027-01-06');
  });
});

describe('case 12: vomiting, and nobody has said it is over', () => {
  const answer = answerFor([
    ...first,
    at('2026-11-23', 'illness', { what: 'vomiting for three days', sort: 'illness' }),
  ]);
  test('not ready: unwell; the bloods no longer count, named once', () => {
    expect(answer.today.headline).toBe('not ready: unwell; cannot say: bloods of 9 Oct 2026 no longer count');
    expect(troubles(answer)).toEqual([
      ['illness', 'not ready'],
      ['kidney-function', 'cannot say'],
      ['calcium', 'cannot say'],
    ]);
  });
  test('no window; if well since today: sample from 27 November, possible from 30 November', () => {
    expect(answer.view.window).toBeUndefined();
    expect(answer.found.noWindow?.ifSettled?.first).toBe(day('2026-11-30'));
    expect(answer.found.noWindow?.needs.map(({ requirement }) => requirement)).toEqual([
      'illness',
      'kidney-function',
      'calcium',
    ]);
  });
  test('ask; then draw and weigh', () => {
    expect(answer.view.nextSteps.map(({ kind, earliest }) => [kind, earliest])).toEqual([
      ['record well since', '2026-11-25'],
      ['draw', '2026-11-27'],
    ]);
  });
});

describe('a decision about one weight', () => {
  // F 79, 155 cm, 95 kg, creatinine 115 (clinical.md 2a-ex2): the actual weight passes, the ideal one does not.
  const heavy = [
    ...clear,
    born('1947-06-01'),
    at('2026-11-20', 'height', { quantity: { comparator: '', value: '155', unit: 'cm' }, which: 'peak adult' }),
    at('2026-11-20', 'weight', { quantity: { comparator: '', value: '95', unit: 'kg' }, method: 'measured' }, 'w'),
    ...bloods('2026-11-20', { creatinine: '115 umol/L', 'adjusted calcium': '2.31 mmol/L' }),
    at('2026-11-21', 'prescriber-decision', {
      question: 'weight: actual decides',
      about: 'w',
      reason: 'with the pharmacist',
    }),
  ];
  test('serves while no other step would weigh again', () => {
    expect(answerFor([...heavy, ...vitaminD('68 nmol/L', '2026-11-20')]).view.window).toMatchObject({
      certain: true,
      last: '2027-01-15',
    });
  });
  test('a draw that is needed would replace the weight: no window, the prescriber is named, and from when it would be', () => {
    const { found } = answerFor(heavy);
    expect(found.window).toBeUndefined();
    expect(found.noWindow).toMatchObject({
      needs: [{ requirement: 'kidney-function', who: 'prescriber' }],
      ifSettled: { first: day('2026-11-28') },
    });
  });
});

test('no sentence anywhere calls anyone safe', () => {
  const all = [first, [...october, ...vitaminD('<20 nmol/L')]].map((lines) => JSON.stringify(answerFor(lines).view));
  for (const text of all) expect(text).not.toMatch(/\bsafe\b/i);
});
