/** Changes the counts of the less common kinds, one or two at a time, as long as that saves something. */
import {
  type Arrangement,
  commonRoomAfter,
  costOf,
  give,
  markOf,
  mayGive,
  settleSession,
  takeBack,
} from './arrangement.ts';
import type { InSteps } from '../in-steps.ts';
import { exchangesOf } from './exchanges.ts';
import { costOfShedding, settle, worthOfRoom } from './settle.ts';

const nothing = 1e-6;

type Change = readonly [session: number, by: 1 | -1];

/** What a change costs at least, by the prices alone. */
function atLeast(arrangement: Arrangement, kind: number, [session, by]: Change): number {
  const own = arrangement.transports[kind]!;
  const others = arrangement.transports[arrangement.common]!;
  if (by === 1 ? !mayGive(arrangement, kind, session) : arrangement.given[kind]![session] === 0)
    return Number.POSITIVE_INFINITY;
  const rooms = commonRoomAfter(arrangement, kind, session, by) - others.room[session]!;
  const isSpare = by === -1 && own.load[session]! < own.room[session]!;
  return (isSpare ? 0 : -by * own.price[session]!) - others.price[session]! * rooms;
}

/** Still at least, but with the first chain of moves on each side worked out. */
function atLeastByChains(arrangement: Arrangement, kind: number, [session, by]: Change): number {
  const own = arrangement.transports[kind]!;
  const others = arrangement.transports[arrangement.common]!;
  const rooms = commonRoomAfter(arrangement, kind, session, by) - others.room[session]!;
  if (by === 1) {
    const saved = worthOfRoom(own, session);
    const over = others.load[session]! - others.room[session]! - rooms;
    if (saved <= nothing || over <= 0) return -saved;
    return costOfShedding(others, session, saved) * over - saved;
  }
  const worth = others.price[session]! * rooms;
  const cost = own.load[session]! < own.room[session]! ? 0 : costOfShedding(own, session, worth);
  return cost === Number.POSITIVE_INFINITY ? cost : cost - worthOfRoom(others, session) * rooms;
}

/** Makes the changes if they save something. The common kind goes first: if it alone costs too much, the rest is not tried. */
function make(arrangement: Arrangement, kind: number, changes: readonly Change[]): boolean {
  const others = arrangement.transports[arrangement.common]!;
  const own = arrangement.transports[kind]!;
  const mark = markOf(arrangement);
  const mostSaved = changes.reduce((sum, [session, by]) => sum + by * own.price[session]!, 0);
  for (const [session, by] of changes) give(arrangement, kind, session, by);
  for (const [session, by] of changes) if (by === -1) settle(others, session);
  for (const [session, by] of changes) if (by === 1) settle(others, session);
  const isWorth = costOf(arrangement) - mostSaved < mark.cost - nothing;
  if (isWorth) for (const [session] of changes) settle(own, session);
  if (isWorth) for (const [session] of changes) settleSession(arrangement, session);
  if (isWorth && costOf(arrangement) < mark.cost - nothing) return true;
  for (const [session, by] of changes) give(arrangement, kind, session, by === 1 ? -1 : 1);
  takeBack(arrangement, mark);
  return false;
}

function oneAtATime(arrangement: Arrangement, kind: number, sessions: readonly number[]): boolean {
  let isBetter = false;
  for (const session of sessions)
    for (const by of [1, -1] as const) {
      const change: Change = [session, by];
      if (atLeast(arrangement, kind, change) >= -nothing) continue;
      if (atLeastByChains(arrangement, kind, change) >= -nothing) continue;
      if (make(arrangement, kind, [change])) isBetter = true;
    }
  return isBetter;
}

export type Effort = {
  /** Exchanges tried in all before giving up; the filling is whole all the time. */
  tries: number;
};

/**
 * So many exchanges in a row that save nothing, and the rest of the list is left: it was made for counts that have changed
 * since, and a new one finds more. Found by trying.
 */
const mostInVain = 60;

function* twoAtATime(arrangement: Arrangement, kind: number, effort: Effort): InSteps<boolean> {
  let isBetter = false;
  let inVain = 0;
  for (const { more, less } of exchangesOf(arrangement, kind)) {
    if (effort.tries <= 0 || inVain >= mostInVain) break;
    const changes: Change[] = [
      [more, 1],
      [less, -1],
    ];
    if (changes.reduce((sum, change) => sum + atLeast(arrangement, kind, change), 0) >= -nothing) continue;
    effort.tries -= 1;
    inVain += 1;
    yield;
    if (!make(arrangement, kind, changes)) continue;
    isBetter = true;
    inVain = 0;
  }
  return isBetter;
}

const otherKinds = ({ transports, common }: Arrangement): number[] =>
  transports.map((_, kind) => kind).filter((kind) => kind !== common);

/** After a small change: the counts of a few sessions looked at again. */
export function settleNear(arrangement: Arrangement, sessions: readonly number[]): void {
  const inside = sessions.filter((session) => session >= 0 && session < arrangement.places.sessions);
  for (const kind of otherKinds(arrangement)) oneAtATime(arrangement, kind, inside);
}

/** Something is yielded between two changes: the arrangement is whole then. */
export function* betterCounts(arrangement: Arrangement, effort: Effort): InSteps<void> {
  const kinds = otherKinds(arrangement);
  const all = Array.from({ length: arrangement.places.sessions }, (_, session) => session);
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (const kind of kinds) {
      while (oneAtATime(arrangement, kind, all)) {
        isBetter = true;
        yield;
      }
      if (effort.tries > 0 && (yield* twoAtATime(arrangement, kind, effort))) isBetter = true;
    }
  }
}
