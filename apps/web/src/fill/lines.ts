/** The lines of a proposal: who gets which place, who is moved and for what, whether bloods are drawn; and who has none. */
import { type Day, type UnitCalendar, addDays, day, lastBloodDay, shortDate } from '@twelvemonth/clinical';
import type { ActBody, FillView } from '@twelvemonth/exchange';
import { tierNames, whyNotOffered } from '@twelvemonth/planning';
import { counted } from '../words/texts.ts';
import type { Proposed } from './fill.worker.ts';

type SessionOfView = FillView['sessions'][number];
type Place = SessionOfView['free'][number];

export type Line = {
  readonly person: number;
  readonly patient: string;
  readonly seq: number;
  readonly name: string;
  readonly tier: (typeof tierNames)[number];
  readonly kind: string;
  readonly from: SessionOfView | undefined;
  readonly to: SessionOfView;
  /** The place proposed; undefined: the list is full until somebody else has been moved from it. */
  readonly place: Place | undefined;
  /** Where the list is full: who is to be moved from it first. */
  readonly after: readonly string[];
  readonly bloods: string;
  /** What a move is for. */
  readonly gain: string | undefined;
  /** The window with its reasons, and the day it is meant for. */
  readonly why: string;
};

export type WithoutPlace = Pick<Line, 'person' | 'patient' | 'name' | 'tier' | 'kind' | 'why'> & {
  /** The place they have been told: nobody takes it from them but a person. */
  readonly told: SessionOfView | undefined;
};

export const savedWords = (days: number, tier: number): string =>
  `${counted(days, 'day')} in all (tier: ${tierNames[tier] ?? 'other'})`;

/** What the unit says of blood days, and the protocol of how long bloods count. */
export type BloodRules = { readonly calendar: UnitCalendar; readonly validDays: number | undefined };

/** Drawn so that they are in date on the day and can be used by then; booked, the notes give the exact days. */
function bloodWords({ request }: Proposed, person: number, on: string, { calendar, validDays }: BloodRules): string {
  const bloods = request.people[person]?.bloods ?? null;
  if (bloods === null) return 'those there are hold';
  if (bloods.usableUntil !== null && bloods.usableUntil >= day(on))
    return `hold until ${shortDate(bloods.usableUntil)}`;
  const inDate = validDays === undefined ? bloods.drawFrom : addDays(day(on), -validDays);
  const from = Math.max(bloods.drawFrom, inDate) as Day;
  const until = lastBloodDay(calendar, addDays(day(on), -bloods.daysToResult), from);
  if (until === undefined) return `to be drawn on ${shortDate(from)}, which is no blood day: ask`;
  return from === until
    ? `to be drawn on ${shortDate(from)}`
    : `to be drawn from ${shortDate(from)} to ${shortDate(until)}`;
}

function whyWords(request: Proposed['request'], person: number): string {
  const { earliest, latest, due } = request.people[person]!;
  return `Possible from ${shortDate(earliest.day)} (${earliest.because}) to ${shortDate(latest.day)} (${latest.because}); meant for ${shortDate(due)}.`;
}

function gainWords({ request }: Proposed, { person, from, gain }: Proposed['changes'][number]): string | undefined {
  if (from === null) return undefined;
  if (gain !== null)
    return gain.days === 0
      ? 'somebody who was told has to move; another could as well'
      : `saves ${savedWords(gain.days, gain.tier)}, the move itself counted as ${counted(request.weights.moveTold, 'day')}`;
  return `the place told cannot stay: ${whyNotOffered(request.people[person]!, request.sessions[from]!) ?? 'the session cannot hold it'}`;
}

/** Who has a first visit comes first: they take longest, and last on a list they make it run over. */
function placesFor(view: FillView, proposed: Proposed): ReadonlyMap<number, Place> {
  const places = new Map<number, Place>();
  view.sessions.forEach(({ free }, session) => {
    const comers = proposed.changes
      .filter(({ to }) => to === session)
      .map(({ person }) => person)
      .toSorted((a, b) => Number(isFirst(proposed, b)) - Number(isFirst(proposed, a)) || a - b);
    comers.forEach((person, index) => {
      const place = free[index];
      if (place !== undefined) places.set(person, place);
    });
  });
  return places;
}

const isFirst = ({ request }: Proposed, person: number): boolean =>
  request.kinds[request.people[person]!.kind]?.isFirst === true;

export function linesOf(view: FillView, proposed: Proposed, rules: BloodRules): readonly Line[] {
  const { request, changes } = proposed;
  const places = placesFor(view, proposed);
  return changes
    .flatMap((change) => {
      const { person, from, to: toIndex } = change;
      const [who, to] = [request.people[person], view.sessions[toIndex ?? -1]];
      const of = view.people[person];
      if (who === undefined || to === undefined || of === undefined) return [];
      return [
        {
          person,
          ...of,
          name: who.name,
          tier: tierNames[who.tier],
          kind: request.kinds[who.kind]?.name ?? '',
          from: from === null ? undefined : view.sessions[from],
          to,
          place: places.get(person),
          after: places.has(person)
            ? []
            : changes.flatMap((one) => (one.from === toIndex ? (request.people[one.person]?.name ?? []) : [])),
          bloods: bloodWords(proposed, person, to.on, rules),
          gain: gainWords(proposed, change),
          why: whyWords(request, person),
        },
      ];
    })
    .toSorted(
      (a, b) =>
        (a.to.on < b.to.on ? -1 : a.to.on > b.to.on ? 1 : 0) ||
        (a.place?.arriveAt ?? '~').localeCompare(b.place?.arriveAt ?? '~') ||
        a.person - b.person,
    );
}

export const withoutPlaceOf = (view: FillView, { request, session }: Proposed): readonly WithoutPlace[] =>
  session.flatMap((to, person) => {
    const [who, of] = [request.people[person], view.people[person]];
    if (to !== null || who === undefined || of === undefined) return [];
    return [
      {
        person,
        patient: of.patient,
        name: who.name,
        tier: tierNames[who.tier],
        kind: request.kinds[who.kind]?.name ?? '',
        why: whyWords(request, person),
        told: who.told === null ? undefined : view.sessions[who.told],
      },
    ];
  });

/** The ordinary act of booking, with its own checks; what was read of the notes is said with it. */
export function actOf({ patient, from, to, gain }: Line, place: number): ActBody['act'] {
  return from === undefined
    ? { name: 'book', patient, session: to.session, place }
    : {
        name: 'move',
        patient,
        from: from.session,
        to: to.session,
        place,
        reason: `suggested when the sessions were filled: ${gain ?? ''}`,
        askedBy: 'the unit',
      };
}

/** What the line rests on: the person's notes as the proposal read them, the list as it was looked at just now. */
export const seenOf = ({ patient, seq, to }: Line, seqOfList: number): Readonly<Record<string, number>> => ({
  [`patient/${patient}`]: seq,
  [`session/${to.session}`]: seqOfList,
});
