/**
 * Every way an act can be refused, in the order in which refusals are named: the first that applies is the headline.
 * The same names serve the interface, the screen and the tests.
 */
export const refusalNames = [
  // Who and whose
  'not-yours-to-do',
  'unknown-patient',
  'already-registered',
  'looks-like-someone-here',
  'read-in-other-notes',
  'notes-not-at-hand',
  'said-already',
  'nobody-said-so-yet',
  'second-person-needed',
  'does-not-agree',
  'has-a-place',
  'unknown-session',
  'unknown-unit',
  'has-died',
  'care-has-ended',
  'no-contact-wanted',
  // What was sent
  'field-wrong',
  'is-it-right',
  'in-the-future',
  'before-birth',
  'no-such-entry',
  'entry-of-another-kind',
  'already-withdrawn',
  'part-of-a-finished-step',
  // The list
  'session-cancelled',
  'session-past',
  'no-such-place',
  'place-taken',
  'already-booked',
  'not-booked-there',
  'outside-the-window',
  'trouble-not-accepted',
  // The day of a session
  'too-few-registrants',
  'no-second-checker',
  'not-in-the-opening',
  'kit-not-ready',
  'session-not-open',
  'no-outcome',
  'letter-missing',
  'does-not-add-up',
  // The visit
  'not-here',
  'already-here',
  'visit-over',
  'step-already-done',
  'step-out-of-order',
  'not-ready',
  'cannot-say',
  'arm-to-avoid',
  'another-operator',
  'wrong-product',
  'pack-expired',
  'batch-stopped',
  'pack-used-before',
  'pack-differs-from-stock',
  'not-in-the-formulary',
  'pack-not-scanned',
  'prescription-not-verified',
  'under-the-minimum-minutes',
  'not-under-the-direction',
  'prescriber-may-not-give',
  'exception-author-may-not-give',
  'checker-is-preparer',
  'not-alone-at-home',
  'check-on-paper-only',
  'checks-differ',
  'not-running',
  'already-running',
  'held-elsewhere',
  'too-early-to-finish',
  'cannot-be-measured',
  'ran-too-fast',
  'more-than-the-dose',
  // The course
  'a-specialist-decides',
  'no-break-on-steroid',
  'needs-what-follows',
  // Deciding
  'cannot-decide-this',
  // Standing
  'not-possible-from-here',
  // Protocol
  'teaching-only',
  'empty-numbers',
  'content-differs',
  'already-signed-by-you',
  'already-in-force',
  // Stock
  'order-closed',
  'unknown-batch',
  'already-stopped',
  'not-stopped',
  // Import
  'row-unknown',
  'row-already-settled',
] as const;
export type RefusalName = (typeof refusalNames)[number];

export type Refusal = {
  readonly name: RefusalName;
  /** A sentence a nurse can read. */
  readonly says: string;
  /** Where in what was sent: "body.quantity.unit". */
  readonly field?: string;
  /** What to do instead. */
  readonly remedy?: string;
};
