/**
 * Work that may take a while, as steps: something is yielded from time to time, so that whoever asks may let others have a
 * turn, show how far it is, or stop.
 */
export type InSteps<Answer> = Generator<void, Answer>;

/** All steps at once. */
export function allOf<Answer>(steps: InSteps<Answer>): Answer {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}
