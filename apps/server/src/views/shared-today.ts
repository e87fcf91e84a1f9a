/**
 * Today as every screen of a unit asks for it: when somebody has written, all ask at once. It is worked out once for all of
 * them, and again once something was written or a few seconds have gone by.
 */
import type { TodayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';
import { todayOf } from './today.ts';

/** Texts of running minutes may be so old. */
const keptMilliseconds = 5_000;

export function sharedToday(atHand: AtHand): (unit: UnitNow) => Promise<TodayView> {
  const kept = new Map<string, { readonly as: string; readonly answer: Promise<TodayView> }>();
  return async (unit) => {
    const { commit } = await atHand.store.tail();
    const as = `${commit} ${unit.today} ${Math.floor(Date.parse(atHand.clock.now()) / keptMilliseconds)}`;
    const before = kept.get(unit.unit.id);
    if (before?.as === as) return before.answer;
    const answer = todayOf(atHand, unit);
    kept.set(unit.unit.id, { as, answer });
    // One that failed is tried again by whoever asks next.
    answer.catch(() => kept.delete(unit.unit.id));
    return answer;
  };
}
