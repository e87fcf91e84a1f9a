/** One case answered whole, in steps: the coming years, the chance of keeping to the wait, the places that would keep to it. */
import { type InSteps } from '../in-steps.ts';
import type { DemandInputs, Offer } from './inputs.ts';
import {
  type LookAhead,
  type LookAheadOptions,
  type WaitTarget,
  lookAheadFrom,
  placesNeededInSteps,
  shareKeeping,
} from './look-ahead.ts';
import { type Future, play } from './play.ts';

export type AheadAnswer = {
  readonly found: LookAhead;
  /** Share of the runs in which nobody who joins in the last year waits longer than the target. */
  readonly chance: number;
  readonly needed: number | undefined;
};

/** A step is one future played. `every`: weeks taken together in what is found. */
export function* aheadInSteps(
  { inputs, offer }: { readonly inputs: DemandInputs; readonly offer: Offer },
  target: WaitTarget,
  options: LookAheadOptions,
  every = 1,
): InSteps<AheadAnswer> {
  const { weeks, runs, seed } = options;
  const futures: Future[] = [];
  for (let run = 0; run < runs; run += 1) {
    futures.push(play(inputs, offer, weeks, seed, run));
    yield;
  }
  return {
    found: lookAheadFrom(futures, offer, options, every),
    chance: shareKeeping(futures, offer, target.weeks),
    needed: yield* placesNeededInSteps(inputs, offer, target, options),
  };
}
