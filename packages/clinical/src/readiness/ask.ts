/**
 * "May this dose be given on date D, asked on day T?" `readiness` answers for every D at once; `verdictOn` reads one date from
 * the answer. Rules: docs/readiness.md.
 */
import type { Day } from '../calendar/day.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import type { DecisionContext } from './context.ts';
import { headlineOf } from './headline.ts';
import { type Unsettled, unsettled } from './no-window.ts';
import { type Plan, firstPlan, planFor } from './plan.ts';
import type { NextStep, Readiness, RequirementOn, VerdictOn } from './readiness.ts';
import { stepsOf } from './steps.ts';
import { together } from './verdict.ts';
import { windowOf } from './window.ts';
import type { Span, Timeline } from './working.ts';
import { type World, protocolOn, timelineFrom, worldOf } from './world.ts';

export type AskedWith = {
  /** A booked place: steps' latest dates are reckoned from it. */
  readonly place?: Day;
};

export function readiness(
  record: SubjectRecord,
  context: DecisionContext,
  today: Day,
  options: AskedWith = {},
): Readiness {
  const place = options.place !== undefined && options.place >= today ? options.place : undefined;
  return new Asked(record, worldOf(evidenceOf(record, today), context), place);
}

/** Undefined: not yet worked out. What was worked out may itself be undefined. */
type Made<T> = { readonly value: T } | undefined;

/**
 * Each part is worked out when it is first read: a list wants no next steps, a verdict no window. A class, so that its getters
 * lie on the prototype (see `FoundWindow`).
 */
class Asked implements Readiness {
  readonly subject: string;
  readonly knownSeq: number;
  readonly asked: Day;
  readonly protocolVersion: string;
  readonly regimen: string | undefined;
  readonly timelines: readonly Timeline[];
  readonly place: Day | undefined;
  readonly #world: World;
  #plan: Made<Plan | undefined>;
  #window: Made<Readiness['window']>;
  #unsettled: Made<Unsettled | undefined>;
  #nextSteps: Made<readonly NextStep[]>;

  constructor(record: SubjectRecord, world: World, place: Day | undefined) {
    const protocol = protocolOn(world, world.today);
    this.subject = record.subject;
    this.knownSeq = record.lastSeq;
    this.asked = world.today;
    this.protocolVersion = protocol?.version ?? 'none in force';
    this.regimen = protocol?.regimen.title;
    this.timelines = world.order.map((id) => timelineFrom(world, id, world.today));
    this.place = place;
    this.#world = world;
  }

  get window(): Readiness['window'] {
    if (this.#window === undefined) {
      const plan = this.#firstPlan();
      this.#window = { value: plan === undefined ? undefined : windowOf(this.#world, plan) };
    }
    return this.#window.value;
  }

  get noWindow(): Readiness['noWindow'] {
    return this.#whatIsUnsettled()?.noWindow;
  }

  get nextSteps(): readonly NextStep[] {
    this.#nextSteps ??= {
      value: this.#whatIsUnsettled()?.steps ?? stepsFor(this.#world, this.#firstPlan(), this.place),
    };
    return this.#nextSteps.value;
  }

  #firstPlan(): Plan | undefined {
    return (this.#plan ??= { value: firstPlan(this.#world) }).value;
  }

  #whatIsUnsettled(): Unsettled | undefined {
    return (this.#unsettled ??= { value: this.#firstPlan() === undefined ? unsettled(this.#world) : undefined }).value;
  }
}

/** Steps for the booked place where there can be a plan for it, else for the first day. */
function stepsFor(world: World, first: Plan | undefined, place: Day | undefined): readonly NextStep[] {
  if (first === undefined) return [];
  const forPlace = place === undefined || place < first.on ? undefined : planFor(world, place);
  const plan = forPlace ?? first;
  return stepsOf(world, plan, plan.on, true);
}

/** The span of a timeline a day falls in. The day may not lie before the one asked on. */
export function standsOn(timeline: Timeline, day: Day): Span {
  const span = timeline.spans.findLast(({ from }) => from <= day);
  if (span === undefined) throw new RangeError('asked about a day before the one asked on');
  return span;
}

/** The answer on one date as things stand. Questions only the day can settle are not in it: see `goVerdict`. */
export function verdictOn(asked: Readiness, day: Day): VerdictOn {
  const requirements = asked.timelines.map((timeline): RequirementOn => {
    const { verdict, cause, nearLimit, exception } = standsOn(timeline, day);
    return { requirement: timeline.requirement, verdict, cause, nearLimit, exception };
  });
  return {
    on: day,
    verdict: together(requirements.map(({ verdict }) => verdict)),
    nearLimit: requirements.some(({ nearLimit }) => nearLimit),
    requirements,
    headline: headlineOf(requirements),
  };
}
