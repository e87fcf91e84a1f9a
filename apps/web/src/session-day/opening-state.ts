/** The opening of a session while it is filled in, and what it still lacks, in words. */
import { type PlainDate, type Role, registrants } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { shortDay } from '../words/dates.ts';
import { type PackCounts, countOf, countsToSend } from './pack-counts.ts';

export type Member = SessionDayView['staff'][number];

export type Opening = {
  readonly here: readonly string[];
  readonly checkers: readonly string[];
  readonly checkedBy: string | undefined;
  readonly complete: 'yes' | 'no' | undefined;
  readonly expiresOn: string | undefined;
  readonly chairs: number | undefined;
  readonly counts: PackCounts;
};

/** Nothing is preset in the morning. Later in the day what was said stands until it is changed; packs are counted each time. */
export const openingFrom = ({ opened }: SessionDayView): Opening => ({
  here: opened?.present.map(({ staff }) => staff) ?? [],
  checkers: opened?.secondCheckers.map(({ staff }) => staff) ?? [],
  checkedBy: opened?.kitCheckedBy,
  complete: opened === undefined ? undefined : opened.kitComplete ? 'yes' : 'no',
  expiresOn: opened?.kitExpiresOn,
  chairs: opened?.chairs,
  counts: {},
});

/** The role somebody is here in: the one in which they may do most at the chair. */
const roleOf = ({ roles }: Member): Role =>
  registrants.find((role) => roles.includes(role)) ?? ((roles[0] ?? 'clerk') as Role);

export function inWords(member: Member): string {
  const shown = member.competences.map(
    ({ what, until, inDate }) => `${what} ${inDate ? 'until' : 'ran out'} ${shortDay(until)}`,
  );
  const role = roleOf(member);
  const nothing = registrants.includes(role) ? ': nothing shown' : '';
  const until = member.onlyToday ? ', for today only' : '';
  return `${member.name}, ${role}${until}${shown.length === 0 ? nothing : `: ${shown.join(', ')}`}`;
}

/** Who may be here, whoever may check first: the administrator and the auditor are not at the chair. */
export const chairsideOf = ({ staff }: SessionDayView): readonly Member[] =>
  staff
    .filter(({ roles }) => roles.some((role) => role !== 'administrator' && role !== 'auditor'))
    .toSorted((a, b) => Number(b.mayCheck) - Number(a.mayCheck));

/** What is to be done next, in the order of the form; undefined: it can be sent. */
export function lackingIn(opening: Opening, { batches, opened }: SessionDayView): string | undefined {
  const { here, checkers, checkedBy, complete, expiresOn, chairs, counts } = opening;
  if (here.length === 0) return 'Who is here?';
  if (opened === undefined && checkers.length === 0) return 'Who may check?';
  if (checkedBy === undefined || complete === undefined || expiresOn === undefined) return 'Look at the emergency kit';
  if (chairs === undefined) return 'How many chairs?';
  const uncounted = batches.some(({ batch, isHere }) => isHere && countOf(counts, batch).packs === undefined);
  return opened === undefined && uncounted ? 'Count the packs' : undefined;
}

/** What is sent; undefined while something is lacking. */
export function bodyOf(opening: Opening, data: SessionDayView) {
  const { here, checkers, checkedBy, complete, expiresOn, chairs, counts } = opening;
  if (checkedBy === undefined || complete === undefined || expiresOn === undefined || chairs === undefined)
    return undefined;
  return {
    present: data.staff
      .filter(({ staff }) => here.includes(staff))
      .map((member) => ({ staff: member.staff, role: roleOf(member) })),
    secondCheckers: checkers,
    kit: { checkedBy, complete: complete === 'yes', expiresOn: expiresOn as PlainDate },
    chairs,
    counts: countsToSend(counts, data),
  };
}

/** Somebody who is not here makes no check, and is not who looked at the kit this morning. */
export function withHere(opening: Opening, here: readonly string[], isAnew: boolean): Opening {
  const { checkedBy } = opening;
  return {
    ...opening,
    here,
    checkers: opening.checkers.filter((staff) => here.includes(staff)),
    checkedBy: isAnew || checkedBy === undefined || here.includes(checkedBy) ? checkedBy : undefined,
  };
}
