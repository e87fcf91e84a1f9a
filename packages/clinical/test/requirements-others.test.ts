/** Everything but the laboratory (docs/readiness.md R5-R9), day by day at its edges. Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  type Day,
  type RequirementId,
  addDays,
  day,
  evidenceOf,
  requirementIds,
  requirements,
  teaching,
} from '@twelvemonth/clinical';
import { type Line, asked, at, born, doseGiven, personOf } from './person.ts';

const judge = (id: RequirementId, lines: readonly Line[]) =>
  requirements[id].judge(evidenceOf(personOf(lines), asked), teaching);
const verdictsOn = (id: RequirementId, lines: readonly Line[], ...on: string[]) =>
  on.map((date) => judge(id, lines).on(day(date)).verdict);
const verdict = (id: RequirementId, lines: readonly Line[], on: Day = asked) => judge(id, lines).on(on).verdict;
const exception = (requirement: 'hip repair' | 'course review', expiresOn: string) =>
  at(
    '2026-11-01',
    'prescriber-exception',
    { requirement, reason: 'agreed with the ward', expiresOn: expiresOn as never },
    'x',
  );

describe('identity', () => {
  test.each([
    ['1941-06-02', 'ready'],
    ['1941-06', 'cannot say'],
    ['1941', 'cannot say'],
    ['2027-01-01', 'cannot say'],
  ])('born %s: %s', (birth, expected) => {
    expect(verdict('identity', [born(birth)])).toBe(expected);
  });
  test('nobody recorded: cannot say', () => expect(verdict('identity', [])).toBe('cannot say'));
  // Zoledronic acid product text 4.2 (EU/UK): not for those under 18 (from memory).
  test('under 18 nothing is said, from the birthday on it is', () => {
    const lines = [born('2008-11-30')];
    expect(verdict('identity', lines, day('2026-11-29'))).toBe('cannot say');
    expect(verdict('identity', lines, day('2026-11-30'))).toBe('ready');
  });
});

describe('hypersensitivity', () => {
  const none = at('2026-01-01', 'allergy', { answer: 'none known' });
  const other = (substance: string, medicine?: Extract<BodyOfKind<'allergy'>, { answer: 'other' }>['medicine']) =>
    at('2026-01-01', 'allergy', { answer: 'other', substance, ...(medicine === undefined ? {} : { medicine }) });
  const ours = at('2025-01-01', 'allergy', { answer: 'bisphosphonate', reaction: 'rash after tablets' });
  test('silence is not "none"', () => expect(verdict('hypersensitivity', [])).toBe('cannot say'));
  test('"none known", and an allergy that says it is to no bone medicine, pass', () => {
    expect(verdict('hypersensitivity', [none])).toBe('ready');
    expect(verdict('hypersensitivity', [other('penicillin', 'medicine not for bones')])).toBe('ready');
    expect(verdict('hypersensitivity', [other('latex', 'not a medicine')])).toBe('ready');
    expect(verdict('hypersensitivity', [other('denosumab', 'denosumab')])).toBe('ready');
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
    expect(verdict('hypersensitivity', [line, none])).toBe('not ready'),
  );
  // Common practice, no source: unknown is never safe.
  test('one that does not say which medicine it is to: cannot say, until it is corrected', () => {
    expect(verdict('hypersensitivity', [other('penicillin'), none])).toBe('cannot say');
    expect(verdict('hypersensitivity', [other('a drip', 'not known which')])).toBe('cannot say');
    const told = at('2026-01-01', 'allergy', { answer: 'other', substance: 'a drip' }, 'told');
    const corrected: Line = {
      ...at('2026-01-02', 'allergy', { answer: 'other', substance: 'vancomycin', medicine: 'medicine not for bones' }),
      amends: 'told',
    };
    expect(verdict('hypersensitivity', [told, corrected])).toBe('ready');
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
    expect(verdict('hypersensitivity', [none, reacted('severe'), lookedInto('reaction')])).toBe('ready');
    expect(verdict('hypersensitivity', [none, reacted('severe'), lookedInto('another')])).toBe('cannot say');
    expect(verdict('hypersensitivity', [none, reacted('mild')])).toBe('ready');
    expect(verdict('hypersensitivity', [none, reacted('moderate')])).toBe('ready');
  });
  test('any bisphosphonate stops, whatever is recorded later', () =>
    expect(verdict('hypersensitivity', [ours, none])).toBe('not ready'));
});

describe('pregnancy', () => {
  test('never asked: cannot say, whatever the age', () =>
    expect(verdict('pregnancy', [born('1941-06-02')])).toBe('cannot say'));
  test('a recorded reason why it does not apply', () =>
    expect(verdict('pregnancy', [at('2020-01-01', 'pregnancy', { answer: 'does not apply', reason: 'told us' })])).toBe(
      'does not apply',
    ));
  test('"no" counts 14 days and not one more', () => {
    const no = [at('2026-11-20', 'pregnancy', { answer: 'no' })];
    expect(verdictsOn('pregnancy', no, '2026-12-04', '2026-12-05')).toEqual(['ready', 'cannot say']);
  });
  test.each(['pregnant', 'breast-feeding'] as const)('%s: not ready', (answer) =>
    expect(verdict('pregnancy', [at('2026-11-20', 'pregnancy', { answer })])).toBe('not ready'),
  );
});

describe('illness', () => {
  const ill = at('2026-11-10', 'illness', { what: 'flu', sort: 'illness' });
  test('none recorded: ready', () => expect(verdict('illness', [])).toBe('ready'));
  test('not over until someone says so; the day it began is late enough', () => {
    expect(verdict('illness', [ill])).toBe('not ready');
    expect(verdict('illness', [at('2026-11-09', 'well-since', {}), ill])).toBe('not ready');
    expect(verdict('illness', [ill, at('2026-11-10', 'well-since', {})])).toBe('ready');
  });
  test('a new illness after it needs a new word', () => {
    expect(
      verdict('illness', [
        ill,
        at('2026-11-12', 'well-since', {}),
        at('2026-11-20', 'illness', { what: 'fall, dehydrated', sort: 'dehydration' }),
      ]),
    ).toBe('not ready');
  });
});

describe('days since hip repair', () => {
  const repair = (on: string, what: 'hip repair' | 'hip re-operation' = 'hip repair') => at(on, 'surgery', { what });
  const fracture = (on: string, dateKnown = true) => at(on, 'fracture', { site: 'hip', dateKnown });
  test('no hip fracture: ready', () =>
    expect(verdict('hip-repair', [at('2026-11-20', 'fracture', { site: 'wrist', dateKnown: true })])).toBe('ready'));
  test('the 13th and the 14th day', () => {
    // clinical.md 8: repair 1 Mar 2026 -> earliest 15 Mar 2026. Here 20 Nov -> 4 Dec.
    expect(verdictsOn('hip-repair', [repair('2026-11-20')], '2026-12-03', '2026-12-04')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  test('a re-operation starts it again; another operation does not', () => {
    expect(
      verdictsOn(
        'hip-repair',
        [repair('2026-11-01'), repair('2026-11-20', 'hip re-operation')],
        '2026-12-03',
        '2026-12-04',
      ),
    ).toEqual(['not ready', 'ready']);
    expect(
      verdict('hip-repair', [repair('2026-11-01'), at('2026-11-20', 'surgery', { what: 'other operation' })]),
    ).toBe('ready');
  });
  const treated = (on: string, how: 'repaired' | 'not repaired' | 'not known', dateKnown = true) =>
    at(on, 'fracture', { site: 'hip', dateKnown, treated: how }, 'f');
  // safety.md: "not repaired or date unknown: cannot say, prescriber". A year makes no repair.
  test.each([
    ['not repaired', treated('2020-01-01', 'not repaired'), 'hip fracture, not repaired'],
    ['not known how', treated('2020-01-01', 'not known'), 'hip fracture, repair not recorded'],
    ['nobody says how', fracture('2020-01-01'), 'hip fracture, repair not recorded'],
    [
      'repaired, on a day nobody knows',
      treated('2020-01-01', 'repaired', false),
      'hip fracture of an unknown day, repair not recorded',
    ],
  ])('treated %s: cannot say without an end', (_, line, cause) => {
    expect(judge('hip-repair', [line]).on(day('2029-01-01'))).toMatchObject({ verdict: 'cannot say', cause });
    expect(verdict('hip-repair', [line], day('2036-01-01'))).toBe('cannot say');
    expect(verdict('hip-repair', [line, at('2020-01-03', 'surgery', { what: 'hip repair' })])).toBe('ready');
  });
  test('said to be repaired, without the day: asked about for a year', () => {
    expect(verdictsOn('hip-repair', [treated('2026-11-01', 'repaired')], '2027-11-01', '2027-11-02')).toEqual([
      'cannot say',
      'ready',
    ]);
  });
  test('a prescriber is asked, and has the last word about that fracture alone', () => {
    const line = treated('2026-03-01', 'not repaired');
    const path = judge('hip-repair', [line]).path(day('2030-01-01'));
    expect(path).toMatchObject({ is: 'blocked', by: { who: 'prescriber', step: 'prescriber decides' } });
    const looked = (about: string) =>
      at('2026-11-20', 'prescriber-decision', {
        question: 'hip fracture looked into',
        about,
        reason: 'undisplaced, treated without an operation, healed',
      });
    expect(verdict('hip-repair', [line, looked('f')])).toBe('ready');
    expect(verdict('hip-repair', [line, looked('g')])).toBe('cannot say');
    expect(verdict('hip-repair', [line, fracture('2026-11-10'), looked('f')])).toBe('cannot say');
  });
  test('a new fracture after an old repair: cannot say', () => {
    expect(verdict('hip-repair', [repair('2024-01-01'), fracture('2026-11-01')])).toBe('cannot say');
  });
  test("a prescriber's exception, to its last day, shown", () => {
    const lines = [repair('2026-11-20'), exception('hip repair', '2026-11-30')];
    expect(judge('hip-repair', lines).on(day('2026-11-30'))).toMatchObject({ verdict: 'ready', exception: 'x' });
    expect(verdict('hip-repair', lines, day('2026-12-01'))).toBe('not ready');
  });
});

describe('interval', () => {
  test('no earlier dose: ready', () =>
    expect(judge('interval', []).on(asked)).toMatchObject({ verdict: 'ready', cause: 'no earlier dose recorded' }));
  test('the day before the anniversary, on it, after it', () => {
    expect(verdictsOn('interval', [doseGiven('2025-12-02')], '2026-12-01', '2026-12-02', '2026-12-03')).toEqual([
      'not ready',
      'ready',
      'ready',
    ]);
  });
  test('no 365-day rule: over a leap day the anniversary is 366 days on', () => {
    expect(
      verdictsOn(
        'interval',
        [
          doseGiven('2023-12-02'),
          at('2023-12-02', 'prescription', {
            regimen: 'zoledronic-acid-yearly',
            validFrom: '2023-01-01' as never,
            validUntil: '2030-01-01' as never,
          }),
        ],
        '2024-11-30',
        '2024-12-01',
        '2024-12-02',
      ),
    ).toEqual(['not ready', 'not ready', 'ready']);
    expect(day('2024-12-02') - day('2023-12-02')).toBe(366);
  });
  test('29 February 2024: 27 February 2025 not yet, 28 February 2025 met', () => {
    expect(verdictsOn('interval', [doseGiven('2024-02-29')], '2025-02-27', '2025-02-28')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  test("the prescription's own interval goes before the regimen's", () => {
    const own = at('2026-01-01', 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-01-01' as never,
      validUntil: '2027-12-31' as never,
      interval: { months: 18, reason: 'after three doses' },
    });
    expect(verdictsOn('interval', [doseGiven('2025-08-31'), own], '2027-02-27', '2027-02-28')).toEqual([
      'not ready',
      'ready',
    ]);
  });
  const part = at(
    '2026-10-01',
    'dose',
    { medicine: 'zoledronic acid 5 mg', setting: 'this service', partMilliliters: 40 },
    'part',
  );
  const decided = (question: 'part dose counts' | 'part dose does not count', on = '2026-10-02') =>
    at(on, 'prescriber-decision', { question, about: 'part', reason: 'stopped for infiltration' });
  test('a part dose nobody has decided about: cannot say on any date', () => {
    expect(verdictsOn('interval', [doseGiven('2025-09-01'), part], '2026-11-25', '2029-01-01')).toEqual([
      'cannot say',
      'cannot say',
    ]);
  });
  test('decided: it counts, or it does not; the newest word holds', () => {
    expect(verdict('interval', [part, decided('part dose counts')])).toBe('not ready');
    expect(verdict('interval', [part, decided('part dose does not count')])).toBe('not ready');
    expect(
      verdict('interval', [part, decided('part dose does not count'), decided('part dose counts', '2026-10-05')]),
    ).toBe('not ready');
  });
  test('the interval runs from a part dose that does not count, as from a whole one (product text: once a year)', () => {
    const notCounted = [doseGiven('2025-09-01'), part, decided('part dose does not count')];
    expect(verdictsOn('interval', notCounted, '2026-11-25', '2027-09-30', '2027-10-01')).toEqual([
      'not ready',
      'not ready',
      'ready',
    ]);
  });
  test('the 4 mg product holds for 12 months unless a prescriber decides about it', () => {
    const oncology = at('2026-01-10', 'dose', { medicine: 'zoledronic acid 4 mg', setting: 'elsewhere' }, 'z4');
    expect(verdictsOn('interval', [oncology], '2027-01-09', '2027-01-10')).toEqual(['not ready', 'ready']);
    expect(
      verdict('interval', [
        oncology,
        at('2026-11-01', 'prescriber-decision', {
          question: 'after 4 mg product',
          about: 'z4',
          reason: 'oncology agrees',
        }),
      ]),
    ).toBe('ready');
  });
  test('denosumab is no dose of this course', () => {
    expect(verdict('interval', [at('2026-11-01', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' })])).toBe(
      'ready',
    );
  });
});

describe('course', () => {
  const three = [doseGiven('2023-10-01'), doseGiven('2024-10-01'), doseGiven('2025-10-01')];
  const review = (on: string, body: Parameters<typeof at<'course-review'>>[2]) => at(on, 'course-review', body);
  test('two of three: ready; three of three: review', () => {
    expect([verdict('course', three.slice(1)), verdict('course', three)]).toEqual(['ready', 'not ready']);
  });
  test('carry on to six lets the fourth to the sixth through', () => {
    expect(verdict('course', [...three, review('2025-11-01', { outcome: 'carry on', toDoses: 6, reason: 'r' })])).toBe(
      'ready',
    );
    expect(verdict('course', [...three, review('2025-11-01', { outcome: 'carry on', toDoses: 3, reason: 'r' })])).toBe(
      'not ready',
    );
  });
  test('a new course counts from its own date', () => {
    const opened = review('2025-11-01', { outcome: 'new course', plannedDoses: 1, reason: 'r' });
    expect(verdict('course', [...three, opened])).toBe('ready');
    expect(verdict('course', [...three, opened, doseGiven('2026-11-02')])).toBe('not ready');
  });
  test("the prescription's number goes before the regimen's", () => {
    const own = at('2026-01-01', 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-01-01' as never,
      validUntil: '2027-12-31' as never,
      plannedDoses: 4,
    });
    expect(verdict('course', [...three, own])).toBe('ready');
  });
  test('a planned break: not ready before and after its end, for different reasons', () => {
    const lines = [
      ...three,
      review('2025-11-01', {
        outcome: 'planned break',
        reviewOn: '2027-11-01' as never,
        triggers: 'new fracture',
        reason: 'r',
      }),
    ];
    expect(['2027-10-31', '2027-11-01'].map((on) => judge('course', lines).on(day(on)).cause)).toEqual([
      'planned break until 1 Nov 2027',
      'review after the break',
    ]);
  });
  test.each([
    ['stop', { outcome: 'stop', reason: 'frailty' }],
    [
      'other treatment',
      { outcome: 'other treatment', to: 'another medicine', dueOn: '2027-01-01' as never, reason: 'r' },
    ],
  ] as const)('%s: not ready', (_, body) => {
    expect(verdict('course', [doseGiven('2025-10-01'), review('2026-01-01', body)])).toBe('not ready');
  });
  const fracture = (on: string, site: 'hip' | 'spine' | 'wrist' | 'other') =>
    at(on, 'fracture', { site, dateKnown: true });
  test.each(['hip', 'spine'] as const)('a %s fracture on treatment opens a review', (site) => {
    expect(verdict('course', [doseGiven('2025-10-01'), fracture('2026-05-01', site)])).toBe('not ready');
    expect(verdict('course', [doseGiven('2025-10-01'), fracture('2025-09-01', site)])).toBe('ready');
  });
  test('one other fracture does not, the second does; fingers and toes never', () => {
    const once = [doseGiven('2025-10-01'), fracture('2026-05-01', 'wrist')];
    expect(verdict('course', once)).toBe('ready');
    expect(verdict('course', [...once, fracture('2026-06-01', 'wrist')])).toBe('not ready');
    expect(verdict('course', [...once, fracture('2026-06-01', 'other'), fracture('2026-07-01', 'other')])).toBe(
      'ready',
    );
  });
  test('a review on or after the event closes it', () => {
    const lines = [doseGiven('2025-10-01'), fracture('2026-05-01', 'spine')];
    const carryOn = { outcome: 'carry on', toDoses: 6, reason: 'r' } as const;
    expect(verdict('course', [...lines, review('2026-04-30', carryOn)])).toBe('not ready');
    expect(verdict('course', [...lines, review('2026-05-01', carryOn)])).toBe('ready');
  });
  test('back pain or height loss on treatment holds until cleared', () => {
    const pain = at('2026-05-01', 'symptom', { what: 'back pain' }, 's1');
    expect(verdict('course', [doseGiven('2025-10-01'), pain])).toBe('not ready');
    expect(
      verdict('course', [
        doseGiven('2025-10-01'),
        pain,
        at('2026-05-20', 'symptom-cleared', { entry: 's1', finding: 'no new fracture on X-ray' }),
      ]),
    ).toBe('ready');
    expect(verdict('course', [pain])).toBe('ready');
  });
  test("a prescriber's exception, to its last day", () => {
    expect(
      verdictsOn('course', [...three, exception('course review', '2026-12-31')], '2026-12-31', '2027-01-01'),
    ).toEqual(['ready', 'not ready']);
  });
});

describe('prescription', () => {
  const order = (from: string, until: string, regimen = 'zoledronic-acid-yearly') =>
    at('2026-01-01', 'prescription', { regimen, validFrom: from as never, validUntil: until as never });
  test('none: cannot say', () => expect(verdict('prescription', [])).toBe('cannot say'));
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
    expect(verdict('prescription', [order('2026-01-01', '2027-01-01', 'something-else')])).toBe('cannot say'));
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
  ] as const)('%#: %s', (lines, expected) => expect(verdict('consent', lines)).toBe(expected));
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
      expect(verdict(id, [teeth])).toBe(verdict(id, []));
    expect(verdict('teeth-and-jaw', [teeth])).toBe('ready');
  });
});
