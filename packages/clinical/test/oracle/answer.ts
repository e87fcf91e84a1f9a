/** An answer for one day, and the two ways in which a prescriber changes one: R9, and decisions about an entry. */
import type { BodyOfKind } from '@twelvemonth/clinical';
import type { View } from './view.ts';

export type Answer = {
  readonly verdict: 'ready' | 'not ready' | 'cannot say' | 'does not apply';
  readonly near?: boolean;
};
export const READY: Answer = { verdict: 'ready' };
export const NOT_READY: Answer = { verdict: 'not ready' };
export const CANNOT_SAY: Answer = { verdict: 'cannot say' };

/** R9: the newest of its kind decides. */
export function exceptionHolds(
  view: View,
  requirement: BodyOfKind<'prescriber-exception'>['requirement'],
  day: number,
): boolean {
  const exception = view
    .of('prescriber-exception')
    .filter((fact) => fact.body.requirement === requirement)
    .at(-1);
  if (exception === undefined || day < exception.on) return false;
  return day <= view.day(exception.body.expiresOn) && day - exception.on <= view.world.count('exceptionLongestDays');
}

export const decided = (
  view: View,
  question: BodyOfKind<'prescriber-decision'>['question'],
  ids: readonly string[],
): boolean =>
  view.of('prescriber-decision').some((fact) => fact.body.question === question && fact.body.about === ids[0]);
