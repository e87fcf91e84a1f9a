import type { Day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { heldBy } from '../standing/standing.ts';

/**
 * The no to all contact that holds on a day: nothing is sent to the person until care is reopened. Within a day a no is read
 * before a dose, whichever was written first; one that was written after what holds the person on that day is heard all the same.
 */
export function noContactWanted(record: SubjectRecord, on: Day): Fact<'refusal'> | undefined {
  const { held, by } = heldBy(record, on);
  const toAll = factsOf(record, 'refusal').filter(({ on: saidOn, body }) => saidOn <= on && body.to === 'all contact');
  return toAll.findLast(
    (said) =>
      by !== undefined && ((held === 'said no' && by.id === said.id) || (by.on === said.on && by.seq < said.seq)),
  );
}
