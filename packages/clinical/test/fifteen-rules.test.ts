/**
 * The fifteen most safety-critical rules of the clinical fact sheet (section 11) and its rules of thumb (section 12), each as
 * what the engine says of a person. Sources of the numbers: docs/safety/sources.md.
 */
import { describe, expect, test } from 'vitest';
import {
  type DecisionContext,
  type RequirementId,
  addDays,
  checkRate,
  civilFromDay,
  day,
  clockOf,
  dropsPerMinute,
  egfr,
  everyDay,
  goVerdict,
  kindNamed,
  paracetamolFor,
  plainDate,
  protocolFrom,
  ratioOf,
  readiness,
  scaled,
  starterSheet,
  teaching,
  teachingSheet,
  usualDayQuestions,
  verdictOn,
  visitSteps,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, doseGiven, personOf, weighed } from './person.ts';

const context: DecisionContext = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
const on = (lines: readonly Line[], date: string, by = context) =>
  verdictOn(readiness(personOf(lines), by, asked), day(date));
const today = (lines: readonly Line[], by = context) => on(lines, '2026-11-25', by);
const said = (lines: readonly Line[], requirement: RequirementId, by = context) =>
  today(lines, by).requirements.find((one) => one.requirement === requirement)?.verdict;

const facts: Readonly<Record<string, readonly Line[]>> = {
  person: [...clear, born('1941-06-02')],
  weight: [weighed('2026-11-20', '56.2')],
  creatinine: bloods('2026-11-20', { creatinine: '79 umol/L' }),
  calcium: bloods('2026-11-20', { 'adjusted calcium': '2.35 mmol/L' }),
  vitaminD: bloods('2026-11-20', { 'vitamin D': '70 nmol/L' }),
};
const good = (but: Readonly<Record<string, readonly Line[]>> = {}): Line[] =>
  Object.values({ ...facts, ...but }).flat();

test('a person of whom everything is known and in order is ready', () => expect(today(good()).verdict).toBe('ready'));

describe('rule 1: clearance below 35, or kidneys changing', () => {
  test('34.99 mL/min is not ready, whoever asks', () =>
    expect(
      said(
        good({
          person: [...clear, born('1941-11-25')],
          weight: [weighed('2026-11-20', '52')],
          creatinine: bloods('2026-11-20', { creatinine: '85 umol/L' }),
        }),
        'kidney-function',
      ),
    ).toBe('not ready'));
  test('creatinine up by 26 umol/L cannot be said, whatever the clearance', () =>
    expect(
      said(
        good({
          creatinine: [
            ...bloods('2026-09-01', { creatinine: '50 umol/L' }),
            ...bloods('2026-11-20', { creatinine: '76 umol/L' }),
          ],
        }),
        'kidney-function',
      ),
    ).toBe('cannot say'));
});

describe('rule 2: an eGFR never passes anyone', () => {
  const woman = good({
    person: [...clear, born('1942-06-02')],
    weight: [weighed('2026-11-20', '45')],
    creatinine: bloods('2026-11-20', { creatinine: '88 umol/L', egfr: '56 mL/min/1.73m2' }),
  });
  test('84 years, 45 kg, creatinine 88: eGFR 56, clearance 30, not ready', () => {
    expect(egfr(2021, 'female', 84, 88 / 88.4)).toBeGreaterThan(55);
    expect(said(woman, 'kidney-function')).toBe('not ready');
  });
  test('an eGFR of 90 in place of a creatinine is no creatinine', () =>
    expect(said(good({ creatinine: bloods('2026-11-20', { egfr: '90 mL/min/1.73m2' }) }), 'kidney-function')).toBe(
      'cannot say',
    ));
});

describe('rule 3: calcium', () => {
  test('low is not ready; none, or one too old, cannot be said', () => {
    expect(said(good({ calcium: bloods('2026-11-20', { 'adjusted calcium': '2.19 mmol/L' }) }), 'calcium')).toBe(
      'not ready',
    );
    expect(said(good({ calcium: [] }), 'calcium')).toBe('cannot say');
    expect(said(good({ calcium: bloods('2026-09-29', { 'adjusted calcium': '2.35 mmol/L' }) }), 'calcium')).toBe(
      'cannot say',
    );
  });
});

