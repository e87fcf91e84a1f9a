/** What a rule says about a plan that breaks it, for a nurse to read. */
import type { Day, Tick } from '../day/day.ts';
import type { Plan } from '../plan/plan.ts';

export type RuleName =
  | 'everyone is seen'
  | 'times are complete'
  | 'window'
  | 'arrival'
  | 'order of the steps'
  | 'dose'
  | 'nobody waits who must not'
  | 'nurses'
  | 'chairs'
  | 'one to a chair'
  | 'watch places'
  | 'preparation'
  | 'second check';

export type Sentence = {
  readonly rule: RuleName;
  /** When it is broken; null where no moment can be named. */
  readonly from: Tick | null;
  readonly until: Tick | null;
  /** The visits concerned, by their place in the day. */
  readonly visits: readonly number[];
  readonly says: string;
};

/** One rule: every way in which the plan breaks it. */
export type Rule = (day: Day, plan: Plan) => readonly Sentence[];
