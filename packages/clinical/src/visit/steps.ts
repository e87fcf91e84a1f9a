/** The steps of a visit, in the order in which they are taken. */
export const visitSteps = [
  'arrive',
  'observations',
  'checklist',
  'decision',
  'cannula',
  'flush',
  'preparation',
  'second check',
  'injection',
  'infusion',
  'removal',
  'observe',
  'leave',
] as const;
export type VisitStepName = (typeof visitSteps)[number];

/** done; running: under way now; waiting: it is this step's turn; to come: an earlier one is open; left out: it will not be. */
export type StepState = 'done' | 'running' | 'waiting' | 'to come';

/** The steps of the drip: what a visit is until a go says that something is injected. */
export const dripSteps: readonly VisitStepName[] = visitSteps.filter((step) => step !== 'injection');
