/**
 * What is known of a body at a glance: each figure with what it was worked out from, the sum and its source. It decides nothing;
 * what decides is a requirement, with a working of its own.
 */
import type { Uuid } from '../ledger/entry.ts';

export type ReadingLine = {
  /** "body mass index" */
  readonly what: string;
  /** "22.7 kg/m2" */
  readonly is: string;
  /** What it rests on, each with its day: "58 kg on 9 Oct 2026". */
  readonly of: string;
  /** The sum with its numbers put in; undefined: read off, not worked out. */
  readonly put: string | undefined;
  readonly source: string | undefined;
  readonly entries: readonly Uuid[];
};

export type ReadingPart = {
  readonly title: 'Body' | 'Bone' | 'Kidneys' | 'Observations';
  readonly lines: readonly ReadingLine[];
  /** What is missing or may mislead. */
  readonly cautions: readonly string[];
};
