/**
 * Two counts changed at once: a kind of visit is given room for one more in one session and one less in another, the common
 * kind the other way round. Which pairs can save anything is read off shortest paths: one path for the visit, and for each
 * visit of the common kind that must give way at least as much as for the first.
 */
import { type Arrangement, commonRoomAfter, mayGive } from './arrangement.ts';
import { distancesFrom } from './chains.ts';

export type Exchange = { readonly more: number; readonly less: number; readonly atLeast: number };

const nothing = 1e-6;

type Prices = {
  /** By session: what one more (or less) for the kind costs the common kind at its prices, less the kind's own price. */
  readonly more: Float64Array;
  readonly less: Float64Array;
  /** By session: visits of the common kind that must give way, or find room. */
  readonly taken: Int32Array;
  readonly found: Int32Array;
};

function pricesOf(arrangement: Arrangement, kind: number): Prices {
  const { places, transports, common, given } = arrangement;
  const own = transports[kind]!;
  const others = transports[common]!;
  const more = new Float64Array(places.sessions).fill(Number.POSITIVE_INFINITY);
  const less = new Float64Array(places.sessions).fill(Number.POSITIVE_INFINITY);
  const taken = new Int32Array(places.sessions);
  const found = new Int32Array(places.sessions);
  for (let session = 0; session < places.sessions; session += 1) {
    const room = others.room[session]!;
    if (mayGive(arrangement, kind, session)) {
      taken[session] = room - commonRoomAfter(arrangement, kind, session, 1);
      more[session] = others.price[session]! * taken[session]! - own.price[session]!;
    }
    if (given[kind]![session] === 0) continue;
    found[session] = commonRoomAfter(arrangement, kind, session, -1) - room;
    less[session] = own.price[session]! - others.price[session]! * found[session]!;
  }
  return { more, less, taken, found };
}

/** The pairs that may save something, the most promising first. */
export function exchangesOf(arrangement: Arrangement, kind: number): Exchange[] {
  const { places, transports, common } = arrangement;
  const own = transports[kind]!;
  const others = transports[common]!;
  const { more, less, taken, found } = pricesOf(arrangement, kind);
  const least = more.reduce((lowest, value) => Math.min(lowest, value), Number.POSITIVE_INFINITY);
  const byMore: Exchange[][] = Array.from({ length: places.sessions }, () => []);
  for (let down = 0; down < places.sessions; down += 1) {
    const radius = -nothing - least - less[down]!;
    if (!(radius > 0)) continue;
    distancesFrom(own, down, radius);
    for (let up = 0; up < places.sessions; up += 1) {
      const atLeast = own.distance[up]! + more[up]! + less[down]!;
      if (up !== down && atLeast < -nothing) byMore[up]!.push({ more: up, less: down, atLeast });
    }
  }
  const withCommon = (list: readonly Exchange[], up: number): Exchange[] => {
    const movingOf = ({ less: down }: Exchange): number => Math.min(taken[up]!, found[down]!);
    // Farther than this no visit of the common kind need be followed: the exchange would save nothing.
    const radius = list.reduce((most, one) => {
      const moving = movingOf(one);
      return moving === 0 ? most : Math.max(most, -one.atLeast / moving);
    }, 0);
    if (radius > 0) distancesFrom(others, up, radius);
    return list.flatMap((one) => {
      const moving = movingOf(one);
      const atLeast = one.atLeast + (moving === 0 ? 0 : moving * others.distance[one.less]!);
      return atLeast < -nothing ? [{ ...one, atLeast }] : [];
    });
  };
  return byMore.flatMap(withCommon).toSorted((a, b) => a.atLeast - b.atLeast);
}
