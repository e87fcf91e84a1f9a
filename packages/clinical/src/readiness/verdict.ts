/**
 * Four verdicts and the one table that combines them. Unknown is never ready.
 */
export const verdicts = ['ready', 'not ready', 'cannot say', 'does not apply'] as const;
export type Verdict = (typeof verdicts)[number];

/** not ready beats cannot say beats ready; does not apply is neutral, unless nothing else is there. */
const weight: Readonly<Record<Verdict, number>> = { 'does not apply': 0, ready: 1, 'cannot say': 2, 'not ready': 3 };

export const worse = (a: Verdict, b: Verdict): Verdict => (weight[a] >= weight[b] ? a : b);

/** The verdict of several together; of none at all: does not apply. */
export const together = (all: readonly Verdict[]): Verdict => all.reduce(worse, 'does not apply');
