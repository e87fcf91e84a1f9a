/** Each step of a visit in its turn, and once. */
import type { Visit } from '../visit/visit.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

export const outOfOrder = (says: string, remedy: string): readonly Refusal[] => [
  refusal('step-out-of-order', says, { remedy }),
];
export const alreadyDone = (says: string): readonly Refusal[] => [
  refusal('step-already-done', says, { remedy: 'correct it, or withdraw it with the reason and do it again' }),
];

export function checkGo(visit: Visit): readonly Refusal[] {
  if (visit.decision?.body.decision === 'go') return [];
  return visit.putOff
    ? outOfOrder('The dose was put off.', 'withdraw that decision first, with the reason')
    : outOfOrder('There is no decision to go yet.', 'finish observations and checklist, then decide');
}
