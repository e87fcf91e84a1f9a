/** The course and its reviews as a requirement (docs/readiness.md R7). Asked on 25 November 2026, teaching protocol. */
import { describe, expect, test } from 'vitest';
import { day } from '@twelvemonth/clinical';
import { judge, verdictsOn, verdictOf, exceptionUntil } from './judging.ts';
import { at, doseGiven } from './person.ts';

describe('course', () => {
  const three = [doseGiven('2023-10-01'), doseGiven('2024-10-01'), doseGiven('2025-10-01')];
  const review = (on: string, body: Parameters<typeof at<'course-review'>>[2]) => at(on, 'course-review', body);
  test('two of three: ready; three of three: review', () => {
    expect([verdictOf('course', three.slice(1)), verdictOf('course', three)]).toEqual(['ready', 'not ready']);
  });
  test('carry on to six lets the fourth to the sixth through', () => {
    expect(
      verdictOf('course', [...three, review('2025-11-01', { outcome: 'carry on', toDoses: 6, reason: 'r' })]),
    ).toBe('ready');
    expect(
      verdictOf('course', [...three, review('2025-11-01', { outcome: 'carry on', toDoses: 3, reason: 'r' })]),
    ).toBe('not ready');
  });
  test('a new course counts from its own date', () => {
    const opened = review('2025-11-01', { outcome: 'new course', plannedDoses: 1, reason: 'r' });
    expect(verdictOf('course', [...three, opened])).toBe('ready');
    expect(verdictOf('course', [...three, opened, doseGiven('2026-11-02')])).toBe('not ready');
  });
  test("the prescription's number goes before the regimen's", () => {
    const own = at('2026-01-01', 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-01-01' as never,
      validUntil: '2027-12-31' as never,
      plannedDoses: 4,
    });
    expect(verdictOf('course', [...three, own])).toBe('ready');
  });
  test('a planned break: not ready before and after its end, for different reasons', () => {
    const lines = [
      ...three,
      review('2025-11-01', {
        outcome: 'planned break',
        reviewOn: '2027-11-01' as never,
        triggers: 'new fracture',
        reason: 'r',
      }),
    ];
    expect(['2027-10-31', '2027-11-01'].map((on) => judge('course', lines).on(day(on)).cause)).toEqual([
      'planned break until 1 Nov 2027',
      'review after the break',
    ]);
  });
  test.each([
    ['stop', { outcome: 'stop', reason: 'frailty' }],
    [
      'other treatment',
      { outcome: 'other treatment', to: 'another medicine', dueOn: '2027-01-01' as never, reason: 'r' },
    ],
  ] as const)('%s: not ready', (_, body) => {
    expect(verdictOf('course', [doseGiven('2025-10-01'), review('2026-01-01', body)])).toBe('not ready');
  });
  const fracture = (on: string, site: 'hip' | 'spine' | 'wrist' | 'other') =>
    at(on, 'fracture', { site, dateKnown: true });
  test.each(['hip', 'spine'] as const)('a %s fracture on treatment opens a review', (site) => {
    expect(verdictOf('course', [doseGiven('2025-10-01'), fracture('2026-05-01', site)])).toBe('not ready');
    expect(verdictOf('course', [doseGiven('2025-10-01'), fracture('2025-09-01', site)])).toBe('ready');
  });
  test('one other fracture does not, the second does; fingers and toes never', () => {
    const once = [doseGiven('2025-10-01'), fracture('2026-05-01', 'wrist')];
    expect(verdictOf('course', once)).toBe('ready');
    expect(verdictOf('course', [...once, fracture('2026-06-01', 'wrist')])).toBe('not ready');
    expect(verdictOf('course', [...once, fracture('2026-06-01', 'other'), fracture('2026-07-01', 'other')])).toBe(
      'ready',
    );
  });
  test('a review on or after the event closes it', () => {
    const lines = [doseGiven('2025-10-01'), fracture('2026-05-01', 'spine')];
    const carryOn = { outcome: 'carry on', toDoses: 6, reason: 'r' } as const;
    expect(verdictOf('course', [...lines, review('2026-04-30', carryOn)])).toBe('not ready');
    expect(verdictOf('course', [...lines, review('2026-05-01', carryOn)])).toBe('ready');
  });
  test('back pain or height loss on treatment holds until cleared', () => {
    const pain = at('2026-05-01', 'symptom', { what: 'back pain' }, 's1');
    expect(verdictOf('course', [doseGiven('2025-10-01'), pain])).toBe('not ready');
    expect(
      verdictOf('course', [
        doseGiven('2025-10-01'),
        pain,
        at('2026-05-20', 'symptom-cleared', { entry: 's1', finding: 'no new fracture on X-ray' }),
      ]),
    ).toBe('ready');
    expect(verdictOf('course', [pain])).toBe('ready');
  });
  test("a prescriber's exception, to its last day", () => {
    expect(
      verdictsOn('course', [...three, exceptionUntil('course review', '2026-12-31')], '2026-12-31', '2027-01-01'),
    ).toEqual(['ready', 'not ready']);
  });
});
