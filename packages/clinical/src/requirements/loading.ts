/**
 * A loading course of vitamin D as far as it has come (docs/readiness.md R4), and the days on which the doses that are left
 * would fall (A2).
 */
import { type Day, addDays, day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Fact } from '../record/patient-record.ts';

export type Loading = {
  /** Undefined where a plan assumes it. */
  readonly entry: Uuid | undefined;
  /** Day of the prescription, or of the first dose of an assumed one. */
  readonly dated: Day;
  readonly startOn: Day;
  readonly doses: number;
  readonly everyDays: number;
  readonly taken: number;
  readonly lastTaken: Day | undefined;
  readonly state:
    | { readonly is: 'running' }
    | { readonly is: 'finished'; readonly on: Day }
    | { readonly is: 'stopped'; readonly on: Day };
};

/** Every loading, oldest first. Doses count from the first day of a loading, or from its own date if that is earlier. */
export function loadingsBy(
  loadings: readonly Fact<'vitamin-d-loading'>[],
  taken: readonly Fact<'vitamin-d-taken'>[],
  stops: readonly Fact<'vitamin-d-loading-stopped'>[],
): Loading[] {
  return loadings.map(({ id, on, seq, body }) => {
    const startOn = day(body.startOn);
    const countFrom = Math.min(startOn, on);
    let count = 0;
    let lastTaken: Day | undefined;
    let finishedOn: Day | undefined;
    for (const one of taken) {
      if (one.on < countFrom) continue;
      count += one.body.doses;
      lastTaken = one.on;
      if (finishedOn === undefined && count >= body.doses) finishedOn = one.on;
    }
    // A loading prescribed on the day another was stopped is not stopped by it.
    const stoppedOn = stops.find((one) => one.on > on || (one.on === on && one.seq > seq))?.on;
    const state: Loading['state'] =
      finishedOn !== undefined && (stoppedOn === undefined || finishedOn <= stoppedOn)
        ? { is: 'finished', on: finishedOn }
        : stoppedOn !== undefined
          ? { is: 'stopped', on: stoppedOn }
          : { is: 'running' };
    return {
      entry: id,
      dated: on,
      startOn,
      doses: body.doses,
      everyDays: body.everyDays,
      taken: count,
      lastTaken,
      state,
    };
  });
}

export type LoadingPlan = {
  readonly sort: 'remaining doses' | 'new loading';
  readonly count: number;
  readonly everyDays: number;
  readonly first: Day;
  /** Day of the last dose: the loading is finished on it. */
  readonly last: Day;
};

/** The doses of a running loading that are left, each as early as the prescription and the last dose allow, none before today. */
export function remainingDoses(loading: Loading, today: Day): LoadingPlan {
  let previous = loading.lastTaken;
  let first: Day | undefined;
  for (let dose = loading.taken + 1; dose <= loading.doses; dose += 1) {
    const prescribed = addDays(loading.startOn, loading.everyDays * (dose - 1));
    const spaced = previous === undefined ? today : addDays(previous, loading.everyDays);
    previous = Math.max(prescribed, spaced, today) as Day;
    first ??= previous;
  }
  if (first === undefined || previous === undefined) throw new RangeError('a running loading with no dose left');
  return {
    sort: 'remaining doses',
    count: loading.doses - loading.taken,
    everyDays: loading.everyDays,
    first,
    last: previous,
  };
}
