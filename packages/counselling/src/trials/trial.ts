/** A trial as data: whom it took, how long it ran, what it found, each figure with its own source. */
import type { Measure } from '../risk.ts';
import type { Interval, Share, Source } from '../source.ts';

export type Outcome =
  | 'hip fracture'
  | 'any clinical fracture'
  | 'spine fracture seen on X-ray'
  | 'spine fracture that was felt'
  | 'fracture outside the spine'
  | 'death';

export type Relative = {
  readonly measure: Measure;
  readonly value: number;
  readonly interval: Interval | 'not published where we looked';
  readonly source: Source;
};

export type Effect = {
  readonly outcome: Outcome;
  readonly relative: Relative | undefined;
  readonly treated: Share | undefined;
  readonly untreated: Share | undefined;
  /** What the trial itself says of it. */
  readonly found: 'fewer' | 'no clear difference';
};

export type Trial = {
  /** In a sentence: "a large trial of the yearly drip in women". */
  readonly title: string;
  /** Who took part, in words a person can read. */
  readonly tookPart: string;
  readonly ages: { readonly from: number; readonly to: number } | undefined;
  readonly people: { readonly treated: number; readonly untreated: number };
  /** The time over which its figures are told. */
  readonly years: number;
  readonly comparedWith: string;
  readonly effects: readonly Effect[];
  readonly source: Source;
};

export const effectOn = (trial: Trial, outcome: Outcome): Effect | undefined =>
  trial.effects.find((effect) => effect.outcome === outcome);
