/** A unit described, or described anew: the newest description holds. */
import { subject } from '../ledger/subject.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { decided } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideSetUnit(act: ActNamed<'set unit'>, now: Surroundings): Decided {
  const refusals =
    act.body.opensAt >= act.body.closesAt
      ? [fieldWrong('body.closesAt', 'closes before it opens', 'a later time')]
      : [];
  return decided(refusals, () => [draftNow(subject('unit', act.unit), 'unit-settings', act.body, now)]);
}
