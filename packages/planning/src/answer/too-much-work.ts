/**
 * Stretches of the day into which more work must fall than there are hands or places: the plainest reason why a day is
 * impossible. What must fall into a stretch is counted for each visit without waiting, at the time that suits best; waiting
 * only makes it more.
 */
import { type Capacity, type Day, type Visit, ticksOfCare } from '../day/day.ts';
import { clockAt } from '../day/time-words.ts';

export type Crowded = {
  readonly what: 'nurses' | 'chairs' | 'preparers' | 'checkers';
  readonly from: number;
  readonly until: number;
  /** In ticks of one nurse, chair or person. */
  readonly needed: number;
  readonly available: number;
};

/** Something that takes `ticks` and begins between two moments. */
type Piece = { readonly from: number; readonly until: number; readonly ticks: number; readonly share: number };

function stepPieces(visit: Visit, day: Day): (Piece & { readonly step: number })[] {
  const care = visit.steps.reduce((sum, step) => sum + step.ticks, 0);
  let before = 0;
  return visit.steps.map(({ ticks }, step) => {
    const from = visit.earliest + before;
    const until = Math.min(visit.latest, day.ticks) - care + before;
    before += ticks;
    return { from, until, ticks, share: 1, step };
  });
}

function nursePieces(visit: Visit, day: Day): Piece[] {
  return stepPieces(visit, day).flatMap(({ step, ...piece }) => {
    const nurse = visit.steps[step]?.nurse ?? 'none';
    return nurse === 'none' ? [] : [{ ...piece, share: nurse === 'whole' ? 1 : 1 / day.watchedPerNurse }];
  });
}

function chairPieces(visit: Visit, day: Day): Piece[] {
  if (visit.chair === null) return [];
  const { from, to } = visit.chair;
  const first = stepPieces(visit, day)[from];
  const ticks = visit.steps.slice(from, to + 1).reduce((sum, step) => sum + step.ticks, 0);
  return first === undefined ? [] : [{ from: first.from, until: first.until, ticks, share: 1 }];
}

function dosePieces(visit: Visit, day: Day, of: 'preparationTicks' | 'secondCheckTicks'): Piece[] {
  if (visit.dose === null) return [];
  const { before, preparationTicks, secondCheckTicks } = visit.dose;
  const needed = stepPieces(visit, day)[before];
  if (needed === undefined) return [];
  const isPreparation = of === 'preparationTicks';
  const from = visit.earliest + (isPreparation ? 0 : preparationTicks);
  const until = needed.until - secondCheckTicks - (isPreparation ? preparationTicks : 0);
  return [{ from, until, ticks: visit.dose[of], share: 1 }];
}

const leastInside = ({ from, until, ticks, share }: Piece, start: number, end: number): number =>
  share * Math.max(0, Math.min(ticks, end - start, from + ticks - start, end - until));

/** The most crowded stretch of one resource, if any holds too little. */
function mostCrowded(day: Day, what: Crowded['what'], pieces: readonly Piece[], capacity: Capacity): Crowded[] {
  let worst: Crowded | undefined;
  const starts = [...new Set(pieces.flatMap(({ from, until }) => [from, until]))];
  const ends = [...new Set(pieces.flatMap(({ from, until, ticks }) => [from + ticks, until + ticks, day.ticks]))];
  for (const start of starts) {
    for (const end of ends) {
      if (end <= start) continue;
      const needed = pieces.reduce((sum, piece) => sum + leastInside(piece, start, end), 0);
      const available = capacity.slice(start, end).reduce((sum, count) => sum + count, 0);
      const excess = needed - available;
      if (excess <= 0 || (worst !== undefined && excess <= worst.needed - worst.available)) continue;
      worst = { what, from: start, until: end, needed, available };
    }
  }
  return worst === undefined ? [] : [worst];
}

export function tooMuchWork(day: Day): Crowded[] {
  // Whom their own window cannot hold falls into no stretch of it: that is a reason of its own, told beside these.
  const holdable = day.visits.filter(
    (visit) => Math.min(visit.latest, day.ticks) - visit.earliest >= ticksOfCare(visit),
  );
  const each = (of: (visit: Visit) => Piece[]): Piece[] => holdable.flatMap(of);
  return [
    ...mostCrowded(
      day,
      'nurses',
      each((visit) => nursePieces(visit, day)),
      day.nurses,
    ),
    ...mostCrowded(
      day,
      'chairs',
      each((visit) => chairPieces(visit, day)),
      day.chairs,
    ),
    ...mostCrowded(
      day,
      'preparers',
      each((visit) => dosePieces(visit, day, 'preparationTicks')),
      day.preparers,
    ),
    ...mostCrowded(
      day,
      'checkers',
      each((visit) => dosePieces(visit, day, 'secondCheckTicks')),
      day.checkers,
    ),
  ];
}

const words: Readonly<Record<Crowded['what'], string>> = {
  nurses: 'of nurses’ work',
  chairs: 'of chair time',
  preparers: 'of preparing doses',
  checkers: 'of second checks',
};

export function crowdedSays(day: Day, { what, from, until, needed, available }: Crowded): string {
  const minutes = (ticks: number): number => Math.ceil(ticks * day.minutesPerTick);
  return `Between ${clockAt(day, from)} and ${clockAt(day, until)} at least ${minutes(needed)} minutes ${words[what]} are needed, and there are ${minutes(available)}.`;
}
