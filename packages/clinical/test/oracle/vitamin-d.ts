/** R4 of docs/readiness.md: vitamin D, its loading and its maintenance, asked for one day. */
import type { OracleFact } from './facts.ts';
import { above, below, exactly } from './fraction.ts';
import type { View } from './view.ts';
import { type Answer, CANNOT_SAY, exceptionHolds, NOT_READY, READY } from './answer.ts';
import { isContradicted, isSigned, last, type Result, resultsOf, type SampleState, stateOf } from './samples.ts';

export type Loading = {
  readonly fact: OracleFact<'vitamin-d-loading'>;
  readonly taken: number;
  readonly lastTaken: number | undefined;
  readonly finishedOn: number | undefined;
  readonly stopped: boolean;
  readonly stoppedOn: number | undefined;
};

export const loadingsOf = (view: View): readonly Loading[] =>
  view.of('vitamin-d-loading').map((fact) => {
    const begins = Math.min(fact.on, view.day(fact.body.startOn));
    const taken = view.of('vitamin-d-taken').filter((dose) => dose.on >= begins);
    let sum = 0;
    let finishedOn: number | undefined;
    // A stop of the same day is of this loading only if it was written after it.
    const stop = view
      .of('vitamin-d-loading-stopped')
      .find((stopped) => stopped.on > fact.on || (stopped.on === fact.on && stopped.seq > fact.seq))?.on;
    let sumAtStop = 0;
    for (const dose of taken) {
      sum += dose.body.doses;
      if (stop !== undefined && dose.on <= stop) sumAtStop = sum;
      if (finishedOn === undefined && sum >= fact.body.doses) finishedOn = dose.on;
    }
    const stopped = stop !== undefined && sumAtStop < fact.body.doses;
    return {
      fact,
      taken: sum,
      lastTaken: last(taken)?.on,
      finishedOn: stopped ? undefined : finishedOn,
      stopped,
      stoppedOn: stopped ? stop : undefined,
    };
  });

export const vitaminDLevel = (view: View): Result | undefined => last(resultsOf(view, 'vitamin D'));

/** The level against the floor of its unit, whatever its date and signature. */
export function levelValue(view: View, level: Result): Answer {
  if (level.good === true) return READY;
  if (isContradicted(view, level)) return CANNOT_SAY;
  const { comparator, value, unit } = level.body.quantity;
  if (unit !== 'nmol/L' && unit !== 'ng/mL') return CANNOT_SAY;
  const floor = view.world.limit(unit === 'nmol/L' ? 'vitaminDFloor' : 'vitaminDFloorNgPerMl');
  if (comparator.startsWith('<')) return above(exactly(value), floor) ? CANNOT_SAY : NOT_READY;
  if (comparator.startsWith('>')) return below(exactly(value), floor) ? CANNOT_SAY : READY;
  return below(exactly(value), floor) ? NOT_READY : READY;
}

const levelState = (view: View, day: number): SampleState => stateOf(view, vitaminDLevel(view), day);

/** "loading after hip repair": whether it is asked for, and whether a finished loading answers it. */
export function hipRepairUnanswered(view: View, day: number): boolean {
  if (!view.world.sheet.hipRepairNeedsLoading) return false;
  if (view.of('dose').some((dose) => dose.body.medicine.startsWith('zoledronic'))) return false;
  const repair = last(view.of('surgery').filter((fact) => fact.body.what !== 'other operation'));
  if (repair === undefined || day - repair.on > view.world.count('hipLookbackDays')) return false;
  return !loadingsOf(view).some(
    (loading) =>
      loading.finishedOn !== undefined &&
      loading.finishedOn <= day &&
      // A loading that is only planned has no entry, and is always after the repair.
      (loading.fact.on > repair.on || loading.fact.ids.length === 0),
  );
}

export function vitaminD(view: View, day: number): Answer {
  if (exceptionHolds(view, 'vitamin D', day)) return READY;
  if (hipRepairUnanswered(view, day)) return NOT_READY;
  const loading = last(loadingsOf(view));
  const level = vitaminDLevel(view);
  const finishedOn = loading?.finishedOn;
  if (finishedOn !== undefined && finishedOn <= day) {
    const newer = level !== undefined && level.on > finishedOn ? level : undefined;
    if (newer === undefined) return loadingStands(view, finishedOn, day);
    // A newer level decides once it is signed; a bad one that waits for its signature is not passed over.
    if (!isSigned(view, newer))
      return levelValue(view, newer).verdict === 'ready' ? loadingStands(view, finishedOn, day) : CANNOT_SAY;
  }
  const byLevel = level === undefined || levelState(view, day) !== 'in date' ? CANNOT_SAY : levelValue(view, level);
  const running = loading !== undefined && !loading.stopped && (finishedOn === undefined || finishedOn > day);
  return running && byLevel.verdict !== 'ready' ? NOT_READY : byLevel;
}

function loadingStands(view: View, finishedOn: number, day: number): Answer {
  const word = maintenanceWord(view, finishedOn);
  const { count } = view.world;
  if (word?.body.taken === false) return CANNOT_SAY;
  if (day <= finishedOn + count('maintenanceConfirmDays')) return READY;
  const confirmed = word !== undefined && day <= word.on + count('maintenanceConfirmDays');
  return confirmed && day <= finishedOn + count('loadingHoldsDays') ? READY : CANNOT_SAY;
}

const maintenanceWord = (view: View, finishedOn: number): OracleFact<'vitamin-d-maintenance'> | undefined =>
  last(view.of('vitamin-d-maintenance').filter((fact) => fact.on > finishedOn));

/** A2: that the daily vitamin D is taken may be asked, where only this word is missing on `day` for a loading ended on C. */
export function maintenanceMayBeAsked(view: View, finishedOn: number, day: number): boolean {
  if (maintenanceWord(view, finishedOn)?.body.taken === false) return false;
  const level = vitaminDLevel(view);
  if (level !== undefined && level.on > finishedOn) return false;
  return (
    loadingStands(view, finishedOn, day).verdict !== 'ready' && day <= finishedOn + view.world.count('loadingHoldsDays')
  );
}

/** R12: a severe lack of vitamin D stands. */
export function severeLack(view: View): boolean {
  const level = vitaminDLevel(view);
  if (level === undefined || level.good === true) return false;
  if (loadingsOf(view).some(({ finishedOn }) => finishedOn !== undefined && finishedOn >= level.on)) return false;
  if (isContradicted(view, level)) return true;
  const { comparator, value, unit } = level.body.quantity;
  if ((unit !== 'nmol/L' && unit !== 'ng/mL') || comparator.startsWith('<')) return true;
  return below(exactly(value), view.world.limit(unit === 'nmol/L' ? 'vitaminDSevere' : 'vitaminDSevereNgPerMl'));
}
