import { describe, expect, it } from 'vitest';
import {
  type DemandInputs,
  type Offer,
  chanceOfWait,
  completing,
  growthPerWeek,
  infusionsPerYear,
  lookAhead,
  placesFrom,
  placesNeeded,
  play,
  tooOldOnTheDay,
  trendAtEndSays,
  trendSays,
  waitAfter,
} from '../src/index.ts';

const none = { perWeek: 0, lagWeeks: 0 };

const unit: DemandInputs = {
  waiting: [30, 10, 5],
  due: Array.from({ length: 52 }, (_, week) => ({ week, dose: 2, people: 3 })),
  referrals: { perWeek: 4, lagWeeks: 4 },
  season: [1.2, 1, 0.8, 1],
  leavers: { perWeek: 0.5, lagWeeks: 26 },
  pausesEnding: [{ week: 30, people: 10 }],
  startsAgain: 0.5,
  doses: 3,
  intervalWeeks: 52,
  pauseWeeks: 104,
  returns: [0.7, 0.8],
  diesAfterFirst: 0.1,
  diesLater: 0.05,
};
const offer: Offer = { placesPerWeek: 10, bloods: { drawn: 'to fit the place', validWeeks: 12 } };
const options = { weeks: 156, runs: 200, seed: 3 };

describe('a wait without chance', () => {
  // Source: the worked example of wait growth (backlog 120, demand 24 a week).
  it.each([
    [26, 0, 4.6],
    [26, 26, 2.6],
    [24, 13, 5],
    [24, 26, 5],
    [19.5, 13, 9.2],
    [19.5, 26, 12.2],
  ])('with %d places a week is after %d weeks %d weeks long', (placesPerWeek, weeks, wait) => {
    expect(waitAfter({ waiting: 120, demandPerWeek: 24, placesPerWeek }, weeks)).toBeCloseTo(wait, 0.9);
  });

  it('grows by 0.23 weeks a week with a quarter of the places gone, and is said never to recover', () => {
    const level = { waiting: 120, demandPerWeek: 24, placesPerWeek: 19.5 };
    expect(growthPerWeek(level)).toBeCloseTo(0.23, 2);
    expect(trendSays(level)).toBe(
      'More people come than there are places for: the wait grows by 0.23 weeks every week and never recovers.',
    );
    expect(trendSays({ ...level, placesPerWeek: 24 })).toContain('never recovers');
    expect(trendSays({ ...level, placesPerWeek: 26 })).toBe('The wait shrinks; nobody waits after 60 weeks.');
  });

  it('at the end of what is looked at counts on from that end, and a wait that has grown is not said to shrink', () => {
    // The same worked example as the state after three years: 120 people at 26 places are 4.6 weeks, gone in 60.
    const level = { waiting: 120, demandPerWeek: 24, placesPerWeek: 26 };
    expect(trendAtEndSays(level, 60)).toBe(
      'The wait grows in the last year looked at and is 4.6 weeks at its end. That year as a whole has places enough: if the next were like it, nobody would wait 60 weeks after the end.',
    );
    expect(trendAtEndSays(level, 200)).toBe(
      'The wait shrinks in the last year looked at and is 4.6 weeks at its end; if it goes on so, nobody would wait 60 weeks after the end.',
    );
    expect(trendAtEndSays({ ...level, placesPerWeek: 19.5 }, 200)).toContain('never recovers');
    expect(trendAtEndSays({ ...level, waiting: 0 }, 60)).toContain('nobody waits.');
  });

  it('is what the many futures come to when chance has little room', () => {
    const still: DemandInputs = {
      ...unit,
      waiting: [120],
      due: Array.from({ length: 26 }, (_, week) => ({ week, dose: 1, people: 24 })),
      referrals: none,
      leavers: none,
      pausesEnding: [],
    };
    const { wait } = lookAhead(still, { ...offer, placesPerWeek: 19.5 }, { weeks: 26, runs: 3, seed: 1 });
    expect(wait.mean[25]).toBeCloseTo(12.2, 0);
    expect(wait.low95[25]).toBe(wait.high95[25]);
  });
});

describe('recall', () => {
  // Source: the worked example of the recall echo (150 starts a year). Its first row, 385 infusions at .85 and .90, does not
  // follow from its own rates (they give 392, and the 77 in 100 it states); the other two do.
  it.each([
    [[0.85, 0.9], 392, 77],
    [[0.7, 0.8], 339, 56],
    [[0.36, 0.7], 242, 25],
  ])('of %j makes %d infusions a year, and %d in 100 complete the course', (returns, infusions, percent) => {
    expect(Math.round(infusionsPerYear(150, returns))).toBe(infusions);
    expect(Math.round(completing(returns) * 100)).toBe(percent);
  });

  it('raises demand by about 60 % from the worst to the best: places and persistence are one plan', () => {
    const more = infusionsPerYear(150, [0.85, 0.9]) / infusionsPerYear(150, [0.36, 0.7]);
    expect(more).toBeGreaterThan(1.55);
    expect(more).toBeLessThan(1.65);
  });

  it('brings a burst of starts back on the same weeks one and two years later', () => {
    const burst: DemandInputs = {
      ...unit,
      waiting: [],
      due: [{ week: 10, dose: 1, people: 1_000 }],
      referrals: none,
      leavers: none,
      pausesEnding: [],
      diesAfterFirst: 0,
      diesLater: 0,
    };
    const { demand } = lookAhead(burst, { ...offer, placesPerWeek: 2_000 }, { ...options, runs: 20 });
    const weeks = demand.mean.flatMap((people, week) => (people > 0 ? [week] : []));
    expect(weeks).toEqual([10, 62, 114]);
    expect(demand.mean[62]! / 1_000).toBeCloseTo(0.7, 1);
    expect(demand.mean[114]! / 1_000).toBeCloseTo(0.56, 1);
  });
});

