import type { Day } from '../calendar/day.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

/** Tries at a vein that failed that day, by whom: after so many (protocol) another pair of hands is asked. */
export function failedTries(record: SubjectRecord, on: Day): ReadonlyMap<string, number> {
  const tries = new Map<string, number>();
  for (const fact of factsOf(record, 'cannula'))
    if (fact.on === on && !fact.body.placed)
      tries.set(fact.author.staff, (tries.get(fact.author.staff) ?? 0) + fact.body.tries);
  return tries;
}
