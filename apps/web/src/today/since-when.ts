import { shortDay } from '../words/dates.ts';

/** The oldest of a pile, or the first of it to come: a sample that is due next week has not waited yet. */
export const sinceWhen = (oldest: string, today: string): string =>
  oldest > today ? `first on ${shortDay(oldest)}` : `oldest ${shortDay(oldest)}`;
