/**
 * "May this dose be given on date D, asked on day T?" `readiness` answers for every D at once; `verdictOn` reads one date from
 * the answer. Rules: docs/readiness.md.
 */
import type { Day } from '../calendar/day.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import type { DecisionContext } from './context.ts';
import { headlineOf } from './headline.ts';
import { unsettled } from './no-window.ts';
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
  const world = worldOf(evidenceOf(record, today), context);
  const protocol = protocolOn(world, today);
  const plan = firstPlan(world);
  const place = options.place !== undefined && options.place >= today ? options.place : undefined;
  const none = plan === undefined ? unsettled(world) : undefined;
  return {
    subject: record.subject,
    knownSeq: record.lastSeq,
    asked: today,
    protocolVersion: protocol?.version ?? 'none in force',
    regimen: protocol?.regimen.title,
    timelines: world.order.map((id) => timelineFrom(world, id, today)),
    window: plan === undefined ? undefined : windowOf(world, plan),
    noWindow: none?.noWindow,
    nextSteps: none?.steps ?? stepsFor(world, plan, place),
    place,
  };
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
