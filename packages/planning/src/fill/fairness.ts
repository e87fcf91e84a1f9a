/** Who waits how long, by group: reported, never used to choose. */
import type { FillRequest } from './request.ts';

export type GroupWait = {
  readonly group: string;
  readonly people: number;
  readonly withoutPlace: number;
  /** Days past due of those with a place. */
  readonly medianDaysLate: number;
  readonly ninthDecileDaysLate: number;
};

const atShare = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

export function fairnessOf(request: FillRequest, sessionOf: readonly (number | null)[]): GroupWait[] {
  const groups = new Map<string, number[]>();
  request.people.forEach(({ group }, person) => {
    if (group !== undefined) groups.set(group, [...(groups.get(group) ?? []), person]);
  });
  return [...groups].map(([group, people]) => {
    const late = people
      .flatMap((person) => {
        const session = sessionOf[person] ?? null;
        return session === null ? [] : [Math.max(0, request.sessions[session]!.day - request.people[person]!.due)];
      })
      .toSorted((a, b) => a - b);
    return {
      group,
      people: people.length,
      withoutPlace: people.length - late.length,
      medianDaysLate: atShare(late, 0.5),
      ninthDecileDaysLate: atShare(late, 0.9),
    };
  });
}
