/** A visit that was kept: the running time goes on by an even clock, or is said not to be measured; never is it the old one. */
import type { VisitView } from '@twelvemonth/exchange';
import { describe, expect, test } from 'vitest';
import { visitCarriedOn } from '../src/offline/kept-visit.ts';

const kept = {
  patient: 'wilhelmina',
  infusion: {
    startedAt: '2026-11-25T09:00:00Z',
    plannedMinutes: 30,
    leastMinutes: 15,
    paused: false,
    ranSeconds: 120,
    says: 'ran 2 min',
  },
  check: { agrees: true, differs: [], by: 'Chris Check', at: '2026-11-25T08:58:00Z', agoSeconds: 240 },
} as unknown as VisitView;
const infusion = kept.infusion!;

describe('a visit that was kept', () => {
  test('what passed since is added to the running time and to the minutes since the check', () => {
    const now = visitCarriedOn(kept, 720);
    expect(now.infusion?.ranSeconds).toBe(840);
    expect(now.check?.agoSeconds).toBe(960);
  });
  test('while it stands still nothing is added', () => {
    expect(visitCarriedOn({ ...kept, infusion: { ...infusion, paused: true } }, 720).infusion?.ranSeconds).toBe(120);
  });
  test('what is finished has run as long as it did', () => {
    const finished = { ...infusion, finishedAt: '2026-11-25T09:20:00Z', ranSeconds: 1200 };
    expect(visitCarriedOn({ ...kept, infusion: finished }, undefined).infusion?.ranSeconds).toBe(1200);
  });
  test('without a clock that ran meanwhile neither is said', () => {
    const now = visitCarriedOn(kept, undefined);
    expect(now.infusion?.ranSeconds).toBeUndefined();
    expect(now.infusion?.says).toMatch(/cannot say how long the medicine has run/);
    expect(now.check?.agoSeconds).toBeUndefined();
    expect(now.check?.agrees).toBe(true);
  });
  test('without a drip there is nothing to carry on', () => {
    const { infusion: _, check: __, ...bare } = kept;
    expect(visitCarriedOn(bare as VisitView, undefined)).toEqual(bare);
  });
});
