/**
 * How long packs last. Sums worked out by hand beside each; 30 November 2026 is a Monday. Lead time and reserve as any
 * stockroom keeps them (common practice, no source): order when what is left would fall under the reserve before the next
 * delivery could be there.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Act,
  type Day,
  type ForecastInput,
  addDays,
  batchSubject,
  day,
  forecastOf,
  forecastSays,
  ordersOf,
  plainDate,
} from '@twelvemonth/clinical';
import { DayUnit } from './decide/a-day-unit.ts';

const today = day('2026-11-30');
const on = (text: string): Day => day(text);
const input = (more: Partial<ForecastInput>): ForecastInput => ({
  today,
  weeks: 8,
  lots: [],
  needs: [],
  incoming: [],
  settings: undefined,
  ...more,
});
const doses = (text: string, packs: number, why: 'booked' | 'due' = 'booked') => ({ on: on(text), packs, why });
const longLived = (packs: number) => ({ expiresOn: on('2028-04-30'), packs });

describe('which week runs out', () => {
  test('10 packs, 4 doses a week: the third week has 2 doses without a pack', () => {
    const forecast = forecastOf(
      input({
        lots: [longLived(10)],
        needs: [doses('2026-12-01', 4), doses('2026-12-08', 4, 'due'), doses('2026-12-15', 4)],
      }),
    );
    expect(forecast.weeks.slice(0, 4).map(({ booked, due, left, short }) => [booked, due, left, short])).toEqual([
      [4, 0, 6, 0],
      [0, 4, 2, 0],
      [4, 0, 0, 2],
      [0, 0, 0, 0],
    ]);
    expect(forecast.runsOutOn).toBe(on('2026-12-15'));
    expect(forecastSays(forecast, { today, settings: undefined })[0]).toBe(
      'Runs out in the week of Mon 14 Dec 2026: 2 doses until 24 Jan 2027 without a pack.',
    );
  });
  test('packs that expire first are taken first, can be used through their day, and are gone after it', () => {
    const forecast = forecastOf(
      input({
        lots: [longLived(3), { expiresOn: on('2026-12-08'), packs: 5 }],
        needs: [doses('2026-12-08', 2), doses('2026-12-09', 4)],
      }),
    );
    // 5 - 2 = 3 expire on the 8th; of the 3 that last, all go on the 9th and one dose is short.
    expect(forecast.weeks[1]).toMatchObject({ expire: 3, left: 0, short: 1 });
    expect(forecast.runsOutOn).toBe(on('2026-12-09'));
    expect(forecastSays(forecast, { today, settings: undefined })).toContain(
      '3 packs expire unused until then, the first in the week of Mon 7 Dec 2026.',
    );
  });
  test('what is past its date or below nought is no pack', () => {
    expect(forecastOf(input({ lots: [{ expiresOn: on('2026-11-29'), packs: 9 }, longLived(-2)] })).usable).toBe(0);
  });
  test('who is overdue is needed today', () => {
    expect(forecastOf(input({ needs: [doses('2026-06-01', 1, 'due')] })).runsOutOn).toBe(today);
  });
  test('an order helps from the day after it is expected, and what would be without it is said', () => {
    const needs = [doses('2026-12-08', 2), doses('2026-12-09', 2)];
    const forecast = forecastOf(
      input({ lots: [longLived(2)], needs, incoming: [{ on: on('2026-12-08'), packs: 40 }] }),
    );
    expect(forecast.runsOutOn).toBeUndefined();
    expect(forecast.runsOutWithoutOrders).toBe(on('2026-12-09'));
    expect(forecast.weeks[1]).toMatchObject({ incoming: 40, left: 38 });
    expect(forecastSays(forecast, { today, settings: undefined })[1]).toBe(
      'Without what is ordered it runs out in the week of Mon 7 Dec 2026.',
    );
  });
});

describe('when to order by', () => {
  const needs = [doses('2026-12-15', 4), doses('2026-12-22', 4)];
  test('7 days before the reserve of 5 is reached on 22 December: by 15 December', () => {
    const settings = { leadDays: 7, reservePacks: 5 };
    const forecast = forecastOf(input({ lots: [longLived(9)], needs, settings }));
    expect([forecast.belowReserveOn, forecast.orderBy, forecast.missing]).toEqual([
      on('2026-12-22'),
      on('2026-12-15'),
      4, // 9 - 8 = 1 left, 5 wanted
    ]);
    expect(forecastSays(forecast, { today, settings }).at(-1)).toBe(
      'Order by Tue 15 Dec 2026: the reserve is reached on Tue 22 Dec 2026 (lead time 7 days, reserve 5 packs); 4 packs missing.',
    );
  });
  test('a day that is past says today, and which day it was', () => {
    const settings = { leadDays: 28, reservePacks: 5 };
    const forecast = forecastOf(input({ lots: [longLived(9)], needs, settings }));
    expect(forecastSays(forecast, { today, settings }).at(-1)).toMatch(
      /^Order today: the last day to be in time was Tue 24 Nov 2026/,
    );
  });
  test('without a lead time no day is told', () => {
    const forecast = forecastOf(input({ lots: [longLived(1)], needs }));
    expect(forecast.orderBy).toBeUndefined();
    expect(forecastSays(forecast, { today, settings: undefined }).at(-1)).toMatch(/^No lead time and reserve are set/);
  });
});

test('packs are never made: what was there and what came is what was given, what expired and what is left', () => {
  const anyDay = fc.integer({ min: 0, max: 70 }).map((days) => addDays(today, days));
  const packs = fc.integer({ min: 0, max: 20 });
  fc.assert(
    fc.property(
      fc.array(fc.record({ expiresOn: anyDay, packs })),
      fc.array(fc.record({ on: anyDay, packs, why: fc.constantFrom('booked' as const, 'due' as const) })),
      fc.array(fc.record({ on: anyDay, packs })),
      (lots, needs, incoming) => {
        const { weeks, until } = forecastOf(input({ lots, needs, incoming }));
        const sum = (of: readonly { readonly packs: number }[]): number => of.reduce((all, one) => all + one.packs, 0);
        const within = <One extends { readonly on: Day }>(of: readonly One[]): One[] =>
          of.filter((one) => one.on <= until);
        const given = sum(within(needs)) - weeks.reduce((all, { short }) => all + short, 0);
        const expired = weeks.reduce((all, { expire }) => all + expire, 0);
        expect(sum(lots) + sum(within(incoming))).toBe(given + expired + (weeks.at(-1)?.left ?? 0));
      },
    ),
  );
});

describe('orders', () => {
  const orderPacks = (packs: number, more: object = {}): Act => ({
    name: 'order packs',
    unit: 'thornbeck',
    body: { product: 'zoledronic acid 5 mg in 100 mL', packs, expectedOn: '2026-12-04' as never, ...more },
  });
  const received = (packs: number, order: string, more: object = {}): Act => ({
    name: 'receive packs',
    body: {
      unit: 'thornbeck',
      batch: 'PA-2391',
      product: 'zoledronic acid 5 mg in 100 mL',
      expiresOn: '2028-04-30' as never,
      packs,
      order,
      ...more,
    },
  });
  const begun = () => {
    const unit = new DayUnit();
    unit.expect('priya', orderPacks(40));
    const orders = () => ordersOf(unit.record('unit/thornbeck'), [unit.record(batchSubject('PA-2391'))]);
    return { unit, orders, id: orders()[0]?.order.id ?? '' };
  };
  test('received in part, then whole', () => {
    const { unit, orders, id } = begun();
    unit.expect('priya', received(15, id));
    expect(orders()).toMatchObject([{ received: 15, open: 25 }]);
    unit.wait(1).expect('imre', received(25, id));
    expect(orders()).toMatchObject([{ received: 40, open: 0 }]);
  });
  test('closed, nothing more is expected of it and nothing is received on it', () => {
    const { unit, orders, id } = begun();
    unit.expect('priya', { name: 'close order', unit: 'thornbeck', body: { order: id, reason: 'cannot deliver' } });
    expect(orders()).toMatchObject([{ received: 0, open: 0 }]);
    expect(unit.refused('priya', received(1, id))).toEqual(['order-closed']);
    expect(
      unit.refused('priya', { name: 'close order', unit: 'thornbeck', body: { order: id, reason: 'again' } }),
    ).toEqual(['order-closed']);
  });
  test('another product is not of the order; an order nobody made is none; a past day is no day to expect it', () => {
    const { unit, id } = begun();
    expect(unit.refused('priya', received(1, id, { product: 'denosumab 60 mg', batch: 'PA-7711' }))).toEqual([
      'wrong-product',
    ]);
    expect(unit.refused('priya', received(1, '00000000-0000-4000-8000-000000000000'))).toEqual(['no-such-entry']);
    expect(unit.refused('priya', orderPacks(1, { expectedOn: plainDate(addDays(day(unit.today()), -1)) }))).toEqual([
      'field-wrong',
    ]);
    expect(unit.refused('bettina', orderPacks(1))).toEqual(['not-yours-to-do']);
  });
});
