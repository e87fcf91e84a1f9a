/** Lines of a proposal accepted, one after the other, each by the ordinary act of booking; what is refused is said with its line. */
import { useRef, useState } from 'react';
import { useActingRole } from '../frame/acting-role.ts';
import { noteOwnEntries, withOwnEntries } from '../server/own-entries.ts';
import { fetchAgain, queries, session } from '../server/queries.ts';
import { post } from '../server/request.ts';
import { ServerProblem } from '../server/server-problem.ts';
import { type Line, actOf, seenOf } from './lines.ts';

export type Came =
  | { readonly is: 'booked'; readonly at: string }
  | { readonly is: 'refused'; readonly says: string; readonly missed: readonly string[] };

export type Accepting = {
  /** By person of the request. */
  readonly came: ReadonlyMap<number, Came>;
  readonly busy: boolean;
  readonly done: number;
  readonly of: number;
  readonly accept: (lines: readonly Line[]) => Promise<void>;
  readonly stop: () => void;
};

/** On the list as it is now: the proposed place while it is free, else the first free one; undefined: the list is full. */
async function freePlace({ to, place }: Line): Promise<FreePlace | undefined> {
  const { list, seq } = await queries.fetchQuery({ ...session(to.session), staleTime: 0 });
  const free = list.filter(({ who }) => who === undefined);
  const chosen = free.find((one) => one.place === place?.place) ?? free[0];
  return chosen === undefined ? undefined : { place: chosen.place, arriveAt: chosen.arriveAt, seq };
}

type FreePlace = { readonly place: number; readonly arriveAt: string; readonly seq: number };

function refused(error: unknown): Came {
  if (!(error instanceof ServerProblem))
    return { is: 'refused', says: 'The server cannot be reached: nothing was booked.', missed: [] };
  const { problem, missed } = error;
  return {
    is: 'refused',
    says:
      missed.length > 0
        ? 'Somebody has written in these notes since the proposal was made. Look again, or suggest again.'
        : (problem.refusals ?? []).map(({ says }) => says).join(' ') || problem.detail || problem.title,
    missed: missed.map(({ text, by }) => `${text} (${by})`),
  };
}

export function useAccepting(): Accepting {
  const [came, setCame] = useState<Accepting['came']>(new Map());
  const [count, setCount] = useState({ busy: false, done: 0, of: 0 });
  const isStopped = useRef(false);
  const { role } = useActingRole();
  const say = (line: Line, what: Came): void => setCame((before) => new Map([...before, [line.person, what]]));

  async function book(line: Line, place: FreePlace): Promise<void> {
    try {
      const answer = await post('act', {
        id: crypto.randomUUID(),
        act: actOf(line, place.place),
        seen: withOwnEntries(seenOf(line, place.seq)),
        ...(role === undefined ? {} : { role }),
      });
      noteOwnEntries(answer.entries);
      say(line, { is: 'booked', at: place.arriveAt });
    } catch (error) {
      say(line, refused(error));
    }
  }

  /** Whose list is full waits for those who are moved from it; those left when nobody moves any more are told. */
  async function acceptAll(lines: readonly Line[]): Promise<void> {
    let left = lines;
    for (let hasMoved = true; hasMoved && left.length > 0;) {
      hasMoved = false;
      const waiting: Line[] = [];
      for (const line of left) {
        if (isStopped.current) return;
        const place = await freePlace(line);
        if (place === undefined) {
          waiting.push(line);
          continue;
        }
        await book(line, place);
        hasMoved = true;
        setCount((before) => ({ ...before, done: before.done + 1 }));
      }
      left = waiting;
    }
    for (const line of left)
      say(line, { is: 'refused', says: 'The list is full: accept first whoever is moved from it.', missed: [] });
  }

  return {
    came,
    ...count,
    accept: async (lines) => {
      if (count.busy || lines.length === 0) return;
      isStopped.current = false;
      setCount({ busy: true, done: 0, of: lines.length });
      try {
        await acceptAll(lines);
      } catch (error) {
        for (const line of lines.slice(0, 1)) say(line, refused(error));
      }
      await fetchAgain();
      setCount((before) => ({ ...before, busy: false }));
    },
    stop: () => {
      isStopped.current = true;
    },
  };
}