describe('rule 4: vitamin D first', () => {
  test('a low level is not ready until it is loaded', () =>
    expect(said(good({ vitaminD: bloods('2026-11-20', { 'vitamin D': '49 nmol/L' }) }), 'vitamin-d')).toBe(
      'not ready',
    ));
  test.each([
    ['teaching', teachingSheet],
    ['starter', starterSheet],
  ])('loading in the %s sheet is about 300,000 units over 6 to 10 weeks', (_name, { numbers }) => {
    const number = (key: 'loadingDoses' | 'loadingEveryDays' | 'loadingUnitsPerDose') =>
      Number(numbers[key].value ?? numbers[key].suggestion);
    expect(number('loadingDoses') * number('loadingUnitsPerDose')).toBe(300_000);
    // From the first dose to the end of the last one's interval.
    const weeks = (number('loadingDoses') * number('loadingEveryDays')) / 7;
    expect(weeks).toBeGreaterThanOrEqual(6);
    expect(weeks).toBeLessThanOrEqual(10);
  });
});

describe('rule 5: not under 15 minutes, drops rounded down, 5 mg in all', () => {
  test.each([
    ['teaching', teachingSheet],
    ['starter', starterSheet],
  ])('the shortest time of the %s sheet is 15 minutes', (_name, { numbers }) =>
    expect(Number(numbers.runningMinutesLeast.value)).toBe(15),
  );
  test('133 drops a minute and not 134; 401 mL/h is refused', () => {
    expect(dropsPerMinute(100, 15, 20)).toBe(133);
    expect(checkRate(100, 400, 15)).toEqual({ allowed: true });
    expect(checkRate(100, 401, 15)).toEqual({
      allowed: false,
      says: '401 mL/h gives 100 mL in 14.96 minutes, less than 15',
    });
  });
  test('a dose holds at most the 100 mL of one bag', () =>
    expect(
      kindNamed('dose').body.safeParse({ medicine: 'zoledronic acid 5 mg', setting: 'ward', partMilliliters: 101 })
        .success,
    ).toBe(false));
});

describe('rule 6: dry, unwell, or a medicine hard on the kidneys', () => {
  test('unwell is not ready, and the bloods of before are worth nothing until well again', () => {
    const ill = [...good(), at('2026-11-23', 'illness', { what: 'vomiting', sort: 'illness' })];
    expect(said(ill, 'illness')).toBe('not ready');
    expect(said(ill, 'kidney-function')).toBe('cannot say');
  });
  test('a medicine hard on the kidneys since the sample voids it', () =>
    expect(
      said([...good(), at('2026-11-22', 'medicine', { name: 'naproxen', sort: 'nephrotoxic' })], 'kidney-function'),
    ).toBe('cannot say'));
  test('drinking is asked on the day, and "no" holds the dose', () => {
    const question = usualDayQuestions.find(({ id }) => id === 'drunk-enough');
    expect(question).toMatchObject({ holdsOn: 'no', then: 'not ready' });
  });
});

describe('rule 7: nothing inside 12 months, and no other bone medicine beside it', () => {
  test('the day before the anniversary is not ready, the anniversary is', () => {
    expect(said([...good(), doseGiven('2025-11-26')], 'interval')).toBe('not ready');
    expect(said([...good(), doseGiven('2025-11-25')], 'interval')).toBe('ready');
  });
  test('the 4 mg product in the last 12 months: not ready', () =>
    expect(
      said(
        [...good(), at('2026-05-01', 'dose', { medicine: 'zoledronic acid 4 mg', setting: 'elsewhere' })],
        'interval',
      ),
    ).toBe('not ready'));
  test('a bisphosphonate tablet still taken: cannot say', () =>
    expect(
      said(
        [...good(), at('2026-01-01', 'medicine', { name: 'alendronic acid', sort: 'bisphosphonate tablet' })],
        'other-bone-medicines',
      ),
    ).toBe('cannot say'));
});

describe('rule 8: never through or with calcium-containing fluid', () => {
  test.each([teachingSheet, starterSheet])('every zoledronic acid regimen of the sheet says so', ({ regimens }) => {
    const ours = regimens.filter(({ medicine }) => medicine === 'zoledronic acid 5 mg');
    expect(ours.length).toBeGreaterThan(3);
    for (const { cautions } of ours)
      expect(cautions.join(' ')).toMatch(/never through or with calcium-containing fluid/);
  });
});

