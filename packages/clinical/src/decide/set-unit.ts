/** A unit described, or described anew: the newest description holds. */
import { subject } from '../ledger/subject.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import type { Refusal } from './refusal.ts';
import { decided } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideSetUnit(act: ActNamed<'set unit'>, now: Surroundings): Decided {
  const refusals: Refusal[] = [];
  if (act.body.opensAt >= act.body.closesAt)
    refusals.push(fieldWrong('body.closesAt', 'closes before it opens', 'a later time'));
  if (!isTimeZone(act.body.zone))
    refusals.push(
      fieldWrong(
        'body.zone',
        `"${act.body.zone}" is not a time zone`,
        'the name of a zone: Europe/London, America/Chicago',
      ),
    );
  return decided(refusals, () => [draftNow(subject('unit', act.unit), 'unit-settings', act.body, now)]);
}

/** Whether this machine's table of zones has the name; without it no date of the unit could be told. */
function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
