// Rehearse a planned day: against days worked out by hand, the binomial and the normal distribution.
import { readFileSync } from 'node:fs';
import { noChances, usualChances } from '@twelvemonth/planning';
import { describe, expect, it } from 'vitest';
import { writtenDay } from './a-day.ts';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

type Rehearsed = {
  readonly onTime: number;
  readonly onTimeRange95: { readonly from: number; readonly to: number };
  readonly finish: { readonly mean: string; readonly by: readonly { readonly share: number; readonly at: string }[] };
  readonly waitedMinutesADay: { readonly nurse: number; readonly chair: number; readonly dose: number };
  readonly bottleneck: string | null;
  readonly attended: number;
  readonly whatMatters: readonly { readonly what: string; readonly onTime: number; readonly stayMinutes: number }[];
};

const folder = ownFolder();
let files = 0;
const file = (content: unknown): string => fileIn(folder, `day-${(files += 1)}.json`, JSON.stringify(content));

const injections = (count: number, arrives: (index: number) => string, more = {}) => {
  const names = Array.from({ length: count }, (_, index) => `Visit ${index + 1}`);
  return {
    day: writtenDay({ nurses: 1, visits: names.map((name) => ({ name, kind: 'injection' })), ...more }),
    plan: names.map((name, index) => ({ name, arrives: arrives(index) })),
  };
};

const rehearsed = (planned: unknown, chances: unknown, ...options: string[]) =>
  jsonOf<Rehearsed>(['rehearse', file(planned), '--chances', file(chances), ...options]);

describe('a rehearsal by command', () => {
  it('plays the day as planned when nothing goes otherwise: two at once and one nurse, by hand', async () => {
    // Each needs a nurse for 10 + 10 + 5 + 5 minutes; one nurse is busy for an hour.
    const found = await rehearsed(
      injections(2, () => '08:30'),
      noChances,
      '--days',
      '3',
    );
    expect(found).toMatchObject({ code: 0, onTime: 1, attended: 2, bottleneck: 'nurse', finish: { mean: '09:30' } });
    expect(found.waitedMinutesADay.nurse).toBeGreaterThanOrEqual(30);
    expect(found.waitedMinutesADay.chair + found.waitedMinutesADay.dose).toBe(0);
  });

  it('ends at the end of the plan when the plan has nobody wait', async () => {
    const planned = await jsonOf<{ objective: { finish: string; waitMinutes: number } }>(['plan', file(writtenDay())]);
    expect(planned.objective.waitMinutes).toBe(0);
    const found = await rehearsed(planned, noChances, '--days', '2');
    expect(found.finish.mean).toBe(planned.objective.finish);
    expect(found.bottleneck).toBeNull();
  });

  it('has as many come as the binomial distribution says', async () => {
    const days = 4_000;
    const chances = { ...noChances, doesNotCome: 0.06 };
    const { attended } = await rehearsed(
      injections(8, (index) => `${String(9 + index).padStart(2, '0')}:00`, { closes: '17:00' }),
      chances,
      '--days',
      String(days),
    );
    const standardError = Math.sqrt((8 * 0.06 * 0.94) / days);
    expect(Math.abs(attended - 8 * 0.94)).toBeLessThan(3 * standardError);
  });

  it.each([
    ['09:45', 0.8413],
    ['10:00', 0.9772],
  ])('ends by %s with the probability of the normal distribution, %d', async (closes, probability) => {
    // One person, told 09:00, half an hour of care; late by 0 ± 15 minutes: closing is one and two deviations away.
    const days = 10_000;
    const chances = { ...noChances, lateness: { mean: 0, deviation: 15 } };
    const found = await rehearsed(
      injections(1, () => '09:00', { closes }),
      chances,
      '--days',
      String(days),
    );
    const standardError = Math.sqrt((probability * (1 - probability)) / days);
    expect(Math.abs(found.onTime - probability)).toBeLessThan(3 * standardError);
    expect(found.onTimeRange95.from).toBeLessThan(found.onTime);
    expect(found.onTimeRange95.to).toBeGreaterThan(found.onTime);
  });

  // Source: the worked example of a day unit (4 chairs, 2 nurses, 14 people every 22 minutes): a nurse matters, a chair hardly.
  it('finds that a nurse matters more than a chair', async () => {
    const day = writtenDay({
      opens: '09:00',
      closes: '15:00',
      mayRunTo: '21:00',
      gridMinutes: 1,
      nurses: 2,
      chairs: 4,
      watchPlaces: 0,
      visits: Array.from({ length: 14 }, (_, index) => ({
        name: `Visit ${index + 1}`,
        kind: [1, 3, 6, 8, 11, 12].includes(index) ? 'first infusion' : 'later infusion',
        infusionMinutes: 20,
      })),
    });
    const clock = (minutes: number): string =>
      `${String(9 + Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
    const plan = day.visits.map(({ name }, index) => ({ name, arrives: clock(index * 22) }));
    const found = await jsonOf<Rehearsed>([
      'rehearse',
      file({ day, plan }),
      '--days',
      '400',
      '--seed',
      '5',
      '--what-matters',
    ]);
    const stay = (what: string): number =>
      found.whatMatters.find((effect) => effect.what === what)?.stayMinutes ?? Number.NaN;
    expect(found.bottleneck).toBe('nurse');
    expect(stay('one nurse fewer')).toBeGreaterThan(10 * stay('one chair fewer'));
  });

  it('is the same to the letter from one seed, reads as sentences, and says what it rests on', async () => {
    const path = file(injections(8, () => '09:00'));
    const one = await twelvemonth(['rehearse', path, '--days', '200']);
    expect((await twelvemonth(['rehearse', path, '--days', '200'])).out).toBe(one.out);
    expect((await twelvemonth(['rehearse', path, '--days', '200', '--seed', '2'])).out).not.toBe(one.out);
    expect(one.out).toMatch(/On time, by 13:00: \d+\.\d of 100 days/);
    expect(one.out).toContain('Most for the nurse.');
    expect(one.aside).toContain('starting values, partly without a source');
  });

  it('starts from the values the guide shows', async () => {
    const guide = readFileSync(new URL('../../../docs/guide/planning.md', import.meta.url), 'utf8');
    const [, example = ''] = /```json\n(\{\s*"spread"[^]*?)```/.exec(guide) ?? [];
    expect(JSON.parse(example)).toEqual(usualChances);
  });

  it('ends with 1 when fewer days than the target end on time', async () => {
    const path = file(injections(9, () => '08:30'));
    expect((await twelvemonth(['rehearse', path, '--days', '100', '--target', '90'])).code).toBe(1);
    expect((await twelvemonth(['rehearse', path, '--days', '100', '--target', '0'])).code).toBe(0);
  });

  it('refuses chances that are left out or cannot be, a day without a plan, and a plan without people', async () => {
    const planned = file(injections(1, () => '09:00'));
    const refused = async (...args: string[]): Promise<string> => {
      const ran = await twelvemonth(['rehearse', ...args]);
      expect(ran).toMatchObject({ code: 2, out: '' });
      return ran.aside;
    };
    const { putOff: _, ...without } = noChances;
    expect(await refused(planned, '--chances', file(without))).toContain('putOff: is missing: write a number.');
    expect(await refused(planned, '--chances', file({ ...noChances, putOff: 8 }))).toContain(
      'putOff: must be at most 1.',
    );
    expect(await refused(file(writtenDay()))).toContain('has no plan in it');
    expect(await refused(file({ day: writtenDay(), plan: [] }))).toContain('has nobody in its plan');
    expect(await refused(planned, '--days', '0')).toContain('--days is a whole number from 1');
  });
});
