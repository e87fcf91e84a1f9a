/** The server's time as a device reckons it: its own clock wrong, put back while the network is away, or asleep. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

const minute = 60_000;
const server = Date.parse('2026-11-25T09:00:00.000Z');
let device = 0;
let steady = 0;
const passes = (minutes: number, { asleep = false } = {}): void => {
  device += minutes * minute;
  if (!asleep) steady += minutes * minute;
};

/** A page that was just loaded. */
const loaded = async () => {
  vi.resetModules();
  return import('../src/server/connection.ts');
};
type Page = Awaited<ReturnType<typeof loaded>>;
const told = (page: Page): void => page.noteServerTime(new Date(server).toISOString());
const minutesSince = (page: Page): number => (page.reckonedServerTime() - server) / minute;

beforeEach(() => {
  device = server;
  steady = 5000;
  vi.spyOn(Date, 'now').mockImplementation(() => device);
  vi.spyOn(performance, 'now').mockImplementation(() => steady);
});
afterEach(() => vi.restoreAllMocks());

describe('the server’s time on a device without a network', () => {
  test.each([-1440, -60, -10, 0, 10, 60, 1440])('set %d minutes wrong all day it is right', async (wrong) => {
    device += wrong * minute;
    const page = await loaded();
    told(page);
    passes(12);
    expect(minutesSince(page)).toBe(12);
  });
  test.each([10, 60, 1440])('put back by %d minutes meanwhile nothing is taken off', async (back) => {
    const page = await loaded();
    told(page);
    passes(5);
    device -= back * minute;
    passes(7);
    expect(minutesSince(page)).toBe(12);
  });
  test('a device that slept: its even clock stood still, the time went on', async () => {
    const page = await loaded();
    told(page);
    passes(20, { asleep: true });
    passes(5);
    expect(minutesSince(page)).toBe(25);
  });
  test('an answer that was kept by a clock moved since never speaks against a fresh one', async () => {
    const page = await loaded();
    told(page);
    passes(5);
    page.noteServerTime(new Date(server).toISOString(), device - 60 * minute);
    expect(minutesSince(page)).toBe(5);
  });
  test('how long something ran is counted by the even clock alone, and not said where none ran', async () => {
    const page = await loaded();
    const copy = new Date(server - 2 * minute).toISOString();
    expect(page.secondsSince(copy)).toBeUndefined();
    page.noteServerTime(copy, device - 2 * minute);
    expect(page.secondsSince(copy)).toBeUndefined();
    told(page);
    passes(3);
    device += 600 * minute;
    expect(page.secondsSince(copy)).toBe(300);
  });
});
