// Look ahead: against waits worked out without chance, the recall echo, and the Poisson and binomial distributions.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

type Ranges = {
  readonly mean: readonly number[];
  readonly low95: readonly number[];
  readonly high95: readonly number[];
};
type Looked = {
  readonly recovers: boolean;
  readonly says: string;
  readonly chanceOfTarget: number;
  readonly placesNeeded: number | null;
  readonly placesPerWeek: number;
  readonly demand: Ranges;
  readonly waitWeeks: Ranges;
  readonly whatIfs: readonly Looked[];
};

const folder = ownFolder();
let files = 0;
const file = (content: unknown): string => fileIn(folder, `years-${(files += 1)}.json`, JSON.stringify(content));
const ahead = (content: unknown, ...options: string[]) => jsonOf<Looked>(['look-ahead', file(content), ...options]);

const none = { perWeek: 0, lagWeeks: 0 };
const nobody = {
  waiting: [0],
  due: [] as unknown[],
  referrals: none,
  season: [1, 1, 1, 1],
  leavers: none,
  pausesEnding: [],
  startsAgain: 0,
  doses: 3,
  intervalWeeks: 52,
  pauseWeeks: 104,
  returns: [0.7, 0.8],
  diesAfterFirst: 0,
  diesLater: 0,
};
const years = (demand: object, placesPerWeek: number, more: object = {}) => ({
  unit: 'Thornbeck',
  demand: { ...nobody, ...demand },
  offer: { placesPerWeek, bloods: { drawn: 'to fit the place', validWeeks: 12 } },
  target: { weeks: 4, probability: 0.9 },
  ...more,
});

describe('looking ahead by command', () => {
  // Source: the worked example of wait growth (120 waiting, 24 a week): 26 places 2.6 weeks after 26, 24 places 5.0, 19.5 places 12.2.
  const steady = { waiting: [120], due: Array.from({ length: 26 }, (_, week) => ({ week, dose: 1, people: 24 })) };
  it.each([
    [26, 2.6, true],
    [24, 5, false],
    [19.5, 12.2, false],
  ])('with %d places a week the wait is %d weeks after half a year', async (places, wait, recovers) => {
    const found = await ahead(years(steady, places), '--weeks', '26', '--runs', '2');
    expect(Math.abs((found.waitWeeks.mean[25] ?? 0) - wait)).toBeLessThan(0.1);
    expect(found.recovers).toBe(recovers);
    expect(found.says.includes('never recovers')).toBe(!recovers);
    expect(found.code).toBe(1);
  });

  // Source: the worked example of the recall echo (returns .70 and .80: 56 in 100 have the third dose); binomial error.
  it('brings a burst of starts back one and two years later', async () => {
    const runs = 40;
    const burst = { due: [{ week: 10, dose: 1, people: 1_000 }] };
    const { demand } = await ahead(years(burst, 2_000), '--runs', String(runs));
    expect(demand.mean.flatMap((people, week) => (people > 0 ? [week] : []))).toEqual([10, 62, 114]);
    for (const [week, share] of [
      [62, 0.7],
      [114, 0.56],
    ] as const)
      expect(Math.abs((demand.mean[week] ?? 0) / 1_000 - share)).toBeLessThan(
        3 * Math.sqrt((share * (1 - share)) / 1_000 / runs),
      );
  });

  // Source: tables of the Poisson distribution with mean 9: 95 of 100 lie from 4 to 15; R qpois(c(.025, .975), 9), from memory.
  it('has as many referred in a week as the Poisson distribution says', async () => {
    const runs = 2_000;
    const { demand } = await ahead(
      years({ referrals: { perWeek: 9, lagWeeks: 2 } }, 40),
      '--weeks',
      '30',
      '--runs',
      String(runs),
    );
    const weeks = demand.mean.slice(2);
    const standardError = Math.sqrt(9 / (runs * weeks.length));
    expect(demand.mean.slice(0, 2)).toEqual([0, 0]);
    expect(Math.abs(weeks.reduce((sum, one) => sum + one, 0) / weeks.length - 9)).toBeLessThan(3 * standardError);
    for (let week = 2; week < 30; week += 1) {
      expect(Math.abs((demand.low95[week] ?? 0) - 4)).toBeLessThanOrEqual(1);
      expect(Math.abs((demand.high95[week] ?? 0) - 15)).toBeLessThanOrEqual(1);
    }
  });

  it('tells the places that keep to the wait, and what would be if', async () => {
    const demand = { referrals: { perWeek: 9, lagWeeks: 2 } };
    const whatIfs = [
      { name: 'more come back', demand: { returns: [0.9, 0.9] } },
      { name: 'longer visits', offer: { sessions: { perWeek: 3, nurseMinutes: 480, nurseMinutesPerVisit: 55 } } },
    ];
    const found = await ahead(years(demand, 15, { whatIfs }), '--runs', '60');
    expect(found.code).toBe(1);
    const needed = found.placesNeeded ?? 0;
    // On average 9 x (1 + 0.7 + 0.56) a week are asked for in the third year.
    expect(Math.abs(needed - 9 * 2.26)).toBeLessThan(3);
    expect((await ahead(years(demand, needed), '--runs', '60')).code).toBe(0);
    expect((await ahead(years(demand, needed - 1), '--runs', '60')).code).toBe(1);
    expect(found.whatIfs[0]?.placesNeeded).toBeGreaterThan(needed);
    expect(found.whatIfs[1]?.placesPerWeek).toBe(24);
  });

  it('reads as sentences, the same from the same seed, as the guide shows it', async () => {
    const guide = readFileSync(new URL('../../../docs/guide/planning.md', import.meta.url), 'utf8');
    const [, example = ''] = /```json\n(\{\s*"unit"[^]*?)```/.exec(guide) ?? [];
    const path = file(JSON.parse(example));
    const one = await twelvemonth(['look-ahead', path, '--runs', '50']);
    expect(one.out).toMatch(/Thornbeck: 156 weeks ahead, 50 runs, seed 1\./);
    expect(one.out).toMatch(/Places a week that keep to it: \d+/);
    expect(one.out).toContain('what if');
    expect((await twelvemonth(['look-ahead', path, '--runs', '50'])).out).toBe(one.out);
    expect((await twelvemonth(['look-ahead', path, '--runs', '50', '--seed', '2'])).out).not.toBe(one.out);
  });

  it.each([
    [
      'a season that is no year',
      years({ season: [1, 1, 1, 2] }, 9),
      'demand.season: the four must add up to 4; they add up to 5.',
    ],
    [
      'a dose whose return nobody knows',
      years({ returns: [0.7] }, 9),
      'demand.returns: has 1 shares: write one for each dose that another follows, 2.',
    ],
    ['a rate left out', years({ diesLater: undefined }, 9), 'demand.diesLater: is missing: write a number.'],
    ['no places', years({}, 0), 'offer.placesPerWeek: must be more than 0.'],
    [
      'a dose too many',
      years({ due: [{ week: 1, dose: 4, people: 1 }] }, 9),
      'demand.due.0.dose: must be at most doses, 3.',
    ],
    [
      'a what-if of another name',
      years({}, 9, { whatIfs: [{ name: 'x', demand: { retruns: [1, 1] } }] }),
      'whatIfs.0.demand.retruns: is not a field here',
    ],
  ])('%s is refused with its field and what to write', async (_, content, says) => {
    const ran = await twelvemonth(['look-ahead', file(content)]);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.aside).toContain(says);
  });
});
