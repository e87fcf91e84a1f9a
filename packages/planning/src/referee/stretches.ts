/** Stretches of the day in which more is needed than there is, so that an hour of trouble is one sentence and not twelve. */
import type { Capacity, Tick } from '../day/day.ts';

export type Need = { readonly visit: number; readonly what: string; readonly from: Tick; readonly until: Tick };

export type Stretch = {
  readonly from: Tick;
  readonly until: Tick;
  /** What is needed throughout, and how much there is. */
  readonly needs: readonly Need[];
  readonly available: number;
};

const covers = (need: Need, tick: Tick): boolean => need.from <= tick && tick < need.until;
const same = (one: readonly Need[], other: readonly Need[]): boolean =>
  one.length === other.length && one.every((need, index) => need === other[index]);

/** `tooMuch` says whether these needs together are more than so many can meet. */
export function stretchesOver(
  needs: readonly Need[],
  capacity: Capacity,
  tooMuch: (needs: readonly Need[], available: number) => boolean,
): Stretch[] {
  const last = Math.max(capacity.length, ...needs.map((need) => need.until));
  const found: Stretch[] = [];
  for (let tick = 0; tick < last; tick += 1) {
    const here = needs.filter((need) => covers(need, tick));
    const available = capacity[tick] ?? 0;
    if (!tooMuch(here, available)) continue;
    const before = found.at(-1);
    if (before !== undefined && before.until === tick && before.available === available && same(before.needs, here))
      found[found.length - 1] = { ...before, until: tick + 1 };
    else found.push({ from: tick, until: tick + 1, needs: here, available });
  }
  return found;
}

export const moreThan = (needs: readonly Need[], available: number): boolean => needs.length > available;
