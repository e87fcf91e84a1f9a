/**
 * Work that may take a while, as steps: something is yielded from time to time, so that whoever asks may let others have a
 * turn, show how far it is, or stop.
 */
export type InSteps<Answer, Step = void> = Generator<Step, Answer>;

/** Steps that each say how much is done, from 0 to 1; it never goes back. */
export type InShares<Answer> = InSteps<Answer, number>;

/** All steps at once. */
export function allOf<Answer, Step>(steps: InSteps<Answer, Step>): Answer {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}

/** Steps that are a part of longer work: their shares lie between two shares of it. */
export function* partOf<Answer>(steps: InShares<Answer>, from: number, until: number): InShares<Answer> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    yield from + step.value * (until - from);
  }
}
