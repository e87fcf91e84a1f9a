/**
 * Every number of a trial against the fact sheet (clinical, section 5), which names publication and page; what is not in the
 * fact sheet names where it was read beside it. The numbers here are typed from there, not taken from the code under test.
 */
import { describe, expect, test } from 'vitest';
import {
  type Trial,
  afterAHipFracture,
  alsoTried,
  effectOn,
  hipsSparedBeside,
  injectionInWomen,
  oneDripInCareHomes,
  otherSchedules,
  rareHarms,
  reactionByDose,
  reactionCountedWidely,
  tabletsInWomen,
  threeMoreDoses,
  whatLowersIt,
  yearlyDripInMen,
  yearlyDripInWomen,
  yearlyDripOnSteroids,
} from '@twelvemonth/counselling';

type Row = readonly [
  outcome: Parameters<typeof effectOn>[1],
  treated: number | undefined,
  untreated: number | undefined,
  ratio?: readonly (string | number)[],
];
const found = (trial: Trial, [outcome]: Row): Row => {
  const effect = effectOn(trial, outcome);
  const relative = effect?.relative;
  const interval = relative?.interval;
  const range = interval === undefined || typeof interval === 'string' ? [] : [interval.from, interval.to];
  const both = [effect?.treated?.percent, effect?.untreated?.percent] as const;
  return relative === undefined ? [outcome, ...both] : [outcome, ...both, [relative.measure, relative.value, ...range]];
};

const agrees = (trial: Trial, what: string, rows: readonly Row[]): void =>
  test.each(rows.map((row) => ({ outcome: row[0], row })))(`${what}: $outcome`, ({ row }) =>
    expect(found(trial, row)).toEqual(row),
  );

// Fact sheet 5a: Black 2007 NEJM 356:1809; the rates of the last three rows are from memory there too.
agrees(yearlyDripInWomen, 'women, three yearly doses', [
  ['spine fracture seen on X-ray', 3.3, 10.9, ['risk ratio', 0.3, 0.24, 0.38]],
  ['hip fracture', 1.4, 2.5, ['hazard ratio', 0.59, 0.42, 0.83]],
  ['fracture outside the spine', 8.0, 10.7, ['hazard ratio', 0.75, 0.64, 0.87]],
  ['any clinical fracture', 8.4, 12.8, ['hazard ratio', 0.67, 0.58, 0.77]],
  ['spine fracture that was felt', 0.5, 2.6, ['hazard ratio', 0.23, 0.14, 0.37]],
  ['death', 3.4, 2.9],
]);

test('women, three yearly doses: whom and how long (fact sheet 5a)', () => {
  expect(yearlyDripInWomen).toMatchObject({ people: { treated: 3889, untreated: 3876 }, years: 3 });
  expect(effectOn(yearlyDripInWomen, 'spine fracture seen on X-ray')).toMatchObject({
    treated: { events: 92, people: 2822 },
    untreated: { events: 310, people: 2853 },
  });
});

// Fact sheet 5b: Lyles 2007 NEJM 357:1799; hazard ratios: conference abstract of the trial (read): 0.65 (0.50-0.84), 0.54
// (0.32-0.92), 0.73 (0.55-0.98), 0.70 (0.41-1.19), 0.72 (0.56-0.93).
agrees(afterAHipFracture, 'after a broken hip', [
  ['any clinical fracture', 8.6, 13.9, ['hazard ratio', 0.65, 0.5, 0.84]],
  ['spine fracture that was felt', 1.7, 3.8, ['hazard ratio', 0.54, 0.32, 0.92]],
  ['fracture outside the spine', 7.6, 10.7, ['hazard ratio', 0.73, 0.55, 0.98]],
  ['hip fracture', 2.0, 3.5, ['hazard ratio', 0.7, 0.41, 1.19]],
  ['death', 9.6, 13.3, ['hazard ratio', 0.72, 0.56, 0.93]],
]);

test('after a broken hip: no clear difference for a second hip fracture (fact sheet 5b: not significant)', () => {
  expect(effectOn(afterAHipFracture, 'hip fracture')?.found).toBe('no clear difference');
  expect(afterAHipFracture.people).toEqual({ treated: 1065, untreated: 1062 });
});

// Boonen 2012 NEJM 367:1714, abstract read.
agrees(yearlyDripInMen, 'men', [
  ['spine fracture seen on X-ray', 1.6, 4.9, ['risk ratio', 0.33, 0.16, 0.7]],
  ['death', 2.6, 2.9],
]);

test('men: nothing is claimed for the hip or for any fracture: the abstract calls the numbers too small', () => {
  expect(effectOn(yearlyDripInMen, 'hip fracture')).toBeUndefined();
  expect(effectOn(yearlyDripInMen, 'any clinical fracture')).toBeUndefined();
  expect(yearlyDripInMen.people.treated + yearlyDripInMen.people.untreated).toBe(1199);
});

test('care homes: 20 and 16 per cent, no difference, 181 women (Greenspan 2015 JAMA Intern Med 175:913, abstract read)', () => {
  expect(found(oneDripInCareHomes, ['any clinical fracture', 20, 16])).toEqual(['any clinical fracture', 20, 16]);
  expect(oneDripInCareHomes.people.treated + oneDripInCareHomes.people.untreated).toBe(181);
});