describe('bloods drawn at referral', () => {
  // Source: the worked table of waits (mean and deviation in weeks), validity and share too old on the day.
  it.each([
    [6, 3, 8, 0.25],
    [10, 4, 8, 0.69],
    [10, 4, 12, 0.31],
    [16, 5, 12, 0.78],
    [26, 6, 12, 0.99],
  ])('are, with a wait of %d ± %d weeks and %d weeks of validity, too old for %d', (wait, deviation, valid, share) => {
    // Whole percents in the source, some of them cut off rather than rounded.
    expect(Math.abs(tooOldOnTheDay(wait, deviation, valid) - share)).toBeLessThan(0.01);
  });

  it('cost places that bloods drawn to fit the place do not, and fewer when they hold for longer', () => {
    const slow = { ...unit, waiting: [80] };
    const away = (bloods: Offer['bloods']): number =>
      lookAhead(slow, { ...offer, bloods }, { ...options, runs: 50 }).turnedAway.mean.reduce((a, b) => a + b, 0);
    const eight = away({ drawn: 'at referral', validWeeks: 8 });
    const twelve = away({ drawn: 'at referral', validWeeks: 12 });
    expect(away({ drawn: 'to fit the place', validWeeks: 8 })).toBe(0);
    expect(twelve).toBeGreaterThan(0);
    expect(eight).toBeGreaterThan(twelve);
  });
});

describe('looking ahead', () => {
  it('gives the same answer from the same seed, and ranges that hold the mean', () => {
    const answer = lookAhead(unit, offer, options);
    expect(lookAhead(unit, offer, options)).toEqual(answer);
    expect(lookAhead(unit, offer, { ...options, seed: 4 })).not.toEqual(answer);
    const { demand } = answer;
    for (let week = 0; week < options.weeks; week += 1) {
      expect(demand.low95[week]).toBeLessThanOrEqual(demand.low80[week]!);
      expect(demand.low80[week]).toBeLessThanOrEqual(demand.high80[week]!);
      expect(demand.high80[week]).toBeLessThanOrEqual(demand.high95[week]!);
      expect(demand.mean[week]).toBeGreaterThanOrEqual(demand.low95[week]!);
      expect(demand.mean[week]).toBeLessThanOrEqual(demand.high95[week]!);
    }
  });

  it('loses and invents nobody: who fell due is seen, turned away or waits', () => {
    const future = play({ ...unit, doses: 1, startsAgain: 0 }, offer, 156, 1, 0);
    const asked = 45 + future.demand.reduce((a, b) => a + b, 0);
    expect(asked - future.waiting[155]!).toBeLessThanOrEqual(156 * 10);
    expect(future.waiting[155]).toBeGreaterThanOrEqual(0);
  });

  it('says that a wait never recovers when places are too few, and how many would do', () => {
    const few = { ...offer, placesPerWeek: 6 };
    const answer = lookAhead(unit, few, options);
    expect(answer.recovers).toBe(false);
    expect(answer.growing).toBeGreaterThan(0.95);
    expect(answer.says).toContain('never recovers');
    const target = { weeks: 4, probability: 0.9 };
    const needed = placesNeeded(unit, few, target, options);
    expect(needed).toBeGreaterThan(6);
    expect(chanceOfWait(unit, { ...few, placesPerWeek: needed ?? 0 }, 4, options)).toBeGreaterThanOrEqual(0.9);
    expect(chanceOfWait(unit, { ...few, placesPerWeek: (needed ?? 0) - 1 }, 4, options)).toBeLessThan(0.9);
    expect(lookAhead(unit, { ...few, placesPerWeek: needed ?? 0 }, options).recovers).toBe(true);
  });

  it('does not say so of a burst that is being worked off', () => {
    const burst: DemandInputs = {
      ...unit,
      waiting: [],
      due: Array.from({ length: 156 }, (_, week) => ({ week, dose: 1, people: week === 106 ? 208 : 8 })),
      referrals: none,
      leavers: none,
      pausesEnding: [],
      startsAgain: 0,
      returns: [0, 0],
    };
    // By hand: 8 come a week and 10 are seen, so 200 more in week 106 are about 102 at the end, 49 weeks on; 11.8 a week over that year.
    const answer = lookAhead(burst, offer, { weeks: 156, runs: 3, seed: 1 });
    expect(answer.demandPerWeekInLastYear).toBeGreaterThan(offer.placesPerWeek);
    expect(answer.says).toMatch(/but for half a year the wait has been falling; it is (9|10|11)\.\d weeks at its end/);
    expect(answer.recovers).toBe(true);
  });

  it('needs more places when more people come back', () => {
    const target = { weeks: 4, probability: 0.9 };
    const better = placesNeeded({ ...unit, returns: [0.8, 0.8] }, offer, target, options) ?? 0;
    expect(better).toBeGreaterThan(placesNeeded({ ...unit, returns: [0.5, 0.8] }, offer, target, options) ?? 0);
  });

  it('counts places from nurse minutes: visits of twice the infusion time are fewer', () => {
    expect(placesFrom(3, 480, 40)).toBe(36);
    expect(placesFrom(3, 480, 55)).toBe(24);
  });

  it('gives up when no number of places would do', () => {
    const target = { weeks: 0, probability: 1 };
    expect(placesNeeded(unit, { ...offer, placesPerWeek: 1 }, target, { ...options, runs: 2 }, 2)).toBeUndefined();
  });
});
