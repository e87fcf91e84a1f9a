/**
 * Places of a session held by people for whom none is looked for: on its list without a window, or of another unit. What they
 * take is not there to be given to others.
 */
import type { Day, Protocol, SessionList, SubjectRecord } from '@twelvemonth/clinical';
import type { VisitKind } from '../fill/request.ts';
import { orderedFor, patientOf } from './people.ts';

export type HeldPlaces = {
  readonly visits: number;
  readonly firstVisits: number;
  readonly nurseMinutes: number;
  readonly chairMinutes: number;
};

type Known = {
  readonly kinds: readonly VisitKind[];
  readonly records: readonly SubjectRecord[];
  readonly protocol: Protocol;
  readonly today: Day;
};

const nobody: HeldPlaces = { visits: 0, firstVisits: 0, nurseMinutes: 0, chairMinutes: 0 };

/** By session. Whose notes are another unit's is taken to need what a first infusion needs: the most. */
export function heldByOthers(
  { kinds, records, protocol, today }: Known,
  lookedFor: { readonly has: (patient: string) => boolean },
): (session: SessionList) => HeldPlaces {
  const known = new Map(records.map((record) => [patientOf(record), record]));
  const kindOf = (patient: string): VisitKind => {
    const record = known.get(patient);
    const name = record === undefined ? undefined : orderedFor(record, protocol, today).kind;
    return kinds.find((kind) => kind.name === name) ?? kinds[0]!;
  };
  return (session) =>
    [...session.taken.values()]
      .filter((patient) => !lookedFor.has(patient))
      .map(kindOf)
      .reduce<HeldPlaces>(
        (held, kind) => ({
          visits: held.visits + 1,
          firstVisits: held.firstVisits + (kind.isFirst ? 1 : 0),
          nurseMinutes: held.nurseMinutes + kind.nurseMinutes,
          chairMinutes: held.chairMinutes + kind.chairMinutes,
        }),
        nobody,
      );
}
