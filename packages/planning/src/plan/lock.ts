/** What of a visit stays when the rest of its day is planned again. */

export const lockNames = ['time', 'chair', 'time and chair'] as const;
export type Lock = (typeof lockNames)[number];

export const holdsTime = (lock: Lock | undefined): boolean => lock === 'time' || lock === 'time and chair';
export const holdsChair = (lock: Lock | undefined): boolean => lock === 'chair' || lock === 'time and chair';
