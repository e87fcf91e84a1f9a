/** The last denosumab given, of either strength: the promise with a date. */
import type { Day } from '../calendar/day.ts';
import { isDenosumab } from '../protocol/medicines.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export const lastDenosumab = (record: SubjectRecord, on: Day): Fact<'dose'> | undefined =>
  factsOf(record, 'dose').findLast((dose) => dose.on <= on && isDenosumab(dose.body.medicine));
