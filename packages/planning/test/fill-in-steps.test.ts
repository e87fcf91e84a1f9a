// Filling by its steps: how far it is, and what is left behind when nobody asks for the next one. No outside source: what is
// compared is the filling with itself.
import { addDays, day } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { type FillRequest, fillInSteps, fillSessions, usualFillWeights } from '../src/index.ts';

const today = day('2026-03-02');

/** As many people as asked, meant for days spread over the sessions, more of them in the first weeks than there are places for. */
function crowd(people: number, sessions: number): FillRequest {
  return {
    today,
    kinds: [
      { name: 'first infusion', nurseMinutes: 55, chairMinutes: 90, isFirst: true },
      { name: 'later infusion', nurseMinutes: 35, chairMinutes: 60, isFirst: false },
    ],
    weights: usualFillWeights,
    sessions: Array.from({ length: sessions }, (_, index) => ({
      day: addDays(today, 3 + index * 2),
      site: 'Alder House',
      nurseMinutes: 300,
      chairMinutes: 600,
      mostFirstVisits: 2,
      reservedPercent: 10,
    })),
    people: Array.from({ length: people }, (_, index) => ({
      name: `person ${index}`,
      kind: index % 4 === 0 ? 0 : 1,
      tier: index % 10 === 0 ? 0 : index % 5 === 0 ? 1 : 2,
      earliest: { day: addDays(today, 1), because: 'a place needs a day of notice' },
      latest: { day: addDays(today, 20 + (index % 60)), because: 'the prescription ends' },
      due: addDays(today, (index * 7) % 40),
      bloods: null,
      weekdays: [],
      travelMinutes: { 'Alder House': 0 },
      told: null,
      noticeDays: 1,
    })),
  };
}

function sharesOf(request: FillRequest) {
  const shares: number[] = [];
  const steps = fillInSteps(request);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return { shares, answer: step.value };
    shares.push(step.value);
  }
}

describe('filling by its steps', () => {
  it.each([
    ['a few, each beginning tried', 60, 12],
    ['many, from one beginning', 400, 40],
  ])('tells how far it is, never less than before, up to the whole: %s', (_, people, sessions) => {
    const { shares } = sharesOf(crowd(people, sessions));
    expect(shares.length).toBeGreaterThan(10);
    expect(shares.every((share) => share > 0 && share <= 1)).toBe(true);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('comes to the very answer of filling at once', () => {
    const { answer } = sharesOf(crowd(400, 40));
    const atOnce = fillSessions(crowd(400, 40));
    if (!answer.ok || !atOnce.ok) throw new Error('both are filled');
    expect(answer.session).toEqual(atOnce.session);
    expect(answer.changes).toEqual(atOnce.changes);
    expect(answer.tiers).toEqual(atOnce.tiers);
  });

  it('broken off anywhere leaves what was asked as it was, so that it can be asked again', () => {
    const request = crowd(400, 40);
    const steps = fillInSteps(request);
    for (let taken = 0; taken < 12; taken += 1) steps.next();
    expect(request).toEqual(crowd(400, 40));
    expect(fillSessions(request)).toMatchObject({ ok: true });
  });
});
