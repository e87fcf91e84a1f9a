/**
 * The rest of a day that has begun, from what has really happened: what is under way stays, as few people as possible are
 * told another time, and each of those is told why. A proposal: a person accepts it.
 */
import type { Capacity, Day, Tick } from '../day/day.ts';
import { minuteOf } from '../day/format-problem.ts';
import { clockAt } from '../day/time-words.ts';
import type { Drawn } from '../drawn/drawn.ts';
import { chairNumbers } from '../plan/chair-numbers.ts';
import type { Lock } from '../plan/lock.ts';
import type { Plan, VisitTimes } from '../plan/plan.ts';
import { leastInTheWay } from '../referee/least-in-the-way.ts';
import type { Sentence } from '../referee/sentence.ts';
import { replan } from '../replan/replan.ts';
import type { Limit } from '../search/limit.ts';
import { type Thing, allThings, things } from '../answer/impossible.ts';
import type { DayChanges, SoFar } from './so-far.ts';
import { type VisitNow, expectedVisit, visitFromNow } from './visit-from-now.ts';

export type RestOfDay = {
  /** As it is now known: who has gone is not in it, who is here has what is left of the visit. */
  readonly day: Day;
  /** Everybody at the time they have been told, whether that still fits or not. */
  readonly asTold: Plan;
  /** Nothing but what is under way begins before. */
  readonly now: Tick;
  /** By visit: who is here. They are told nothing. */
  readonly isHere: readonly boolean[];
  /** By visit: told a time that has passed, and not here. */
  readonly isLate: readonly boolean[];
  /** By visit: the chair written down at the arrival. */
  readonly chairs: readonly (number | undefined)[];
};

export type RestRead = { readonly ok: true; readonly rest: RestOfDay } | { readonly ok: false; readonly says: string };

/** Time: HH:MM on the unit's wall. Told: the time of each expected person, by name. */
export function restOfDay(
  day: Day,
  told: ReadonlyMap<string, string>,
  soFar: readonly SoFar[],
  time: string,
  changes: DayChanges,
): RestRead {
  const tickAt = (clock: string): number => (minuteOf(clock) - day.startsAtMinute) / day.minutesPerTick;
  const now = Math.max(0, Math.floor(tickAt(time)) + 1);
  if (now >= day.ticks) return { ok: false, says: `At ${time} the day is over: there is nothing left to plan.` };
  const from = (there: Capacity, count: number | undefined): Capacity =>
    count === undefined ? there : there.map((before, tick) => (tick < now ? before : count));
  const left = day.visits.flatMap((visit): (VisitNow & { so: SoFar; isLate: boolean })[] => {
    const so = soFar.find(({ name }) => name === visit.name);
    if (so === undefined || so.state === 'gone' || so.state === 'put off') return [];
    if (so.state === 'here') {
      const next = visitFromNow(day, visit, so, now, changes.runsLonger.get(visit.name) ?? 0);
      return next === null ? [] : [{ ...next, so, isLate: false }];
    }
    const toldAt = Math.floor(tickAt(told.get(visit.name) ?? clockAt(day, visit.earliest)));
    const comes = changes.comes.get(visit.name);
    const notBefore = comes === undefined ? now : Math.max(now, Math.ceil(tickAt(comes)));
    return [{ ...expectedVisit(day, visit, toldAt, notBefore), so, isLate: toldAt < notBefore }];
  });
  if (left.length === 0) return { ok: false, says: 'Everybody has gone: there is nothing left to plan.' };
  return {
    ok: true,
    rest: {
      day: {
        ...day,
        nurses: from(day.nurses, changes.nurses),
        chairs: from(day.chairs, changes.chairs),
        preparers: from(day.preparers, changes.preparers),
        checkers: from(day.checkers, changes.checkers),
        visits: left.map(({ visit }) => visit),
      },
      asTold: left.map(({ times }) => times),
      now,
      isHere: left.map(({ so }) => so.state === 'here'),
      isLate: left.map(({ isLate }) => isLate),
      chairs: left.map(({ so, visit }) => (visit.chair === null ? undefined : so.chair)),
    },
  };
}

export type ToTell = {
  readonly visit: number;
  readonly from: Tick;
  readonly to: Tick;
  /** What would be broken at the time they have been told. */
  readonly because: string;
};

export type RestProposal = {
  readonly drawn: Drawn;
  /** Visits that have no place today any more. */
  readonly lost: readonly number[];
  /** People who are here and cannot be finished within the day. */
  readonly stuck: readonly number[];
  /** Where somebody is lost: one change each that would be enough, tried out. */
  readonly enough: readonly string[];
};

const triesPerTryWithout = 20;

/** Nobody who is here is moved by hand either. */
const lockOf = (isHere: boolean): Lock | undefined => (isHere ? 'time and chair' : undefined);

export function proposeRest(
  { day, asTold, now, isHere, chairs }: RestOfDay,
  { seed, limit }: { readonly seed: number; readonly limit: Limit },
): RestProposal {
  // Looking for a place again and again for somebody who has none is slow: then fewer tries are made.
  const few = { ...limit, iterations: Math.ceil(limit.iterations / triesPerTryWithout) };
  const isRoomy = replan(day, asTold, { now, seed, limit: { iterations: 0 } }).lost.length === 0;
  const { plan, lost, stuck } = replan(day, asTold, { now, seed, limit: isRoomy ? limit : few });
  const oneMore = (thing: Thing): Day => ({
    ...day,
    [thing]: day[thing].map((count, tick) => (tick < now ? count : count + 1)),
  });
  const enough =
    lost.length === 0
      ? []
      : allThings.filter((thing) => replan(oneMore(thing), asTold, { now, seed, limit: few }).lost.length === 0);
  return {
    drawn: { plan, chairs: chairNumbers(day, plan, chairs), locks: isHere.map(lockOf) },
    lost: lost.filter((visit) => !stuck.includes(visit) && isHere[visit] !== true),
    stuck: [...new Set([...stuck, ...lost.filter((visit) => isHere[visit] === true)])],
    enough: enough.map((thing) => `One more ${things[thing].one} from ${clockAt(day, now)} on.`),
  };
}

const movedTo = (times: VisitTimes, arrives: Tick): VisitTimes => {
  const by = arrives - times.arrives;
  return {
    ...times,
    arrives,
    starts: times.starts.map((start) => start + by),
    preparation: times.preparation === null ? null : times.preparation + by,
    secondCheck: times.secondCheck === null ? null : times.secondCheck + by,
  };
};

/** Who has to be told another time by this plan, and why the one they have cannot be kept beside the others. */
export function toTell({ day, asTold, now, isHere, isLate }: RestOfDay, plan: Plan): readonly ToTell[] {
  return plan.flatMap((times, visit): ToTell[] => {
    const before = asTold[visit];
    const own = day.visits[visit];
    if (times === null || before === null || before === undefined || own === undefined || isHere[visit] === true)
      return [];
    if (times.arrives === before.arrives) return [];
    const { arrives: from } = before;
    const because = isLate[visit]
      ? `was told ${clockAt(day, from)} and is not expected before ${clockAt(day, Math.max(now, own.earliest))}`
      : (leastInTheWay(day, plan, visit, movedTo(times, from)).said[0]?.says ?? 'so that fewer others are moved');
    return [{ visit, from, to: times.arrives, because }];
  });
}

/** Of what the referee says, what can still be helped: what lies wholly before now is past. */
export const stillToCome = (said: readonly Sentence[], now: Tick): readonly Sentence[] =>
  said.filter(({ until }) => until === null || until > now);
