/** A second signature typed in from the day sheet names somebody who works here and may make a second check. */
import { type Act, mayDoAct } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';

/** Undefined: nothing is signed on paper, or by somebody who may. */
export function paperSignatureRefused(act: Act, { accounts }: Pick<AtHand, 'accounts'>): Refused | undefined {
  if (act.name !== 'second check' || act.signedOnPaperBy === undefined) return undefined;
  const signer = accounts.member(act.signedOnPaperBy);
  if (signer?.roles.some((role) => mayDoAct(role, act.name)) === true) return undefined;
  const says = 'Whose signature stands on the paper is not somebody here who may make a second check.';
  return new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field: 'signedOnPaperBy' }] });
}
