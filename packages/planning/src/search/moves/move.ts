/** A move chooses visits to lift out of the plan; they are put back in another order. */
import type { Draw } from '../../random.ts';
import type { Draft } from '../draft.ts';
import type { Guide } from '../guide.ts';

export type Situation = {
  readonly draft: Draft;
  readonly guide: Guide;
  readonly draw: Draw;
  /** The visits that may be moved. */
  readonly movable: Int16Array;
  /** By visit, for the move's own use. */
  readonly score: Float64Array;
};

/** Writes up to `size` different visits into `chosen`; returns how many. */
export type Move = (situation: Situation, size: number, chosen: Int16Array) => number;
