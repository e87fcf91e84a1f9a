/**
 * After the last romosozumab and after the end of teriparatide another medicine follows without a gap: a promise with a date,
 * as after denosumab (docs/readiness.md, "Clocks"). Sources: the clinical fact sheet 4f and section 8: transition after
 * romosozumab (product text, read), month 12 to 13 and "within about a month" after teriparatide (from memory).
 */
import { describe, expect, test } from 'vitest';
import { clockOf, day, plainDate, teaching } from '@twelvemonth/clinical';
import { type Line, at, personOf } from './person.ts';

const ordered = (regimen: string, on: string) =>
  at(on, 'prescription', { regimen, validFrom: on as never, validUntil: '2030-12-31' as never });
const romosozumab = (on: string) => at(on, 'dose', { medicine: 'romosozumab 210 mg', setting: 'this service' });
const twelve = Array.from({ length: 12 }, (_, index) => romosozumab(`2026-${String(index + 1).padStart(2, '0')}-05`));
const clock = (lines: readonly Line[], on: string, windowFirst?: string) =>
  clockOf(personOf(lines), teaching, day(on), windowFirst === undefined ? undefined : day(windowFirst));
const place = (on: string) =>
  at('2026-12-01', 'place-booked', { session: `s-${on}`, unit: 'u', on: on as never, arriveAt: '09:00', place: 1 });

describe('romosozumab, the twelfth dose on 5 Dec 2026', () => {
  const lines = [ordered('romosozumab-monthly', '2026-01-01'), ...twelve];
  test('what follows is due on 5 Jan 2027 and reached by 5 Feb', () => {
    const found = clock(lines, '2026-12-06');
    expect([found?.due, found?.reachBy].map((on) => plainDate(on ?? day('1900-01-01')))).toEqual([
      '2027-01-05',
      '2027-02-05',
    ]);
  });
  test.each([
    ['2026-10-04', 'running'],
    ['2026-10-05', 'on the worklist'],
    ['2026-12-04', 'on the worklist'],
    ['2026-12-05', 'first in line'],
    ['2027-02-05', 'first in line'],
    ['2027-02-06', 'alarm'],
  ] as const)('%s: %s, known long before the twelfth is given', (on, tier) =>
    expect(clock(lines, on)?.tier).toBe(tier),
  );
  test('nothing ordered after it: a prescriber is asked from the month before', () => {
    expect(clock(lines, '2026-12-04', '2027-01-05')?.prescriberToday).toBeUndefined();
    expect(clock(lines, '2026-12-05', '2027-01-05')?.prescriberToday).toBe(
      'prescriber today: order the medicine that follows romosozumab 210 mg',
    );
  });
  test('ordered and reachable: nobody is alarmed; not reachable in time: a prescriber today', () => {
    const next = [...lines, ordered('zoledronic-acid-yearly', '2026-12-06')];
    expect(clock(next, '2026-12-07', '2027-01-05')?.prescriberToday).toBeUndefined();
    expect(clock(next, '2026-12-07', '2027-02-06')?.prescriberToday).toMatch(/^prescriber today/);
  });
  test('a place after the last dose is the replacement; one before it is the next dose', () => {
    const early = lines.slice(0, 12);
    expect(clock([...early, place('2026-12-05')], '2026-11-20')?.replacementOn).toBeUndefined();
    expect(clock([...early, place('2027-01-07')], '2026-12-07')).toMatchObject({
      tier: 'on the worklist',
      replacementOn: day('2027-01-07'),
    });
  });
  test('it ends when the next medicine is given, and denosumab starts its own', () => {
    const given = (medicine: 'zoledronic acid 5 mg' | 'denosumab 60 mg') => [
      ...lines,
      at('2027-01-06', 'dose', { medicine, setting: 'this service' }),
    ];
    expect(clock(given('zoledronic acid 5 mg'), '2027-03-01')).toBeUndefined();
    expect(clock(given('denosumab 60 mg'), '2027-03-01')).toMatchObject({
      medicine: 'denosumab 60 mg',
      tier: 'running',
      due: day('2027-07-06'),
    });
  });
  test('someone who comes with a last dose from elsewhere and no order has had the last', () => {
    expect(
      clock([at('2026-05-05', 'dose', { medicine: 'romosozumab 210 mg', setting: 'elsewhere' })], '2026-06-05'),
    ).toMatchObject({ due: day('2026-06-05'), tier: 'first in line' });
  });
});

describe('teriparatide, begun on 1 Dec 2024 for 24 months', () => {
  const begun = (until?: string) => [
    ordered('teriparatide-daily', '2024-11-01'),
    at('2024-12-01', 'dose', {
      medicine: 'teriparatide',
      setting: 'home',
      ...(until === undefined ? {} : { until: until as never }),
    }),
  ];
  test.each([
    ['2026-08-31', 'running'],
    ['2026-09-01', 'on the worklist'],
    ['2026-11-01', 'first in line'],
    ['2027-01-01', 'first in line'],
    ['2027-01-02', 'alarm'],
  ] as const)('%s: %s', (on, tier) => expect(clock(begun(), on)?.tier).toBe(tier));
  test('ended early, the promise falls due early', () => {
    expect(clock(begun('2025-06-10'), '2025-07-11')).toMatchObject({
      tier: 'alarm',
      due: day('2025-06-10'),
      reachBy: day('2025-07-10'),
    });
  });
});

describe('others', () => {
  test('denosumab 120 mg has the clock of 60 mg', () => {
    // Due + 4 weeks and + 16 weeks: 2026-08-12 and 2026-11-04 (fact sheet, section 8).
    const last = [at('2026-01-15', 'dose', { medicine: 'denosumab 120 mg', setting: 'elsewhere' })];
    expect(['2026-08-11', '2026-08-12', '2026-11-04'].map((on) => clock(last, on)?.tier)).toEqual([
      'first in line',
      'alarm',
      'highest alarm',
    ]);
  });
  test('nothing has to follow a bisphosphonate', () => {
    for (const medicine of ['zoledronic acid 5 mg', 'ibandronate 3 mg', 'pamidronate'] as const)
      expect(clock([at('2026-01-15', 'dose', { medicine, setting: 'ward' })], '2030-01-01')).toBeUndefined();
  });
  test('the oncology strength neither starts a clock nor ends one', () => {
    const oncology = at('2026-03-15', 'dose', { medicine: 'zoledronic acid 4 mg', setting: 'elsewhere' });
    expect(clock([oncology], '2027-01-01')).toBeUndefined();
    expect(
      clock([at('2026-01-15', 'dose', { medicine: 'denosumab 60 mg', setting: 'elsewhere' }), oncology], '2026-08-12')
        ?.tier,
    ).toBe('alarm');
  });
});
