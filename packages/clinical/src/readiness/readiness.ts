/**
 * The answer to "may the dose be given, on which dates, what is it waiting for, what next?", as docs/readiness.md defines it.
 */
import type { Day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Role } from '../ledger/role.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import type { Verdict } from './verdict.ts';
import type { Timeline } from './working.ts';

export const stepKinds = [
  'draw',
  'weigh',
  'loading dose',
  'sign results',
  'ask consent',
  'ask allergies',
  'ask pregnancy',
  'ask teeth',
  'look for causes',
  'ask maintenance',
  // Never assumed: their window is only told as "if settled".
  'repeat result',
  'prescriber decides',
  'prescribe',
  'review',
  'record well since',
  'complete identity',
  'settle',
] as const;
export type StepKind = (typeof stepKinds)[number];

/** An act that would move the window. */
export type NextStep = {
  readonly kind: StepKind;
  /** "take bloods (creatinine, calcium) and weigh" */
  readonly what: string;
  /** Whose it is to do. */
  readonly who: Role | 'patient';
  /** First day on which doing it serves, and the day plan S puts it on. */
  readonly earliest: Day;
  /** Last day that still serves the window's first day, or the booked place; undefined: as soon as can be. */
  readonly latest: Day | undefined;
  /** First day on which its effect counts if done on `earliest`. */
  readonly effectFrom: Day;
  /** Assumed to come out well in the window shown. */
  readonly assumed: boolean;
  readonly serves: readonly RequirementId[];
  /** For a draw: what is measured. For loading: how many doses, how many days apart. */
  readonly tests?: readonly ('creatinine' | 'calcium' | 'vitamin D')[];
  readonly doses?: { readonly count: number; readonly everyDays: number; readonly last: Day };
  /** Why, in a sentence. */
  readonly why: string;
};

/** One link of "waiting for": what is waited for and until when. Root first. */
export type WaitingLink = { readonly what: string; readonly until: Day; readonly requirement: RequirementId };

export type Window = {
  readonly first: Day;
  /** Undefined: runs past the horizon. */
  readonly last: Day | undefined;
  /** True where every day of it is ready as things stand; otherwise "if good". */
  readonly certain: boolean;
  /** The days from `first` that are ready as things stand, if any. */
  readonly certainUntil: Day | undefined;
  readonly waitingFor: readonly WaitingLink[];
  /** First day recomputed with the root settled today, and what then holds it. */
  readonly next: { readonly first: Day; readonly what: string } | undefined;
  /** What ends it. */
  readonly runsOut: { readonly requirement: RequirementId; readonly cause: string } | undefined;
  /** What one more step would add: "a draw by 2 Dec 2026 would run on to ...". */
  readonly runOn: { readonly what: string; readonly by: Day; readonly last: Day | undefined } | undefined;
  /** The other branch of a value never measured: "if vitamin D is below 50 nmol/L: from 12 Jan 2027". */
  readonly otherwise: readonly { readonly when: string; readonly first: Day | undefined }[];
};

/** Why there is no window, and from when there would be one if what is never assumed were settled today. */
export type NoWindow = {
  readonly needs: readonly {
    readonly requirement: RequirementId;
    readonly what: string;
    readonly who: Role | 'patient';
  }[];
  readonly ifSettled: { readonly first: Day; readonly last: Day | undefined } | undefined;
};

export type Readiness = {
  readonly subject: string;
  readonly knownSeq: number;
  readonly asked: Day;
  readonly protocolVersion: string;
  readonly regimen: string | undefined;
  /** As things stand, one per requirement, in the protocol's order of gravity. Does not depend on `asked`. */
  readonly timelines: readonly Timeline[];
  readonly window: Window | undefined;
  readonly noWindow: NoWindow | undefined;
  readonly nextSteps: readonly NextStep[];
  /** Set when a place is booked: its date, which steps' latest dates were reckoned from. */
  readonly place: Day | undefined;
};

/** One requirement's answer on one date. */
export type RequirementOn = {
  readonly requirement: RequirementId;
  readonly verdict: Verdict;
  readonly cause: string;
  readonly nearLimit: boolean;
  readonly exception: Uuid | undefined;
};

/** The answer on one date as things stand. */
export type VerdictOn = {
  readonly on: Day;
  readonly verdict: Verdict;
  readonly nearLimit: boolean;
  /** In order of gravity. */
  readonly requirements: readonly RequirementOn[];
  /** "not ready: vitamin D; cannot say: bloods" */
  readonly headline: string;
};
