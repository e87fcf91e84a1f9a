/** Readiness as it crosses the wire: the clinical core's ReadinessView, field for field (a type test keeps them alike). */
import type { ReadinessView } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date, verdict, windowView } from './basics.ts';

const workingView = z.object({
  says: z.string(),
  inputs: z.array(z.object({ label: z.string(), text: z.string(), on: date.optional(), entry: z.string().optional() })),
  formulas: z.array(z.object({ name: z.string(), put: z.string(), gives: z.string(), source: z.string() })),
  thresholds: z.array(z.object({ label: z.string(), text: z.string(), source: z.string(), status: z.string() })),
  cautions: z.array(z.string()),
  protocolVersion: z.string(),
});

export const requirementView = z.object({
  id: z.string(),
  title: z.string(),
  today: z.object({
    verdict,
    cause: z.string(),
    until: date.optional(),
    nearLimit: z.boolean(),
    exception: z.boolean(),
  }),
  onDate: z.object({ verdict, cause: z.string(), nearLimit: z.boolean(), exception: z.boolean() }).optional(),
  working: workingView,
  workingOnDate: workingView.optional(),
  clearedBy: z.string(),
  exceptionPossible: z.boolean(),
});

export const nextStepView = z.object({
  kind: z.string(),
  what: z.string(),
  who: z.string(),
  earliest: date,
  latest: date.optional(),
  effectFrom: date,
  assumed: z.boolean(),
  why: z.string(),
});

export const readinessView = z.object({
  today: date,
  on: date,
  protocolVersion: z.string(),
  regimen: z.string().optional(),
  verdict,
  nearLimit: z.boolean(),
  headline: z.string(),
  verdictOn: verdict,
  headlineOn: z.string(),
  window: windowView.optional(),
  noWindow: z.object({ says: z.string(), needs: z.array(z.string()), ifSettled: z.string().optional() }).optional(),
  nextSteps: z.array(nextStepView),
  requirements: z.array(requirementView),
  askedOnTheDay: z.array(z.string()),
  place: date.optional(),
  cautions: z.array(z.string()),
});
/** The wire form of the core's view: branded dates are plain texts here. */
export type ReadinessWire = z.infer<typeof readinessView>;
export const readinessToWire = (view: ReadinessView): ReadinessWire => view as unknown as ReadinessWire;
