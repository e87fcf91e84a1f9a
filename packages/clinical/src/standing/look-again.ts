/**
 * After how many days someone looks again, where no entry names a date. These are habits of a service, not thresholds of a
 * treatment: common practice, no source, except where one is named.
 */
export const lookAgainAfterDays = {
  /** Five working days to decide on a referral: the wait this service allows itself. */
  'referral received': 7,
  'returned to referrer': 28,
  'in work-up': 28,
  'waiting for a place': 7,
  'put off': 7,
  overdue: 7,
  'in review': 28,
  'said no to this dose': 84,
  'said no to this medicine': 28,
  'said no to all contact': 365,
} as const;
