/** The fields of what is done at the drip, in the words of its forms; a refusal of one is told in the same words. */
export const dripLabels = {
  milliliters: 'Given',
  stoppedBecause: 'Why it was stopped',
  plannedMinutes: 'To run in',
} as const;