describe('rule 9: hypersensitivity, pregnancy, breast-feeding', () => {
  test('any bisphosphonate: not ready', () =>
    expect(
      said(
        [...good(), at('2026-11-20', 'allergy', { answer: 'bisphosphonate', reaction: 'rash' })],
        'hypersensitivity',
      ),
    ).toBe('not ready'));
  test.each(['pregnant', 'breast-feeding'] as const)('%s: not ready', (answer) =>
    expect(said([...good(), at('2026-11-20', 'pregnancy', { answer })], 'pregnancy')).toBe('not ready'),
  );
});

describe('rule 10: 14 days after a hip repair, with loading', () => {
  // Fact sheet 8 (computed): repaired 2026-03-01, earliest 2026-03-15; the trial's 90 days end on 2026-05-30.
  test('repaired on 1 March 2026: 14 March not, 15 March yes', () => {
    const lines = [...good(), at('2026-03-01', 'surgery', { what: 'hip repair' })];
    const asOf = (date: string) =>
      verdictOn(
        readiness(personOf(lines.filter((line) => line.on <= date)), context, day(date)),
        day(date),
      ).requirements.find(({ requirement }) => requirement === 'hip-repair')?.verdict;
    expect([asOf('2026-03-14'), asOf('2026-03-15')]).toEqual(['not ready', 'ready']);
    expect(plainDate(addDays(day('2026-03-01'), 90))).toBe('2026-05-30');
  });
  test('where the sheet asks for loading first, a good level is not enough', () => {
    const made = protocolFrom({ ...teachingSheet, hipRepairNeedsLoading: true });
    if (!('protocol' in made)) throw new Error('a number is empty');
    const by = { ...context, protocols: [{ from: day('2015-01-01'), protocol: made.protocol }] };
    const repaired = [...good(), at('2026-10-01', 'surgery', { what: 'hip repair' })];
    expect([said(repaired, 'vitamin-d'), said(repaired, 'vitamin-d', by)]).toEqual(['ready', 'not ready']);
    expect(starterSheet.hipRepairNeedsLoading).toBe(true);
  });
});

describe('rule 11: asked at every visit, and a yes holds until a clinician clears it', () => {
  test.each(['teeth', 'thigh', 'eye', 'new-medicine', 'fall-or-fracture', 'other-bone-medicine'])(
    '%s is asked, and yes is kept',
    (id) => {
      expect(usualDayQuestions.find((question) => question.id === id)).toMatchObject({
        holdsOn: 'yes',
        staysUntilCleared: true,
      });
      const told = [...good(), at('2026-11-20', 'checklist', { answers: { [id]: { answer: 'yes' } } }, 'c1')];
      expect(today(told).verdict).not.toBe('ready');
      const cleared = at('2026-11-24', 'symptom-cleared', { entry: 'c1', question: id, finding: 'looked at' });
      expect(said([...told, cleared], 'symptoms')).toBe('ready');
    },
  );
});

