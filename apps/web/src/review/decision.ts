/** A review while it is being decided, what it would be as an entry, and as a choice to tell what follows from. */
import { type ReviewChoice, day } from '@twelvemonth/clinical';

export const outcomeWords = [
  { value: 'carry on', says: 'Carry on' },
  { value: 'planned break', says: 'A planned break' },
  { value: 'other treatment', says: 'Another treatment' },
  { value: 'new course', says: 'Begin again: a new course' },
  { value: 'stop', says: 'Stop' },
] as const;
export type Outcomes = (typeof outcomeWords)[number]['value'];

export type Decision = {
  readonly outcome: Outcomes | undefined;
  readonly toDoses: number | undefined;
  readonly plannedDoses: number | undefined;
  readonly reviewOn: string | undefined;
  readonly triggers: string;
  readonly to: string;
  readonly dueOn: string | undefined;
  readonly capacity: 'specialist' | 'other prescriber' | undefined;
  readonly decidedBy: string;
  readonly reason: string;
};
export const nothingDecided: Decision = {
  outcome: undefined,
  toDoses: undefined,
  plannedDoses: undefined,
  reviewOn: undefined,
  triggers: '',
  to: '',
  dueOn: undefined,
  capacity: undefined,
  decidedBy: '',
  reason: '',
};

/** The body of the entry. What is not filled in is left out, so that the server names it. */
export function bodyOf(decision: Decision): Record<string, unknown> {
  const { outcome, capacity, decidedBy, reason } = decision;
  const own: Record<Outcomes, Record<string, unknown>> = {
    'carry on': { toDoses: decision.toDoses },
    'planned break': { reviewOn: decision.reviewOn, triggers: decision.triggers },
    'other treatment': { to: decision.to, dueOn: decision.dueOn },
    'new course': { plannedDoses: decision.plannedDoses },
    stop: {},
  };
  return {
    outcome,
    ...(outcome === undefined ? {} : own[outcome]),
    capacity,
    ...(decidedBy.trim() === '' ? {} : { decidedBy }),
    reason,
  };
}

/** Undefined while something that what follows depends on is not filled in. */
export function choiceOf({ outcome, toDoses, plannedDoses, reviewOn, to, dueOn }: Decision): ReviewChoice | undefined {
  switch (outcome) {
    case undefined:
      return undefined;
    case 'carry on':
      return toDoses === undefined ? undefined : { outcome, toDoses };
    case 'planned break':
      return reviewOn === undefined ? undefined : { outcome, reviewOn: day(reviewOn) };
    case 'other treatment':
      return dueOn === undefined ? undefined : { outcome, to: to.trim(), dueOn: day(dueOn) };
    case 'new course':
      return plannedDoses === undefined ? undefined : { outcome, plannedDoses };
    case 'stop':
      return { outcome };
  }
}
