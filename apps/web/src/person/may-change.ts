import { isKindName, movableKinds } from '@twelvemonth/clinical';

/** Which entries a person corrects or withdraws by hand. The mirror of a list and the record of an act are changed by acts. */
const notByHand = new Set([
  'place-booked',
  'place-given-up',
  'go-decision',
  'second-check',
  'infusion-started',
  'dose-held',
  'infusion-paused',
  'infusion-resumed',
  'infusion-finished',
  'withdrawal',
  'same-person',
  'moved-here',
  'advice-call',
  'support-booking',
  'letter',
  'letter-drafted',
  'letter-sent',
  'letter-answered',
  'message-begun',
  'message-ended',
  'patient-pack',
  'own-page',
  'page-sent',
  'reminders-plan',
  'told-ahead',
  'pharmacy-check',
  'pharmacy-answer',
  'aftercare',
]);

export const isCorrectable = (kind: string): boolean => !notByHand.has(kind) && kind !== 'results-signed';
export const isWithdrawable = (kind: string): boolean =>
  kind !== 'withdrawal' &&
  kind !== 'same-person' &&
  kind !== 'own-page' &&
  kind !== 'reminders-plan' &&
  kind !== 'place-booked' &&
  kind !== 'place-given-up';

export const isMovable = (kind: string): boolean => isKindName(kind) && movableKinds.has(kind);