describe('rule 12: denosumab is a promise with a date', () => {
  test('due at six months to the day, alarm 28 days late, highest alarm 112 days late', () => {
    const record = personOf([
      ...good(),
      at('2026-01-15', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' }),
    ]);
    const tier = (date: string) => clockOf(record, teaching, day(date), undefined)?.tier;
    expect(['2026-08-11', '2026-08-12', '2026-11-03', '2026-11-04'].map(tier)).toEqual([
      'first in line',
      'alarm',
      'alarm',
      'highest alarm',
    ]);
  });
});

describe('rule 13: the third dose forces a review, and a break has an end', () => {
  const three = [doseGiven('2023-11-01'), doseGiven('2024-11-01'), doseGiven('2025-11-01')];
  test('no fourth dose without a recorded decision', () =>
    expect(said([...good(), ...three], 'course')).toBe('not ready'));
  test('the usual length of a break in the starter is 36 months', () => {
    const { value, suggestion } = starterSheet.numbers.breakMonths;
    expect(Number(value ?? suggestion)).toBe(36);
  });
  test('a break without a date of reassessment cannot be written', () => {
    const planned = { outcome: 'planned break', triggers: 'a fracture', reason: 'three doses' };
    expect(kindNamed('course-review').body.safeParse(planned).success).toBe(false);
    expect(kindNamed('course-review').body.safeParse({ ...planned, reviewOn: '2029-11-01' }).success).toBe(true);
  });
});

describe('rule 14: a first infusion', () => {
  test.each([
    ['teaching', teachingSheet],
    ['starter', starterSheet],
  ])('the %s sheet has a watch after it, longer than after later ones', (_name, { numbers }) => {
    const minutes = (key: 'observeFirstMinutes' | 'observeLaterMinutes') =>
      Number(numbers[key].value ?? numbers[key].suggestion);
    expect(minutes('observeFirstMinutes')).toBe(30);
    expect(minutes('observeFirstMinutes')).toBeGreaterThan(minutes('observeLaterMinutes'));
  });
  test('under 50 kg paracetamol is less than 4 g a day', () =>
    expect(
      paracetamolFor(teachingSheet.paracetamol, { weightKg: ratioOf(scaled('49')), liverRisk: false, egfr: 60 })?.row
        .mostGramsADay,
    ).toBe(3));
});

describe('rule 15: what is missing or out of date is a stop, and an exception has a name, a reason and an end', () => {
  test.each(Object.keys(facts))('without %s nobody is ready', (name) =>
    expect(today(good({ [name]: [] })).verdict).toBe('cannot say'),
  );
  test('a year later nothing of it is in date', () => expect(on(good(), '2027-11-25').verdict).toBe('cannot say'));
  test.each(['reason', 'expiresOn'])('an exception without its %s cannot be written', (field) => {
    const exception = { requirement: 'vitamin D', reason: 'agreed', expiresOn: '2026-12-24' };
    expect(kindNamed('prescriber-exception').body.safeParse(exception).success).toBe(true);
    expect(kindNamed('prescriber-exception').body.safeParse({ ...exception, [field]: undefined }).success).toBe(false);
  });
  test('only a prescriber writes one', () => expect(kindNamed('prescriber-exception').writes).toEqual(['prescriber']));
});

// Section 12: common practice, no source.
describe('rules of thumb', () => {
  test('one year and three doses, then a review that may carry on, change or stop', () => {
    expect(teachingSheet.regimens[0]).toMatchObject({ intervalMonths: 12, plannedDoses: 3 });
    const three = [doseGiven('2023-11-01'), doseGiven('2024-11-01'), doseGiven('2025-11-01')];
    const reviewed = (body: Parameters<typeof at<'course-review'>>[2]) =>
      said([...good(), ...three, at('2026-11-10', 'course-review', body)], 'course');
    expect(reviewed({ outcome: 'carry on', toDoses: 6, reason: 'hip T -2.8' })).toBe('ready');
    expect(reviewed({ outcome: 'stop', reason: 'low risk' })).toBe('not ready');
  });
  test.each([
    ['teaching', teachingSheet],
    ['starter', starterSheet],
  ])('routine running time of the %s sheet: 15 to 30 minutes', (_name, { numbers }) => {
    const usual = Number(numbers.runningMinutesUsual.value ?? numbers.runningMinutesUsual.suggestion);
    expect(usual).toBeGreaterThanOrEqual(15);
    expect(usual).toBeLessThanOrEqual(30);
  });
  test('all of pulse and its rhythm, pressure, temperature and saturation before the checklist ends', () => {
    const four = {
      pulsePerMinute: 72,
      systolicMmHg: 130,
      temperatureCelsius: 36.8,
      saturationPercent: 97,
      newIrregularPulse: false,
    } as const;
    const checklist = at('2026-11-25', 'checklist', {
      answers: Object.fromEntries(
        usualDayQuestions.map(({ id, holdsOn }) => [id, { answer: holdsOn === 'yes' ? 'no' : 'yes' }]),
      ),
    });
    const go = (measured: Partial<typeof four>) =>
      goVerdict(
        personOf([
          ...good(),
          weighed('2026-11-25', '56'),
          checklist,
          at('2026-11-25', 'observations', { ...measured, when: 'before' }),
        ]),
        context,
        asked,
      ).verdict;
    expect(go(four)).toBe('ready');
    for (const left of Object.keys(four)) expect(go({ ...four, [left]: undefined })).toBe('cannot say');
  });
  test('saline before the medicine; preparation and its check by a second person before it runs; a watch before leaving', () => {
    const order = visitSteps.filter((step) =>
      ['flush', 'preparation', 'second check', 'infusion', 'observe', 'leave'].includes(step),
    );
    expect(order).toEqual(['flush', 'preparation', 'second check', 'infusion', 'observe', 'leave']);
  });
  test('the day asked on in these tests is a Wednesday of November 2026', () =>
    expect(civilFromDay(asked)).toEqual({ year: 2026, month: 11, dayOfMonth: 25 }));
});
