import type { Act, PlainDate, PutOffReason } from '@twelvemonth/clinical';

type Decide = Extract<Act, { name: 'decide' }>;

/** A put-off with every question answered; its day is later than any of these tests. */
export const putOff = (reasonCode: PutOffReason, more: Partial<Decide> = {}): Decide => ({
  name: 'decide',
  patient: 'p1',
  decision: 'put off',
  reasonCode,
  couldHaveBeenSeen: 'only today',
  nextStep: 'ring them, then another place',
  nextBy: '2029-06-01' as PlainDate,
  nextOwner: 'nurse',
  tellsThePatient: 'told at the chair',
  ...more,
});
