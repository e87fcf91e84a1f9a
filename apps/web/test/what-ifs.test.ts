// The sliders of the look ahead: what nobody moved stays exactly as it was counted, whatever the slider rounds.
import { changedCase } from '@twelvemonth/planning';
import { describe, expect, it } from 'vitest';
import { asItIs, changesOf, slidersFor } from '../src/look-ahead/what-ifs.ts';

const ahead = {
  demand: {
    waiting: [5, 0, 0],
    due: [],
    referrals: { perWeek: 2.346, lagWeeks: 6 },
    season: [1, 1, 1, 1],
    leavers: { perWeek: 0.15, lagWeeks: 6 },
    pausesEnding: [],
    startsAgain: 0.5,
    doses: 3,
    intervalWeeks: 52,
    pauseWeeks: 157,
    returns: [0.8947, 0.931],
    diesAfterFirst: 0.03,
    diesLater: 0.05,
  },
  service: {
    sessionsPerWeek: 25 / 13,
    placesPerSession: 14,
    minutesOpen: 510,
    nurses: 3,
    chairs: 6,
    nurseMinutesPerVisit: 36,
    chairMinutesPerVisit: 45,
    watchedPerNurse: 4,
    infusionMinutes: 15,
    otherVisitsPerWeek: 0.2,
  },
  bloods: { drawn: 'to fit the place', validWeeks: 8 },
} as const;

describe('what if', () => {
  it('with nothing moved is what was counted, to the last digit', () => {
    expect(changedCase(ahead, changesOf(ahead, asItIs(ahead)))).toEqual(changedCase(ahead, {}));
  });

  it('one thing moved changes that alone', () => {
    const usual = asItIs(ahead);
    const { inputs, service } = changedCase(ahead, changesOf(ahead, { ...usual, moreSessions: 1 }));
    expect(service.sessionsPerWeek).toBe(25 / 13 + 1);
    expect(inputs).toEqual(ahead.demand);
    const more = changedCase(ahead, changesOf(ahead, { ...usual, returnPercent: 70, burstPeople: 40 }));
    expect(more.inputs.returns).toEqual([0.7, 0.931]);
    expect(more.inputs.due).toEqual([{ week: usual.burstWeek, dose: 1, people: 40 }]);
    expect(more.offer).toEqual(changedCase(ahead, {}).offer);
    expect(changedCase(ahead, changesOf(ahead, { ...usual, infusionMinutes: 30 })).service.chairMinutesPerVisit).toBe(
      60,
    );
  });

  it('fewer sessions than none is none', () => {
    expect(changesOf(ahead, { ...asItIs(ahead), moreSessions: -4 }).sessionsPerWeek).toBe(0);
  });

  it('every slider begins inside its range, at what is now', () => {
    const usual = asItIs(ahead);
    const outside = slidersFor(ahead, usual).filter(
      ({ key, least, most }) => !(usual[key] >= least && usual[key] <= most),
    );
    expect(outside).toEqual([]);
  });
});
