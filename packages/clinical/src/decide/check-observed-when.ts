/** What was measured once the medicine was in is never read as from before it, neither newly written nor by a correction. */
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { visitOn } from '../visit/visit.ts';
import type { Line } from './check-line.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';

export function checkObservedWhen(
  record: SubjectRecord,
  { body, on }: Fact<'observations'>,
  { effectiveAt }: Pick<Line, 'effectiveAt'>,
  path: string,
): readonly Refusal[] {
  const visit = visitOn(record, on);
  const began = visit?.infusion?.started ?? (visit?.injected === true ? visit.dose : undefined);
  if (body.when !== 'before' || began === undefined) return [];
  const saysTime = effectiveAt.length > 'YYYY-MM-DD'.length;
  if (saysTime && began.at !== undefined && Date.parse(effectiveAt) < Date.parse(began.at)) return [];
  const beganAt = began.at === undefined ? 'The dose was given' : `The dose began at ${began.at.slice(11, 16)}`;
  return [
    fieldWrong(
      `${path}.body.when`,
      `${beganAt}: what was measured ${saysTime ? 'since' : 'at no time that is said'} is not from before it`,
      'say during or after the dose; if it was measured earlier, give that time',
    ),
  ];
}
