/** The review of a course over the wire: its sheet, its letter, and what it puts on the day's list of work. */
import type { ReviewView, TodayView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OwnServer, ownServer, problemOf, referralOf, setUp } from './support/own-server.ts';

let server: OwnServer;
const thornbeck = {
  name: 'Thornbeck Day Unit',
  zone: 'Europe/London',
  chairs: 6,
  opensAt: '08:30',
  closesAt: '17:00',
  sessionWeekdays: [2, 4],
  bloodWeekdays: [1, 2, 3, 4, 5],
  closedDays: [],
  minutesBetweenArrivals: 20,
  telephone: '01632 960100',
  demo: false,
};
const line = (kind: string, effectiveAt: string, body: object) => ({
  name: 'record',
  patient: 'wilhelmina',
  line: { kind, body, effectiveAt },
});
const sheet = (): Promise<ReviewView> => server.read<ReviewView>('/api/people/wilhelmina/review');
const letter = () => server.ask('/api/people/wilhelmina/letter?about=review', { as: 'nurse' });
const piles = async (): Promise<Record<string, number>> =>
  Object.fromEntries((await server.read<TodayView>('/api/today')).work.map(({ what, count }) => [what, count]));

beforeAll(async () => {
  server = await ownServer();
  // A unit without a protocol, as on its first day.
  await server.done('lead', { name: 'set unit', unit: 'thornbeck', body: thornbeck });
  await server.done('clerk', referralOf('wilhelmina'));
});
afterAll(() => server.close());

describe('the sheet', () => {
  it('cannot be gathered without a protocol, and of nobody', async () => {
    const without = await server.ask('/api/people/wilhelmina/review', { as: 'nurse' });
    expect(without.statusCode).toBe(409);
    expect(problemOf(without).detail).toContain('No protocol is in force');
    await setUp(server);
    expect((await server.ask('/api/people/nobody/review', { as: 'nurse' })).statusCode).toBe(404);
    expect((await server.ask('/api/people/wilhelmina/review', { as: 'administrator' })).statusCode).toBe(403);
  });

  it('before any dose nothing is asked for, and there is no letter about it', async () => {
    const { needed, reviewed, gaps } = await sheet();
    expect([needed, reviewed]).toEqual([undefined, false]);
    expect(gaps.map(({ record }) => record)).toContain('bone-density');
    expect((await letter()).statusCode).toBe(409);
  });

  it('after three doses it says why, and each line names entries that are there', async () => {
    await server.done('nurse', line('triage', '2026-11-20', { outcome: 'accepted' }));
    for (const on of ['2024-03-14', '2025-03-14', '2026-03-28'])
      await server.done('nurse', line('dose', on, { medicine: 'zoledronic acid 5 mg', setting: 'ward' }));
    const { needed, sections, basis, failure, carryingOn } = await sheet();
    expect(needed).toEqual({ says: '3 doses of 3 given: review before another', since: '2026-03-28' });
    expect(basis).toMatchObject({
      given: 3,
      anniversary: '2027-03-28',
      breakUntil: '2029-03-28',
      needsSpecialist: false,
    });
    const { entries } = await server.read<{ entries: { id: string }[] }>('/api/people/wilhelmina');
    const known = entries.map(({ id }) => id);
    const named = [...sections.flatMap(({ lines }) => lines), ...failure.criteria, ...carryingOn].flatMap(
      (one) => one.entries,
    );
    expect(named.length).toBeGreaterThan(0);
    expect(known).toEqual(expect.arrayContaining(named));
    expect((await piles())['reviews']).toBe(1);
  });
});

describe('decided', () => {
  it('another treatment is a promise with a date: it stands on the list once that has come', async () => {
    const moved = (dueOn: string) =>
      line('course-review', '2026-11-25', {
        outcome: 'other treatment',
        to: 'denosumab with the family doctor',
        dueOn,
        capacity: 'specialist',
        reason: 'new spine fracture',
      });
    await server.done('prescriber', moved('2026-12-10'));
    expect((await piles())['reviews']).toBeUndefined();
    expect((await piles())['other treatments that should have begun']).toBeUndefined();
    await server.done('prescriber', moved('2026-11-25'));
    expect((await piles())['other treatments that should have begun']).toBe(1);
    const html = (await letter()).body;
    expect(html).toContain('another treatment: denosumab with the family doctor, from 25 Nov 2026');
    expect(html).toContain('Petra Press, specialist');
  });
});
