import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, type VisitTimes, broken, planDay } from '../src/index.ts';
import { checkDay } from './oracle/day-check.ts';
import { all, sharedDay, sharedTimes, shortVisit, tinyDay } from './oracle/days.ts';

const ito = shortVisit('Mrs Ito');
const okafor = shortVisit('Mr Okafor');
/** Observations 08:30, cannula 08:35, infusion 08:45 to 08:55, removal, leaving 09:00. */
const times: VisitTimes = { arrives: 0, starts: [0, 1, 3, 5, 6], preparation: 0, secondCheck: 1, watchedIn: null };
const later = (by: number, own: VisitTimes = times): VisitTimes => ({
  ...own,
  arrives: own.arrives + by,
  starts: own.starts.map((start) => start + by),
  preparation: (own.preparation ?? 0) + by,
  secondCheck: (own.secondCheck ?? 0) + by,
});
const says = (day: Day, ...plan: readonly (VisitTimes | null)[]): string[] =>
  broken(day, plan).map((sentence) => sentence.says);

describe('the referee', () => {
  it('says nothing about a plan that is allowed', () => {
    expect(says(tinyDay([ito]), times)).toEqual([]);
  });

  it('names the two people who need one nurse', () => {
    const day = tinyDay([ito, okafor], { chairs: all(12, 2), preparers: all(12, 2), checkers: all(12, 2) });
    expect(says(day, times, times)[0]).toBe(
      '08:30: two people need a nurse at once (observations for Mrs Ito and observations for Mr Okafor), and only one nurse is free.',
    );
  });

  it('counts running infusions against the nurse who keeps an eye on them', () => {
    const day = tinyDay([ito, okafor], { chairs: all(12, 2), watchedPerNurse: 1 });
    expect(says(day, times, later(2))).toContain(
      '08:45: one person needs a nurse at once (cannula and flush for Mr Okafor) and one running infusion needs one to keep an eye on it, and only one nurse is free.',
    );
  });

  it('names who wants the same chair, the same preparer, the same second checker, the same watch place', () => {
    const crowded = tinyDay([ito, okafor], { nurses: all(12, 4) });
    expect(says(crowded, times, times)).toEqual([
      '08:30: two people need a dose prepared at once (Mrs Ito and Mr Okafor), and only one person to prepare is free.',
      '08:35: two people need a second check at once (Mrs Ito and Mr Okafor), and only one second checker is free.',
      '08:35: two people need a chair at once (Mrs Ito and Mr Okafor), and only one chair is free.',
    ]);
    const watched = { ...times, starts: [0, 1, 3, 5, 6, 8], watchedIn: 'watch place' } as const;
    const first = shortVisit('Mrs Ito', {}, true);
    expect(says(tinyDay([first], { watchPlaces: all(12, 0) }), watched)).toEqual([
      '09:00: one person needs a watch place at once (Mrs Ito), and no watch place is free.',
    ]);
  });

  it('speaks of windows, transport and arrival', () => {
    const window = shortVisit('Mrs Ito', { earliest: 1, latest: 6 });
    expect(says(tinyDay([window]), times)).toEqual([
      '08:30: Mrs Ito cannot be here before 08:35.',
      '09:05: Mrs Ito would leave then and must have left by 09:00.',
    ]);
    const brought = shortVisit('Mrs Ito', { arrival: 'transport' });
    expect(says(tinyDay([brought]), later(2))).toEqual([
      'Mrs Ito is brought at 08:30 and cannot be told another time.',
    ]);
    expect(says(tinyDay([ito]), { ...times, arrives: 0, starts: [1, 2, 4, 6, 7] })).toContain(
      'Mrs Ito is told 08:30, but the first step is planned for 08:35.',
    );
  });

  it('speaks of steps out of order', () => {
    expect(says(tinyDay([ito]), { ...times, starts: [0, 1, 3, 4, 6] })).toContain(
      '08:50: removal for Mrs Ito would begin before infusion has ended.',
    );
    const first = shortVisit('Mrs Ito', {}, true);
    const late = { ...times, starts: [0, 1, 3, 5, 7, 9], watchedIn: 'chair' } as const;
    expect(says(tinyDay([first]), late)).toEqual(['09:05: watch for Mrs Ito must follow removal at once.']);
  });

  it('speaks of the dose', () => {
    const day = tinyDay([ito]);
    expect(says(day, later(1, { ...times, preparation: -1 }))).toContain(
      '08:30: the dose for Mrs Ito would be prepared before the person is here.',
    );
    expect(says(day, { ...times, secondCheck: 0 })).toContain(
      '08:30: the second check for Mrs Ito would begin before the dose is prepared.',
    );
    expect(says(day, { ...times, secondCheck: 3 })).toEqual([
      '08:45: infusion for Mrs Ito would begin before the second check has ended.',
    ]);
    expect(says(day, { ...times, starts: [0, 1, 4, 6, 7] })).toEqual([
      '08:35: the dose for Mrs Ito would stand 15 minutes before the infusion; it may stand 10 minutes.',
    ]);
  });

  it('speaks of who must not wait, who is not seen, and what has no time', () => {
    const first = shortVisit('Mrs Ito', { mayWait: false });
    expect(says(tinyDay([first]), times)).toEqual([
      '08:30: Mrs Ito must not be kept waiting and would wait 5 minutes.',
    ]);
    expect(says(tinyDay([ito]), null)).toEqual(['Mrs Ito is not seen.']);
    expect(says(tinyDay([ito]), { ...times, starts: [0, 1], preparation: null })).toEqual([
      'Mrs Ito has no time for: infusion, removal, leaving, preparation.',
    ]);
  });

  it('lets pass what another checker of the shared days lets pass, and nothing else', () => {
    const days = ['A12-1', 'B16-2', 'B24-1'].map((id) => {
      const shared = sharedDay(id);
      return { ...shared, toString: () => id, plan: planDay(shared.day, { seed: 5, limit: { iterations: 200 } }).plan };
    });
    let refused = 0;
    const change = fc.record({ visit: fc.nat(), what: fc.nat({ max: 9 }), by: fc.integer({ min: -6, max: 6 }) });
    fc.assert(
      fc.property(
        fc.constantFrom(...days),
        fc.array(change, { minLength: 1, maxLength: 3 }),
        ({ day, raw, plan }, changes) => {
          const hand = plan.map((own, index) => {
            const mine = changes.filter(({ visit }) => visit % plan.length === index);
            return own === null ? own : mine.reduce(changed, own);
          });
          const allowed = broken(day, hand).length === 0;
          refused += allowed ? 0 : 1;
          expect(allowed).toBe(checkDay(raw, sharedTimes(hand)) !== null);
        },
      ),
      { seed: 31, numRuns: 3_000 },
    );
    expect(refused).toBeGreaterThan(500);
    expect(refused).toBeLessThan(2_950);
  });
});

/** Drags one thing of a visit: the whole visit, one step, the dose, or the place of the watch, which follows the removal. */
function changed(own: VisitTimes, { what, by }: { readonly what: number; readonly by: number }): VisitTimes {
  const removal = 4;
  const last = own.starts.length - 1;
  if (what === 9) return later(by, own);
  if (what === 8) return { ...own, preparation: (own.preparation ?? 0) + by };
  if (what === 7) return { ...own, secondCheck: (own.secondCheck ?? 0) + by };
  if (what === 6)
    return own.watchedIn === null ? own : { ...own, watchedIn: own.watchedIn === 'chair' ? 'watch place' : 'chair' };
  const moved = (step: number): boolean =>
    what === 5 ? step === last : step === what || (what === removal && step === removal + 1 && step < last);
  return { ...own, starts: own.starts.map((start, step) => (moved(step) ? start + by : start)) };
}