test('steroids: 416 and 417 people, one year, no fracture number (Reid 2009 Lancet 373:1253, abstract read)', () => {
  expect(yearlyDripOnSteroids).toMatchObject({ people: { treated: 416, untreated: 417 }, years: 1, effects: [] });
});

test('three more doses: 616 and 617, odds ratio 0.51, 3.0 and 6.2 per cent (fact sheet 5e: Black 2012 JBMR 27:243)', () => {
  const row: Row = ['spine fracture seen on X-ray', 3.0, 6.2, ['odds ratio', 0.51]];
  expect(found(threeMoreDoses, row)).toEqual(row);
  expect(threeMoreDoses.people).toEqual({ treated: 616, untreated: 617 });
});

// Black 1996 Lancet 348:1535, abstract read; the hip's rates from memory.
agrees(tabletsInWomen, 'tablets', [
  ['any clinical fracture', 13.6, 18.2, ['hazard ratio', 0.72, 0.58, 0.9]],
  ['hip fracture', 1.1, 2.2, ['hazard ratio', 0.49, 0.23, 0.99]],
  ['spine fracture seen on X-ray', 8.0, 15.0, ['risk ratio', 0.53, 0.41, 0.68]],
]);

// Cummings 2009 NEJM 361:756 and McCloskey 2012 JBMR 27:1480, from memory; spine and outside the spine: PMC3415619, read.
agrees(injectionInWomen, 'injection', [
  ['hip fracture', 0.7, 1.2, ['hazard ratio', 0.6, 0.37, 0.97]],
  ['any clinical fracture', undefined, undefined, ['hazard ratio', 0.68, 0.58, 0.8]],
  ['spine fracture seen on X-ray', 2.3, 7.2, ['risk ratio', 0.32, 0.26, 0.41]],
  ['fracture outside the spine', undefined, undefined, ['hazard ratio', 0.8, 0.67, 0.95]],
]);

// Fact sheet 5e: Reid 2018 NEJM 379:2407; Bolland 2025.
test('other schedules: 122 and 190 of 1000 women; 6.3 and 11.1 per cent', () => {
  const [thin, early] = otherSchedules as [Trial, Trial];
  const first: Row = ['any clinical fracture', 12.2, 19, ['hazard ratio', 0.63, 0.5, 0.79]];
  const second: Row = ['spine fracture seen on X-ray', 6.3, 11.1, ['risk ratio', 0.56, 0.34, 0.92]];
  expect([found(thin, first), found(early, second)]).toEqual([first, second]);
});

describe('the reaction after a dose (fact sheet 5c)', () => {
  test('by dose, and without the medicine: Black 2007', () => {
    expect(reactionByDose.map(({ dose, treated, untreated }) => [dose, treated.percent, untreated.percent])).toEqual([
      [1, 31.6, 6.2],
      [2, 6.6, 2.1],
      [3, 2.8, 1.1],
    ]);
  });
  test('counted more widely: Reid 2010; product text 4.8', () => {
    const { firstDose, productText } = reactionCountedWidely;
    expect([firstDose.treated.percent, firstDose.untreated.percent]).toEqual([42.4, 11.7]);
    expect(productText.map(({ percent }) => percent)).toEqual([44.7, 16.7, 10.2]);
  });
  test('what lowers it: Wark 2012; ibuprofen as well, with the caution; fluvastatin not', () => {
    expect(whatLowersIt.map(({ withIt, withoutIt }) => [withIt.percent, withoutIt.percent])).toEqual([
      [46.3, 75.9],
      [37.3, 63.5],
    ]);
    expect(alsoTried.map(({ says }) => says).join(' ')).toMatch(/36\.8 and 48\.5.*hard on the kidneys.*did not help/);
  });
});

describe('rare harms, of 10,000 (fact sheet 4b to 4d, 5d)', () => {
  const of = (what: string) => rareHarms.find((harm) => harm.what.includes(what));
  test('heart rhythm: 50 of 3862 and 20 of 3852 (Black 2007)', () => {
    // 50 / 3862 = 1.2947 %, 20 / 3852 = 0.5192 %.
    expect([of('heart')?.treated.point, of('heart')?.untreated?.point]).toEqual([129, 52]);
  });
  test('eye: 1.1 % (0.5 to 2.1) and none (Patel 2013)', () => {
    expect([of('eye')?.treated, of('eye')?.untreated?.point]).toEqual([
      { point: 110, range: { from: 50, to: 210 } },
      0,
    ]);
  });
  test('kidney blood test: 1.2 to 1.3 and 0.4 % (Black 2007), the higher one told', () => {
    expect([of('kidney')?.treated.point, of('kidney')?.untreated?.point]).toEqual([130, 40]);
  });
  test('jaw: 1 to 10 (SDCEP 2017)', () => {
    expect(of('jaw')?.treated).toEqual({ point: undefined, range: { from: 1, to: 10 } });
  });
  test('thigh bone: 2 to 8, beside 91 to 149 broken hips spared (Black 2020 NEJM 383:743)', () => {
    expect(of('thigh')?.treated.range).toEqual({ from: 2, to: 8 });
    expect(hipsSparedBeside.range).toEqual({ from: 91, to: 149 });
  });
});
