/**
 * Readiness as every face shows it (screen, letter, command line): plain texts and dates, ready to print. Made by
 * `viewOf` from a Readiness; the same sentences everywhere.
 */
import type { PlainDate } from '../calendar/day.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import type { Verdict } from './verdict.ts';

export type WorkingView = {
  readonly says: string;
  readonly inputs: readonly {
    readonly label: string;
    readonly text: string;
    readonly on?: PlainDate;
    readonly entry?: string;
  }[];
  readonly formulas: readonly {
    readonly name: string;
    readonly put: string;
    readonly gives: string;
    readonly source: string;
  }[];
  readonly thresholds: readonly {
    readonly label: string;
    readonly text: string;
    readonly source: string;
    readonly status: string;
  }[];
  readonly cautions: readonly string[];
  readonly protocolVersion: string;
};

export type RequirementView = {
  readonly id: RequirementId;
  readonly title: string;
  readonly today: {
    readonly verdict: Verdict;
    readonly cause: string;
    readonly until?: PlainDate;
    readonly nearLimit: boolean;
    readonly exception: boolean;
  };
  /** On the date asked about (a booked place, a date typed in); absent if that is today. */
  readonly onDate?: {
    readonly verdict: Verdict;
    readonly cause: string;
    readonly nearLimit: boolean;
    readonly exception: boolean;
  };
  readonly working: WorkingView;
  readonly workingOnDate?: WorkingView;
  /** Who can clear it, and whether a prescriber's exception is possible. */
  readonly clearedBy: string;
  readonly exceptionPossible: boolean;
};

export type NextStepView = {
  readonly kind: string;
  readonly what: string;
  readonly who: string;
  readonly earliest: PlainDate;
  readonly latest?: PlainDate;
  readonly effectFrom: PlainDate;
  readonly assumed: boolean;
  readonly why: string;
};

export type ReadinessView = {
  readonly today: PlainDate;
  readonly on: PlainDate;
  readonly protocolVersion: string;
  readonly regimen?: string;
  readonly verdict: Verdict;
  readonly nearLimit: boolean;
  /** "not ready: vitamin D. Possible from Fri 8 Jan 2027" */
  readonly headline: string;
  readonly verdictOn: Verdict;
  readonly headlineOn: string;
  readonly window?: {
    readonly first: PlainDate;
    readonly last?: PlainDate;
    readonly firstSession?: PlainDate;
    readonly lastSession?: PlainDate;
    readonly certain: boolean;
    readonly certainUntil?: PlainDate;
    /** "8 Jan - 2 Mar 2027, if good" */
    readonly says: string;
    readonly waitingFor: readonly { readonly what: string; readonly until: PlainDate }[];
    readonly next?: string;
    readonly runsOut?: string;
    readonly runOn?: string;
    readonly otherwise: readonly string[];
  };
  readonly noWindow?: { readonly says: string; readonly needs: readonly string[]; readonly ifSettled?: string };
  readonly nextSteps: readonly NextStepView[];
  readonly requirements: readonly RequirementView[];
  /** Questions only the day can settle. */
  readonly askedOnTheDay: readonly string[];
  readonly place?: PlainDate;
  readonly cautions: readonly string[];
};
