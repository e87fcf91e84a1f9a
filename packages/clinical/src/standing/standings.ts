/** Where a patient is in the course of care. Exactly one at any time, with an owner and a date. */
export const standings = [
  'referral received',
  'returned to referrer',
  'in work-up',
  'waiting for a place',
  'booked',
  'here today',
  'put off',
  'between doses',
  'overdue',
  'in review',
  'on planned break',
  'moved to other treatment',
  'transferred out',
  'cannot be reached',
  'said no',
  'died',
  'closed',
  /** Must never be shown: a ledger without a lawful standing. It is a value so that the count can fail. */
  'not accounted for',
] as const;
export type Standing = (typeof standings)[number];

export type StandingNow = {
  readonly standing: Standing;
  /** "put off: bloods; look again on 4 Dec 2026" */
  readonly says: string;
  /** The role that owns the next move, at which unit. */
  readonly owner: string;
  readonly unit: string;
  /** The date by which the owner must act; undefined only where care here is over: died, closed, a transfer acknowledged. */
  readonly on: import('../calendar/day.ts').Day | undefined;
  /** Since when the standing holds. */
  readonly since: import('../calendar/day.ts').Day;
};
