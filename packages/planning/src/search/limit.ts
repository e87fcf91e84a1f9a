/** When to stop. Counts make a run repeatable; the callback lets a person or a clock outside end it sooner. */
export type Limit = {
  readonly iterations: number;
  /** Asked from time to time; true ends the run. Nothing in here reads a clock. */
  readonly stop?: () => boolean;
};
