/** Calcium and vitamin D at and around every threshold (docs/readiness.md R3, R4). Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type Protocol,
  type RequirementId,
  addDays,
  day,
  evidenceOf,
  protocolFrom,
  requirements,
  teaching,
  teachingSheet,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, doseGiven, personOf } from './person.ts';

const judgedOf =
  (id: RequirementId) =>
  (lines: readonly Line[], on: Day = asked, protocol: Protocol = teaching) =>
    requirements[id].judge(evidenceOf(personOf(lines), asked), protocol).on(on);
const calcium = judgedOf('calcium');
const vitaminD = judgedOf('vitamin-d');
const value = (values: Parameters<typeof bloods>[1], on = '2026-11-20') => bloods(on, values);

describe('adjusted calcium within 2.20 - 2.60 mmol/L', () => {
  // Limits: UK Pathology Harmony, Schini 2020 (clinical.md 2e).
  test.each([
    ['2.19', 'not ready'],
    ['2.1999', 'not ready'],
    ['2.20', 'ready'],
    ['2.60', 'ready'],
    ['2.6001', 'not ready'],
    ['2.61', 'not ready'],
  ])('%s: %s', (text, expected) => {
    expect(calcium(value({ 'adjusted calcium': `${text} mmol/L` })).verdict).toBe(expected);
  });
  test.each([
    ['<2.20', 'not ready'],
    ['<=2.20', 'not ready'],
    ['<2.21', 'cannot say'],
    ['>2.60', 'not ready'],
    ['>=2.60', 'not ready'],
    ['>2.59', 'cannot say'],
    ['>2.30', 'cannot say'],
  ])('%s: %s', (text, expected) => {
    expect(calcium(value({ 'adjusted calcium': `${text} mmol/L` })).verdict).toBe(expected);
  });
  test.each([
    ['8.79 mg/dL', 'not ready'],
    ['8.8 mg/dL', 'ready'],
    ['10.4 mg/dL', 'ready'],
    ['10.41 mg/dL', 'not ready'],
    ['2.3 g/L', 'cannot say'],
  ])('%s: %s', (text, expected) => {
    expect(calcium(value({ 'adjusted calcium': text })).verdict).toBe(expected);
  });
  test("the laboratory's own limits go before the protocol's, if both are given", () => {
    const lab = (low: string | undefined, high: string | undefined): Line[] => [
      {
        on: '2026-11-20',
        kind: 'result',
        id: 'ca',
        body: {
          analyte: 'adjusted calcium',
          quantity: { comparator: '', value: '2.15', unit: 'mmol/L' },
          referenceLow: low,
          referenceHigh: high,
        },
      },
      at('2026-11-20', 'results-signed', { results: ['ca'] }),
    ];
    expect(calcium(lab('2.15', '2.55')).verdict).toBe('ready');
    expect(calcium(lab('2.16', '2.55')).verdict).toBe('not ready');
    expect(calcium(lab('2.10', undefined)).verdict).toBe('not ready');
  });
});

// Clinical fact sheet 2e: the laboratory's own adjusted value is kept, ours only where it is absent, and it is said which.
describe("the laboratory's adjusted value beside a total of the same day", () => {
  const both = (adjusted: string, total: string, albumin: string) =>
    calcium(value({ 'adjusted calcium': `${adjusted} mmol/L`, calcium: `${total} mmol/L`, albumin: `${albumin} g/L` }));
  test('decides, and where our own sum falls on another side of the limits that is shown', () => {
    const judged = both('2.30', '2.10', '40');
    expect(judged.verdict).toBe('ready');
    expect(judged.working().cautions).toEqual([
      "Our own sum of that day says otherwise: 2.10 mmol/L + 0.02 x (40 - albumin 40 g/L) = 2.10 mmol/L. The laboratory's adjusted value counts: ask the laboratory which is right.",
    ]);
    expect(both('2.10', '2.30', '40')).toMatchObject({ verdict: 'not ready', cause: 'calcium 2.10 mmol/L, below 2.2' });
    expect(both('2.10', '2.30', '40').working().cautions).toHaveLength(2);
  });
  // references.md 2.10: 2.14 with albumin 37 is 2.20 by our own sum too.
  test('says nothing where both fall on the same side', () => {
    expect(both('2.20', '2.14', '37').working().cautions).toEqual([]);
  });
  test('nor where no albumin of that day tells our own sum', () => {
    const lines = value({ 'adjusted calcium': '2.30 mmol/L', calcium: '2.10 mmol/L' });
    expect(calcium(lines).working().cautions).toEqual([]);
  });
});

describe('calcium adjusted here', () => {
  const total = (ca: string, albumin: string) => calcium(value({ calcium: `${ca} mmol/L`, albumin: `${albumin} g/L` }));
  test('the float trap: 2.19 + 0.02 x (40 - 39.5) is 2.20 and passes', () => {
    expect(total('2.19', '39.5')).toMatchObject({ verdict: 'ready' });
    expect(total('2.19', '39.6').verdict).toBe('not ready');
  });
  // clinical.md 2e-ex, CA4, CA5, CA6; references.md 2.10: 2.20 with albumin 46 is 2.08.
  test.each([
    ['2.30', '25', 'ready'],
    ['2.02', '36', 'not ready'],
    ['1.83', '26', 'not ready'],
    ['2.20', '46', 'not ready'],
    ['2.10', '32', 'ready'],
  ])('%s with albumin %s: %s', (ca, albumin, expected) => {
    expect(total(ca, albumin).verdict).toBe(expected);
  });
  test('a value just out of its limits never prints as the limit', () => {
    expect(total('2.19', '39.51').cause).toBe('calcium 2.1998 mmol/L, below 2.2');
  });
  test('albumin missing, of another day, acute, or "<": cannot say', () => {
    expect(calcium(value({ calcium: '2.30 mmol/L' }))).toMatchObject({
      verdict: 'cannot say',
      cause: 'albumin missing, so adjusted calcium',
    });
    expect(calcium([...value({ calcium: '2.30 mmol/L' }), ...value({ albumin: '40 g/L' }, '2026-11-19')]).verdict).toBe(
      'cannot say',
    );
    expect(calcium(value({ calcium: '2.30 mmol/L', albumin: '<40 g/L' })).verdict).toBe('cannot say');
  });
  test('an albumin nobody has signed: cannot say, and a signature would do', () => {
    const lines = [...value({ calcium: '2.30 mmol/L' }), ...bloods('2026-11-20', { albumin: '40 g/L' }, null)];
    expect(calcium(lines)).toMatchObject({ verdict: 'cannot say', cause: 'bloods of 20 Nov 2026 not signed' });
    expect(requirements.calcium.judge(evidenceOf(personOf(lines), asked), teaching).path(asked)).toMatchObject({
      is: 'steps',
      needs: { sign: {} },
    });
  });
  test('mg/dL and g/dL are converted exactly: 9.2184 mg/dL is 2.30 mmol/L, albumin 4 g/dL', () => {
    const judged = calcium(value({ calcium: '9.2184 mg/dL', albumin: '4.0 g/dL' }));
    expect(judged.verdict).toBe('ready');
    expect(judged.working().formulas[0]?.gives).toBe('2.30 mmol/L');
  });
  test('the adjusted value of the laboratory goes before a total of the same day, and the newest day before both', () => {
    expect(
      calcium(value({ 'adjusted calcium': '2.10 mmol/L', calcium: '2.30 mmol/L', albumin: '40 g/L' })).verdict,
    ).toBe('not ready');
    expect(
      calcium([
        ...value({ 'adjusted calcium': '2.10 mmol/L' }),
        ...value({ calcium: '2.30 mmol/L', albumin: '40 g/L' }, '2026-11-21'),
      ]).verdict,
    ).toBe('ready');
  });
});

describe('calcium in date, and after loading', () => {
  test('56 days and not one more', () => {
    const lines = value({ 'adjusted calcium': '2.30 mmol/L' });
    const last = addDays(day('2026-11-20'), 56);
    expect([calcium(lines, last).verdict, calcium(lines, addDays(last, 1)).verdict]).toEqual(['ready', 'cannot say']);
  });
  const loaded = (finished: string) => [
    at('2026-10-01', 'vitamin-d-loading', {
      doses: 2,
      everyDays: 7,
      unitsPerDose: 50000,
      startOn: '2026-10-01' as never,
    }),
    at('2026-10-01', 'vitamin-d-taken', { doses: 1, source: 'told us' }),
    at(finished, 'vitamin-d-taken', { doses: 1, source: 'told us' }),
  ];
  test('a sample six days after the last dose does not count, one seven days after does', () => {
    expect(calcium([...value({ 'adjusted calcium': '2.30 mmol/L' }), ...loaded('2026-11-14')])).toMatchObject({
      verdict: 'cannot say',
      cause: 'calcium to be checked after loading',
    });
    expect(calcium([...value({ 'adjusted calcium': '2.30 mmol/L' }), ...loaded('2026-11-13')]).verdict).toBe('ready');
  });
  test('an exception for the age of bloods does not pass over the check after loading', () => {
    const except = at('2026-11-21', 'prescriber-exception', {
      requirement: 'age of bloods',
      reason: 'r',
      expiresOn: '2027-12-31' as never,
    });
    expect(calcium([...value({ 'adjusted calcium': '2.30 mmol/L' }), ...loaded('2026-11-14'), except]).verdict).toBe(
      'cannot say',
    );
  });
  test('a loading still running changes nothing', () => {
    expect(
      calcium([...value({ 'adjusted calcium': '2.30 mmol/L' }), ...loaded('2026-11-24').slice(0, 2)]).verdict,
    ).toBe('ready');
  });
});

describe('vitamin D, compared in the unit reported', () => {
  // Floors: NOS/ROS 2018 (read) 50 nmol/L; Manchester 2012 (read) 20 ng/mL. references.md 2.10: 20 ng/mL is 49.92 nmol/L.
  test.each([
    ['49.9 nmol/L', 'not ready'],
    ['50 nmol/L', 'ready'],
    ['50.1 nmol/L', 'ready'],
    ['19.9 ng/mL', 'not ready'],
    ['20 ng/mL', 'ready'],
    ['<20 nmol/L', 'not ready'],
    ['<50 nmol/L', 'not ready'],
    ['<=50 nmol/L', 'not ready'],
    ['<51 nmol/L', 'cannot say'],
    ['>50 nmol/L', 'ready'],
    ['>=50 nmol/L', 'ready'],
    ['>49 nmol/L', 'cannot say'],
    ['<20 ng/mL', 'not ready'],
    ['>20 ng/mL', 'ready'],
    ['50 mmol/L', 'cannot say'],
  ])('%s: %s', (text, expected) => {
    expect(vitaminD(value({ 'vitamin D': text })).verdict).toBe(expected);
  });
  test('20 ng/mL passes and says that it is about 49.92 nmol/L', () => {
    expect(vitaminD(value({ 'vitamin D': '20 ng/mL' })).working().cautions).toEqual([
      'About 49.92 nmol/L; it was compared in the unit reported.',
    ]);
  });
  test('a level counts 365 days and not one more', () => {
    const lines = value({ 'vitamin D': '60 nmol/L' }, '2025-11-26');
    expect([vitaminD(lines, day('2026-11-26')).verdict, vitaminD(lines, day('2026-11-27')).verdict]).toEqual([
      'ready',
      'cannot say',
    ]);
  });
  test('never measured, or not signed: cannot say', () => {
    expect(vitaminD([]).cause).toBe('vitamin D never measured');
    expect(vitaminD(bloods('2026-11-20', { 'vitamin D': '60 nmol/L' }, null)).verdict).toBe('cannot say');
  });
  test('an illness or an operation does not void it', () => {
    expect(
      vitaminD([
        ...value({ 'vitamin D': '60 nmol/L' }),
        at('2026-11-22', 'illness', { what: 'flu', sort: 'illness' }),
        at('2026-11-22', 'surgery', { what: 'other operation' }),
      ]).verdict,
    ).toBe('ready');
  });
});

describe('loading', () => {
  const loading = (on: string, startOn = on, doses = 3) =>
    at(on, 'vitamin-d-loading', { doses, everyDays: 7, unitsPerDose: 50000, startOn: startOn as never });
  const taken = (on: string, doses = 1) => at(on, 'vitamin-d-taken', { doses, source: 'told us' });
  const low = value({ 'vitamin D': '31 nmol/L' }, '2026-09-01');
  const finished = [...low, loading('2026-09-02'), taken('2026-09-02'), taken('2026-09-09'), taken('2026-09-16')];
  test('not finished: not ready, on every date as things stand', () => {
    const running = finished.slice(0, -1);
    expect([vitaminD(running).verdict, vitaminD(running, day('2027-11-01')).verdict]).toEqual([
      'not ready',
      'not ready',
    ]);
    expect(vitaminD(running).cause).toBe('vitamin D loading not finished');
  });
  test('finished: ready for 120 days without a word about maintenance, and not one more', () => {
    const until = addDays(day('2026-09-16'), 120);
    expect([
      vitaminD(finished).verdict,
      vitaminD(finished, until).verdict,
      vitaminD(finished, addDays(until, 1)).verdict,
    ]).toEqual(['ready', 'ready', 'cannot say']);
  });
  const confirmed = (on: string, taken = true) => at(on, 'vitamin-d-maintenance', { taken });
  const span = (lines: readonly Line[], ...dates: readonly number[]) =>
    dates.map((on) => vitaminD(lines, on as never).verdict);
  // safety.md: "for 12 months if maintenance is confirmed as taken at the recall call". How long a word counts: common practice, no source.
  test('a word that the daily vitamin D is taken counts for 120 days from its own day, and not one more', () => {
    const until = addDays(day('2026-11-01'), 120);
    expect(span([...finished, confirmed('2026-11-01')], until, until + 1)).toEqual(['ready', 'cannot say']);
  });
  test('said on the day after the loading, it adds one day', () => {
    const until = addDays(day('2026-09-17'), 120);
    expect(span([...finished, confirmed('2026-09-17')], until, until + 1)).toEqual(['ready', 'cannot say']);
  });
  test('confirmed again it goes on, to 365 days after the loading at most', () => {
    const again = [...finished, confirmed('2026-10-01'), confirmed('2026-11-24')];
    const until = addDays(day('2026-11-24'), 120);
    expect(span(again, until, until + 1)).toEqual(['ready', 'cannot say']);
    const yearAgo = [
      ...value({ 'vitamin D': '31 nmol/L' }, '2025-11-01'),
      loading('2025-12-01'),
      taken('2025-12-05', 3),
      confirmed('2026-11-20'),
    ];
    const last = addDays(day('2025-12-05'), 365);
    expect(span(yearAgo, last, last + 1)).toEqual(['ready', 'cannot say']);
  });
  test('not taken any more, and taken again: the newest word decides', () => {
    const stopped = [...finished, confirmed('2026-10-01'), confirmed('2026-11-20', false)];
    expect(vitaminD(stopped).verdict).toBe('cannot say');
    expect(vitaminD([...stopped, confirmed('2026-11-24')]).verdict).toBe('ready');
  });
  test('finished but maintenance not taken: cannot say at once; said before the end it says nothing', () => {
    expect(vitaminD([...finished, at('2026-11-01', 'vitamin-d-maintenance', { taken: false })]).verdict).toBe(
      'cannot say',
    );
    expect(vitaminD([...finished, at('2026-09-10', 'vitamin-d-maintenance', { taken: false })]).verdict).toBe('ready');
  });
  test('a signed level after the loading decides; an unsigned one only where it is bad, and then nothing can be said', () => {
    expect(vitaminD([...finished, ...value({ 'vitamin D': '40 nmol/L' })]).verdict).toBe('not ready');
    const unread = (text: string) =>
      vitaminD([...finished, ...bloods('2026-11-20', { 'vitamin D': text }, null)]).verdict;
    expect(unread('40 nmol/L')).toBe('cannot say');
    expect(unread('60 nmol/L')).toBe('ready');
  });
  test('a level of the day the loading ended is not after it', () => {
    expect(vitaminD([...finished, ...value({ 'vitamin D': '40 nmol/L' }, '2026-09-16')]).verdict).toBe('ready');
    expect(vitaminD([...finished, ...value({ 'vitamin D': '40 nmol/L' }, '2026-09-17')]).verdict).toBe('not ready');
  });
  test('a loading stopped on the day it was prescribed is stopped', () => {
    const stopped = [
      ...low,
      loading('2026-09-02'),
      at('2026-09-02', 'vitamin-d-loading-stopped', { reason: 'declined' }),
    ];
    expect(vitaminD(stopped).cause).toBe('vitamin D 31 nmol/L, below 50 nmol/L');
  });
  test('doses count from the first day of the loading, or its own date if that is earlier', () => {
    expect(vitaminD([...low, taken('2026-09-01', 3), loading('2026-09-02')]).verdict).toBe('not ready');
    expect(vitaminD([...low, loading('2026-09-02', '2026-09-05'), taken('2026-09-03', 3)]).verdict).toBe('ready');
  });
  test('stopped: the level decides', () => {
    expect(
      vitaminD([...finished.slice(0, -1), at('2026-09-12', 'vitamin-d-loading-stopped', { reason: 'nausea' })]),
    ).toMatchObject({ verdict: 'not ready', cause: 'vitamin D 31 nmol/L, below 50 nmol/L' });
  });
  test('stopped before its last dose, then taken all the same: still stopped', () => {
    expect(vitaminD([...finished, at('2026-09-12', 'vitamin-d-loading-stopped', { reason: 'nausea' })]).verdict).toBe(
      'not ready',
    );
    expect(vitaminD([...finished, at('2026-09-16', 'vitamin-d-loading-stopped', { reason: 'done' })]).verdict).toBe(
      'ready',
    );
  });
  test('a running loading beside a passing level in date: the level decides, until it is out of date', () => {
    const lines = [...value({ 'vitamin D': '60 nmol/L' }, '2025-12-01'), loading('2026-11-20')];
    expect([vitaminD(lines, day('2026-12-01')).verdict, vitaminD(lines, day('2026-12-02')).verdict]).toEqual([
      'ready',
      'not ready',
    ]);
  });
  test('an exception passes it over to its last day, and is shown', () => {
    const lines = [
      ...low,
      at(
        '2026-11-20',
        'prescriber-exception',
        { requirement: 'vitamin D', reason: 'before discharge', expiresOn: '2026-12-10' as never },
        'x',
      ),
    ];
    expect(vitaminD(lines, day('2026-12-10'))).toMatchObject({ verdict: 'ready', exception: 'x' });
    expect(vitaminD(lines, day('2026-12-11')).verdict).toBe('not ready');
  });
});

describe('where the protocol asks for loading after a hip repair', () => {
  const made = protocolFrom({ ...teachingSheet, hipRepairNeedsLoading: true });
  const strict = 'protocol' in made ? made.protocol : teaching;
  const good = value({ 'vitamin D': '80 nmol/L' });
  const repair = at('2026-10-01', 'surgery', { what: 'hip repair' });
  const loadedOn = (on: string) => [
    at(on, 'vitamin-d-loading', { doses: 1, everyDays: 7, unitsPerDose: 100000, startOn: on as never }),
    at(on, 'vitamin-d-taken', { doses: 1, source: 'seen taken' }),
  ];
  test('a good level is not enough; a loading finished since is', () => {
    expect(vitaminD([...good, repair], asked, strict)).toMatchObject({
      verdict: 'not ready',
      cause: 'vitamin D loading after hip repair',
    });
    expect(vitaminD([...good, repair, ...loadedOn('2026-10-05')], asked, strict).verdict).toBe('ready');
    expect(vitaminD([...good, repair, ...loadedOn('2026-09-20')], asked, strict).verdict).toBe('not ready');
  });
  test('not once a dose of zoledronic acid has been given, and not after the look-back', () => {
    expect(vitaminD([...good, repair, doseGiven('2026-11-01')], asked, strict).verdict).toBe('ready');
    const last = addDays(day('2026-10-01'), 365);
    expect([
      vitaminD([...good, repair], last, strict).verdict,
      vitaminD([...good, repair], addDays(last, 1), strict).verdict,
    ]).toEqual(['not ready', 'ready']);
  });
  test('the teaching protocol does not ask for it', () => {
    expect(vitaminD([...good, repair]).verdict).toBe('ready');
  });
});
