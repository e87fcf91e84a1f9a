/** Why somebody has no earlier place: every earlier session, with what is in the way or what it would cost all together. */
import { shortDate } from '@twelvemonth/clinical';
import { daysOfTier, whyNotOffered } from './cost.ts';
import type { Filling } from './filling.ts';
import { kindIndex } from './flatten.ts';
import type { FillRequest } from './request.ts';
import { costIfIn, savedByMore } from './what-if.ts';

export type EarlierSession = { readonly session: number; readonly isOffered: boolean; readonly says: string };

const tierWords = ['those first in line', 'the urgent', 'the others'] as const;

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

function sentenceFor(request: FillRequest, filling: Filling, person: number, session: number): EarlierSession {
  const who = request.people[person]!;
  const where = request.sessions[session]!;
  const date = shortDate(where.day);
  const refusal = whyNotOffered(who, where);
  if (refusal !== undefined) return { session, isOffered: false, says: refusal };
  const cost = costIfIn(filling, person, session);
  if (cost === undefined) return { session, isOffered: true, says: `${date} cannot hold the visit, whoever moves` };
  const loss = daysOfTier(cost - filling.cost);
  if (loss.days <= 0)
    return {
      session,
      isOffered: true,
      says: `${date} would be as good in all: it can be had, and somebody else may have to change for it`,
    };
  return {
    session,
    isOffered: true,
    says: `${date} would cost ${days(loss.days)} more in all, counted for ${tierWords[loss.tier] ?? ''}`,
  };
}

/** Sessions before the one proposed (all of them, for who has none), in order of day. */
export function whyNotEarlier(
  request: FillRequest,
  filling: Filling,
  person: number,
  proposed: number | null,
): EarlierSession[] {
  const before = proposed === null ? Number.POSITIVE_INFINITY : request.sessions[proposed]!.day;
  return [...request.sessions.keys()]
    .filter((session) => request.sessions[session]!.day < before)
    .toSorted((a, b) => request.sessions[a]!.day - request.sessions[b]!.day)
    .map((session) => sentenceFor(request, filling, person, session));
}

export type Worth = {
  readonly session: number;
  /** What is saved, in days of the most urgent tier that gains. */
  readonly tier: number;
  readonly days: number;
};

/** What one more nurse through the whole of a session, so many minutes of each, would save; most first. */
export function worthOfOneMoreNurse(filling: Filling, minutesOf: readonly number[]): Worth[] {
  // Nurse minutes, those not reserved; nothing more of chairs, first visits and places.
  const more = (minutes: number): number[] =>
    filling.arrangement.places.has.map((_, resource) => (resource < 2 ? minutes : 0));
  return minutesOf
    .map((minutes, session) => ({ session, saved: savedByMore(filling, more(minutes), session) }))
    .toSorted((a, b) => b.saved - a.saved)
    .map(({ session, saved }) => ({ session, ...daysOfTier(saved) }));
}

/** What one more visit of a kind (its minutes of nurse and chair) would save in each session; most first, nothing left out. */
export function worthOfOneMore(request: FillRequest, filling: Filling, kind: number): Worth[] {
  const urgent = filling.arrangement.places.use[kindIndex({ ...request.people[0]!, kind, tier: 2 })]!;
  return [...request.sessions.keys()]
    .map((session) => ({ session, saved: savedByMore(filling, urgent, session) }))
    .toSorted((a, b) => b.saved - a.saved)
    .map(({ session, saved }) => ({ session, ...daysOfTier(saved) }));
}
