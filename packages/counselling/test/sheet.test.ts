/** The sheet of one person: which trial speaks for them, their numbers both ways, and what is never told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day } from '@twelvemonth/clinical';
import {
  type Baseline,
  type PersonFacts,
  choices,
  countsOf,
  fitOf,
  howCommon,
  oneDripInCareHomes,
  sheetOf,
  treatments,
  yearlyDripInMen,
  yearlyDripInWomen,
} from '@twelvemonth/counselling';

const today = day('2026-11-25');
const woman: PersonFacts = {
  today,
  sex: 'female',
  ageYears: 74,
  newestFracture: undefined,
  hip: undefined,
  onSteroid: false,
  hadBoneTablets: false,
  dosesGiven: 0,
  dosesInARow: 0,
  firstDoseSinceHip: undefined,
};
const risk = (more: Partial<Baseline> = {}): Baseline => ({
  of: 'hip fracture',
  percent: 8,
  years: 10,
  instrument: 'sheet 3',
  workedOutOn: day('2026-11-20'),
  range: undefined,
  veryFrail: false,
  ...more,
});
const repaired = (daysAgo: number) => ({ on: addDays(today, -daysAgo), repaired: true });
const underDrip = (person: PersonFacts, ...baselines: Baseline[]) => {
  const under = sheetOf(person, baselines).risks[0]?.under.find(({ told, ...one }) =>
    told && 'benefit' in one ? one.benefit.treatment === 'yearly drip' : false,
  );
  return under?.told === true ? under : undefined;
};

describe('worked by hand', () => {
  // 8 % in ten years, told for three: ln 0.92 = -0.0833816; x 0.3 = -0.0250145; 1 - e^ = 2.470 %. Hazard ratio 0.59 (0.42 to
  // 0.83), Black 2007: left 1.465 %; spared 1.005 % (0.416 to 1.425 %). Of 1000: 25, 15, 10 fewer, 4 to 14.
  test('a woman of 74 with a hip risk of 8 % in ten years', () => {
    const told = underDrip(woman, risk());
    expect(told?.benefit.estimate.without).toBeCloseTo(0.024704, 5);
    expect(told?.benefit.estimate.withTreatment).toBeCloseTo(0.01465, 5);
    expect(told?.counts).toEqual({
      without: { have: 25, haveNot: 975 },
      withTreatment: { have: 15, haveNot: 985 },
      spared: 10,
      sparedRange: { from: 4, to: 14 },
    });
    const sheet = sheetOf(woman, [risk()]);
    expect([sheet.lead, sheet.risks[0]?.says, ...(told?.sentences ?? [])]).toEqual([
      'Of 1,000 people like you, over 3 years:',
      'Without treatment, 25 break a hip and 975 do not.',
      'With the yearly drip, 15 break a hip and 985 do not.',
      'That is 10 fewer.',
      'The trial leaves room for doubt: it may be 4 to 14 fewer.',
    ]);
  });
  // Lyles 2007: 13.9 % in two years, hazard ratio 0.65 (0.50 to 0.84). By hand: ln 0.861 = -0.1496608; x 0.65 = -0.0972795;
  // left 9.270 %; spared 4.630 % (2.083 to 6.690 %). The trial printed 8.6 %: its curves lie further apart than its ratio says.
  test("after a broken hip, with the trial's own risk: within one in a hundred of what the trial saw", () => {
    const person = { ...woman, hip: repaired(40), newestFracture: addDays(today, -40) };
    const told = underDrip(person, risk({ of: 'any fracture', percent: 13.9, years: 2 }));
    expect(told?.benefit.estimate.withTreatment).toBeCloseTo(0.0927, 4);
    expect(Math.abs((told?.benefit.estimate.withTreatment ?? 0) - 0.086)).toBeLessThan(0.01);
    expect(sheetOf(person, [risk({ of: 'any fracture', percent: 13.9, years: 2 })]).outOf).toBe(100);
    expect(told?.counts).toMatchObject({ without: { have: 14 }, spared: 5, sparedRange: { from: 2, to: 7 } });
  });
  test('a second hip: the trial cannot tell, and it says from how many more to how many fewer', () => {
    const person = { ...woman, hip: repaired(40), newestFracture: addDays(today, -40) };
    const told = underDrip(person, risk({ percent: 3.5, years: 2 }));
    expect(told?.counts.sparedRange.from).toBeLessThan(0);
    expect(told?.sentences.at(-1)).toMatch(/from \d+ more to \d+ fewer\. It cannot tell for sure/);
  });
});

describe('which trial speaks', () => {
  test.each<[string, Partial<PersonFacts>, boolean, boolean, string]>([
    ['a woman with weak bones', {}, false, true, 'a large trial of the yearly drip in women'],
    ['a hip repaired 90 days ago', { hip: repaired(90) }, false, true, 'after a broken hip'],
    ['a man, hip repaired 30 days ago', { sex: 'male', hip: repaired(30) }, false, true, 'after a broken hip'],
    ['a hip repaired 91 days ago, no dose', { hip: repaired(91) }, false, true, 'drip in women'],
    ['a hip not repaired', { hip: { on: addDays(today, -30), repaired: false } }, false, false, 'had been repaired'],
    ['a man', { sex: 'male' }, false, false, 'trial in men'],
    ['someone on a steroid', { onSteroid: true }, false, false, 'steroid'],
    ['someone very frail', {}, true, false, 'left out'],
    ['someone very frail after a broken hip', { hip: repaired(30) }, true, false, 'left out'],
    ['three doses given', { dosesGiven: 3, dosesInARow: 3 }, false, false, 'three doses'],
    ['sex not written down', { sex: undefined }, false, false, 'not written down'],
  ])('%s', (_, more, frail, fits, says) => {
    const fit = fitOf('yearly drip', { ...woman, ...more }, frail);
    expect([fit.fits, fit.says]).toEqual([fits, expect.stringContaining(says)]);
  });
  test('a first dose within 90 days of the repair: the second and the next two years belong to that trial', () => {
    const hip = { on: day('2025-09-01'), repaired: true };
    expect(
      fitOf('yearly drip', { ...woman, hip, dosesGiven: 1, firstDoseSinceHip: day('2025-11-20') }, false).says,
    ).toContain('broken hip');
    expect(
      fitOf('yearly drip', { ...woman, hip, dosesGiven: 1, firstDoseSinceHip: day('2026-01-20') }, false).says,
    ).toContain('in women');
  });
  test.each<Partial<PersonFacts>>([
    { sex: 'male' },
    { onSteroid: true },
    { hip: repaired(30) },
    { dosesGiven: 3, dosesInARow: 3 },
  ])('no trial of tablets or injection is borrowed for %j', (more) => {
    for (const one of ['weekly tablets', 'injection every six months'] as const)
      expect(fitOf(one, { ...woman, ...more }, false)).toMatchObject({ trial: undefined, fits: false });
  });
  test('a man has no number of his own, and sees what the trial in men found', () => {
    const sheet = sheetOf({ ...woman, sex: 'male' }, [risk()]);
    expect([sheet.risks, sheet.years]).toEqual([[], undefined]);
    expect(sheet.noNumbers).toEqual([expect.stringContaining('too small to tell about hips')]);
    expect(sheet.found?.trial).toBe(yearlyDripInMen);
  });
  test('in a care home the small trial is told as it is: not apart', () => {
    const sheet = sheetOf(woman, [risk({ veryFrail: true })]);
    expect(sheet.found?.trial).toBe(oneDripInCareHomes);
    expect(sheet.found?.effects[0]?.says).toMatch(/could not tell these apart/);
    expect(sheet.risks).toEqual([]);
  });
});

describe('what is refused rather than guessed', () => {
  test("without a risk of one's own: no number of benefit, not even a trial's", () => {
    const sheet = sheetOf(woman, []);
    expect([sheet.risks, sheet.found, sheet.lead, sheet.years]).toEqual([[], undefined, undefined, undefined]);
    expect(sheet.noNumbers).toEqual([expect.stringContaining('not in the notes')]);
  });
  test('a risk older than the newest fracture is worked out again first', () => {
    const sheet = sheetOf({ ...woman, newestFracture: day('2026-11-21') }, [risk()]);
    expect(sheet.risks).toEqual([]);
    expect(sheet.noNumbers[0]).toContain('work it out again');
    expect(sheetOf({ ...woman, newestFracture: day('2026-11-20') }, [risk()]).risks).toHaveLength(1);
  });
  test('a risk dated ahead does not count', () => {
    expect(sheetOf(woman, [risk({ workedOutOn: addDays(today, 1) })]).risks).toEqual([]);
  });
  test('a risk beyond what any trial can speak for has no number', () => {
    const sheet = sheetOf(woman, [risk({ percent: 70, years: 3 })]);
    expect(sheet.risks).toEqual([]);
    expect(sheet.noNumbers).toEqual([expect.stringContaining('so high that no trial can tell')]);
  });
  test('the newest of each kind is used', () => {
    const sheet = sheetOf(woman, [risk({ percent: 4 }), risk({ percent: 9, workedOutOn: day('2026-11-24') })]);
    expect(sheet.risks.map(({ baseline }) => baseline.percent)).toEqual([9]);
  });
});

describe('where a sum goes further than its trial, it says so', () => {
  const stretched = (person: Partial<PersonFacts>, baseline: Partial<Baseline>) =>
    (underDrip({ ...woman, ...person }, risk(baseline))?.benefit.stretched ?? []).join(' ');
  test.each<[Partial<PersonFacts>, Partial<Baseline>, RegExp]>([
    [{}, { of: 'major fracture' }, /counted any break that was felt/],
    [{}, {}, /worked out for 10 years\. We spread it evenly/],
    [{}, { years: 1, percent: 1 }, /for one year only\. We stretched it to 3/],
    [{ ageYears: 64 }, {}, /from 65 to 89 years\. You are 64/],
    [{ ageYears: 90 }, {}, /You are 90/],
    [{ ageYears: undefined }, {}, /age is not known/],
    [{}, { percent: 30 }, /was 2\.5 in 100\. Yours is higher, at 10\.1/],
    [{ dosesGiven: 1 }, {}, /had a dose already/],
  ])('%j %j', (person, baseline, says) => expect(stretched(person, baseline)).toMatch(says));
  test("at the trial's own risk, time and age nothing is stretched", () => {
    expect(stretched({}, { percent: 2.5, years: 3 })).toBe('');
  });
});

describe('for every risk and every person', () => {
  const person = fc.record({
    today: fc.constant(today),
    sex: fc.constantFrom('female' as const, 'female' as const, 'female' as const, 'male' as const, undefined),
    ageYears: fc.option(fc.integer({ min: 40, max: 100 }), { nil: undefined }),
    newestFracture: fc.option(fc.constant(day('2026-10-01')), { nil: undefined }),
    hip: fc.option(fc.record({ on: fc.nat({ max: 900 }).map((ago) => addDays(today, -ago)), repaired: fc.boolean() }), {
      nil: undefined,
    }),
    onSteroid: fc.constantFrom(false, false, false, true),
    hadBoneTablets: fc.boolean(),
    dosesGiven: fc.nat({ max: 4 }),
    dosesInARow: fc.nat({ max: 4 }),
    firstDoseSinceHip: fc.option(fc.constant(day('2025-11-20')), { nil: undefined }),
  });
  const percent = fc.double({ min: 0.01, max: 99.9, noNaN: true });
  const baseline: fc.Arbitrary<Baseline> = fc
    .record({
      of: fc.constantFrom('hip fracture' as const, 'major fracture' as const, 'any fracture' as const),
      three: fc.tuple(percent, percent, percent).map((all) => all.toSorted((a, b) => a - b)),
      ranged: fc.boolean(),
      years: fc.integer({ min: 1, max: 10 }),
      veryFrail: fc.constantFrom(false, false, false, true),
    })
    .map(({ three: [low = 1, middle = 1, high = 1], ranged, ...rest }) => ({
      ...rest,
      percent: middle,
      range: ranged ? { lowPercent: low, highPercent: high } : undefined,
      instrument: 'x',
      workedOutOn: day('2026-11-20'),
    }));
  const numberInOf = (value: number, of: number) => Number.isInteger(value) && value >= 0 && value <= of;

  test('have and have not add up; the range holds the point; every choice is told in the same number and time', () => {
    let told = 0;
    fc.assert(
      fc.property(person, fc.array(baseline, { minLength: 1, maxLength: 3 }), (someone, baselines) => {
        const sheet = sheetOf(someone, baselines);
        for (const one of sheet.risks) {
          expect(one.without.have + one.without.haveNot).toBe(sheet.outOf);
          expect(one.under).toHaveLength(treatments.length);
          const untold = one.under.flatMap((under) => (under.told ? [] : [under.says.length]));
          expect(Math.min(11, ...untold)).toBeGreaterThan(10);
          for (const under of one.under.filter((each) => each.told)) {
            told += 1;
            const { counts, benefit } = under;
            expect(benefit.years).toBe(sheet.years);
            expect(counts.without).toEqual(one.without);
            for (const both of [counts.without, counts.withTreatment]) {
              expect(both.have + both.haveNot).toBe(sheet.outOf);
              expect([numberInOf(both.have, sheet.outOf), numberInOf(both.haveNot, sheet.outOf)]).toEqual([true, true]);
            }
            expect(counts.without.have - counts.withTreatment.have).toBe(counts.spared);
            expect(counts.sparedRange.from).toBeLessThanOrEqual(counts.spared);
            expect(counts.sparedRange.to).toBeGreaterThanOrEqual(counts.spared);
            const { sparedRange, spared } = benefit.estimate;
            expect(sparedRange.from - 1e-12).toBeLessThanOrEqual(spared);
            expect(sparedRange.to + 1e-12).toBeGreaterThanOrEqual(spared);
            expect(under.sentences.join(' ')).not.toMatch(/%|per cent|half|times|NaN|undefined/);
          }
        }
      }),
      { numRuns: 600, seed: 26 },
    );
    expect(told).toBeGreaterThan(100);
  });
  test('a higher risk is never spared fewer people', () => {
    fc.assert(
      fc.property(percent, percent, fc.integer({ min: 1, max: 10 }), (one, other, years) => {
        const [low, high] = [one, other].toSorted((a, b) => a - b) as [number, number];
        const spared = (is: number) => {
          const estimate = underDrip(woman, risk({ percent: is, years }))?.benefit.estimate;
          return estimate === undefined ? undefined : countsOf(estimate, 1000).spared;
        };
        const [less, more] = [spared(low), spared(high)];
        // What is too high to be told stays so when it rises.
        return less === undefined ? more === undefined : more === undefined || more >= less;
      }),
      { numRuns: 400, seed: 27 },
    );
  });
  test('no risk, no number', () => {
    fc.assert(
      fc.property(person, (someone) => {
        const { risks, found, years } = sheetOf(someone, []);
        expect([risks, found, years]).toEqual([[], undefined, undefined]);
      }),
    );
  });
});

describe('the rest of the sheet', () => {
  test('the reaction is told for three doses, both ways, in the number of the sheet', () => {
    const sheet = sheetOf(woman, []);
    expect(sheet.reactions.map(({ says }) => says)).toEqual([
      'Dose 1: 32 feel ill and 68 do not. With a drip without medicine, 6 did.',
      'Dose 2: 7 feel ill and 93 do not. With a drip without medicine, 2 did.',
      'Dose 3: 3 feel ill and 97 do not. With a drip without medicine, 1 did.',
    ]);
    expect(sheetOf(woman, [risk()]).reactions[0]?.treated).toEqual({ have: 316, haveNot: 684 });
  });
  test('"no treatment" and "not now" are choices like the others, and not now is called a good outcome', () => {
    expect(choices.map(({ choice }) => choice)).toEqual([...treatments, 'no treatment', 'not now']);
    expect(choices.at(-1)?.says.join(' ')).toContain('good outcome');
  });
  // European Commission guideline on product texts 2009 (from memory): 1/10, 1/100, 1/1000, 1/10,000.
  test.each([
    [1000, 'very common'],
    [999, 'common'],
    [100, 'common'],
    [99, 'uncommon'],
    [10, 'uncommon'],
    [9, 'rare'],
    [1, 'rare'],
    [0, 'very rare'],
  ])('%i of 10,000 is %s', (point, words) => expect(howCommon({ point, range: undefined })).toBe(words));
  test('the women of the large trial are told as the trial told them', () => {
    expect(sheetOf(woman, [risk()]).found?.trial).toBe(yearlyDripInWomen);
    expect(sheetOf(woman, [risk()]).found?.effects[0]?.says).toBe(
      'Without the drip, 109 have a spine break seen on X-ray and 891 do not. With the yearly drip, 33 have a spine break seen on X-ray and 967 do not.',
    );
  });
});
