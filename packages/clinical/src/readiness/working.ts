/**
 * Why a verdict is what it is, as compact data. Sentences are made from it only when someone opens it.
 * There is no verdict without one.
 */
import type { Day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { NumberKey } from '../protocol/number-keys.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';

/** Something that went into a verdict: a label, its text with unit, the day it was true, the entry it came from. */
export type Input = { readonly label: string; readonly text: string; readonly on?: Day; readonly entry?: Uuid };

/** A number of the protocol that decided, by its key: value, unit and source are looked up when shown. */
export type Threshold =
  | { readonly key: NumberKey }
  | { readonly label: string; readonly text: string; readonly source: string };

export type FormulaShown = {
  readonly name: string;
  /** With the numbers put in: "(140 - 84) x 56.2 kg x 1.04 / 79 umol/L". */
  readonly put: string;
  /** "41.4 mL/min (just below 35)" where it needs saying. */
  readonly gives: string;
  readonly source: string;
};

export type Working = {
  /** The one line: "34.99 mL/min by one form, 35.11 by the other; limit 35". */
  readonly says: string;
  readonly inputs: readonly Input[];
  readonly formulas: readonly FormulaShown[];
  readonly thresholds: readonly Threshold[];
  /** What a reader must be told beside it. */
  readonly cautions: readonly string[];
};

/** What a spell of days is like for one requirement, and why. */
export type Span = {
  readonly from: Day;
  /** Last day, included; undefined: from then on. */
  readonly until: Day | undefined;
  readonly verdict: import('./verdict.ts').Verdict;
  /** Names the cause in a few words, for headlines and bars: "vitamin D", "bloods of 9 Oct 2026 run out". */
  readonly cause: string;
  /** True where a ready is within the protocol's band near a limit: what to do is in the working. */
  readonly nearLimit: boolean;
  /** The exception entry that makes it ready, if one does. */
  readonly exception: Uuid | undefined;
  working(): Working;
};

export type Timeline = {
  readonly requirement: RequirementId;
  /** Ascending, touching, from the first day asked about to for ever. */
  readonly spans: readonly Span[];
};
