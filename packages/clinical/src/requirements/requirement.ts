/**
 * One thing that must hold for a dose: what it says on a day as things stand, and what path could make it hold.
 * A requirement is a function of the evidence and one protocol version; it never sees another requirement, except that a
 * loading that ends on a day asks for a later calcium sample.
 */
import type { Day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Role } from '../ledger/role.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import type { StepKind } from '../readiness/readiness.ts';
import type { Verdict } from '../readiness/verdict.ts';
import type { Working } from '../readiness/working.ts';
import type { Evidence } from './evidence.ts';
import type { Exception } from './exceptions.ts';
import type { LoadingPlan } from './loading.ts';

/** What a requirement says on one day. The same object on two days means: nothing about it has changed between them. */
export type Judgement = {
  readonly verdict: Verdict;
  readonly cause: string;
  readonly nearLimit: boolean;
  readonly exception: Uuid | undefined;
  working(): Working;
};

export type Test = 'creatinine' | 'calcium' | 'vitamin D';

/** What must be done so that a requirement holds on a day, where it may be assumed to come out well. */
export type Needs = {
  readonly draw?: {
    readonly test: Test;
    readonly validDays: number;
    readonly notBefore?: Day;
    readonly neverMeasured: boolean;
    readonly why: string;
  };
  readonly sign?: { readonly results: readonly Uuid[]; readonly why: string };
  /** The weight is needed on the day. */
  readonly weigh?: { readonly validDays: number; readonly neverMeasured: boolean; readonly why: string };
  readonly load?: LoadingPlan & { readonly why: string };
  readonly ask?: {
    readonly what: 'consent' | 'allergies' | 'pregnancy' | 'teeth and jaw' | 'secondary causes' | 'maintenance';
    /** First day on which the answer can be had. */
    readonly notBefore?: Day;
    readonly validDays?: number;
    readonly why: string;
  };
};

/** Why a requirement cannot be assumed to hold, who can settle it, and what of the evidence differs once it is settled in the person's favour. */
export type Blocker = {
  readonly what: string;
  readonly who: Role | 'patient';
  readonly step: StepKind;
  /** Undefined: no date can be told even then. */
  readonly settled: ((evidence: Evidence) => Partial<Evidence>) | undefined;
};

export type Path =
  | { readonly is: 'ready' }
  /** Time alone will do. */
  | { readonly is: 'waiting'; readonly what: string }
  | { readonly is: 'steps'; readonly needs: Needs }
  | { readonly is: 'blocked'; readonly by: Blocker };

export type Judge = {
  /** Days on which the answer or the path may change; others in between it may not. */
  readonly changes: readonly Day[];
  on(day: Day): Judgement;
  /** `loadingEnds`: the plan finishes a loading on that day, at the latest on the day asked about. */
  path(day: Day, loadingEnds?: Day): Path;
};

export type Requirement<Read extends keyof Evidence = keyof Evidence> = {
  readonly id: RequirementId;
  readonly title: string;
  readonly clearedBy: string;
  readonly exceptionPossible: boolean;
  /** All of the evidence that its judge reads: while these are the same, so is the judge. */
  readonly reads: readonly Read[];
  readonly judge: (evidence: Pick<Evidence, Read>, protocol: Protocol) => Judge;
};

export const readyPath: Path = { is: 'ready' };

const noWorking = { inputs: [], formulas: [], thresholds: [], cautions: [] } as const;

/** Why, made when someone opens it. */
type Why = () => Partial<Working> & { readonly says: string };

/** A class, so that all share what makes a whole working of what each has to say (see `StandingSpan`). */
class Judged implements Judgement {
  readonly verdict: Verdict;
  readonly cause: string;
  readonly nearLimit: boolean;
  readonly exception: Uuid | undefined;
  readonly #why: Why;

  constructor(verdict: Verdict, cause: string, nearLimit: boolean, exception: Uuid | undefined, why: Why) {
    this.verdict = verdict;
    this.cause = cause;
    this.nearLimit = nearLimit;
    this.exception = exception;
    this.#why = why;
  }

  working(): Working {
    const { says, inputs, formulas, thresholds, cautions } = this.#why();
    return {
      says,
      inputs: inputs ?? noWorking.inputs,
      formulas: formulas ?? noWorking.formulas,
      thresholds: thresholds ?? noWorking.thresholds,
      cautions: cautions ?? noWorking.cautions,
    };
  }
}

export const judgement = (verdict: Verdict, cause: string, why: Why, nearLimit = false): Judgement =>
  new Judged(verdict, cause, nearLimit, undefined, why);

/** The same, where a prescriber's exception makes it so. */
export const byException = (judged: Judgement, exception: Uuid | undefined): Judgement =>
  new Judged(judged.verdict, judged.cause, judged.nearLimit, exception, () => judged.working());

const noChanges: readonly Day[] = [];

/** A judge whose answer and path are the same on every day. */
export const always = (judged: Judgement, path: Path): Judge => new Always(judged, path);

class Always implements Judge {
  readonly changes: readonly Day[] = noChanges;
  readonly #judged: Judgement;
  readonly #path: Path;

  constructor(judged: Judgement, path: Path) {
    this.#judged = judged;
    this.#path = path;
  }

  on(): Judgement {
    return this.#judged;
  }

  path(): Path {
    return this.#path;
  }
}

/** R9: while a prescriber's exception lasts the requirement is ready, whatever it would be, and says so. */
export function withException(judge: Judge, exception: Exception | undefined, what: string): Judge {
  if (exception === undefined) return judge;
  const lasts = (on: Day): boolean => exception.from <= on && on <= exception.until;
  const passed = new Map<Judgement, Judgement>();
  const passedOver = (judged: Judgement): Judgement =>
    new Judged('ready', `prescriber's exception for ${what}`, false, exception.entry, () => {
      const without = judged.working();
      return {
        ...without,
        says: `A prescriber's exception passes over ${what}: ${exception.reason}. Without it: ${judged.verdict}, ${judged.cause}.`,
        inputs: [
          { label: "prescriber's exception", text: exception.reason, on: exception.from, entry: exception.entry },
          ...without.inputs,
        ],
      };
    });
  return {
    changes: [...judge.changes, (exception.until + 1) as Day],
    on: (on) => {
      const judged = judge.on(on);
      if (!lasts(on)) return judged;
      let shown = passed.get(judged);
      if (shown === undefined) passed.set(judged, (shown = passedOver(judged)));
      return shown;
    },
    path: (on, loadingEnds) => (lasts(on) ? readyPath : judge.path(on, loadingEnds)),
  };
}
