/** The pack that is in somebody's hand or runs: what a stop of its batch has to reach at once. */
import type { Day } from '../calendar/day.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { visitOn } from '../visit/visit.ts';

export type PackInUse = {
  readonly preparation: Fact<'preparation'>;
  /** `given`: they are still here. */
  readonly state: 'prepared' | 'runs' | 'stands still' | 'given';
  /** Before the second check the batch is the preparer's alone. */
  readonly checked: boolean;
};

/** Of somebody who is at the unit on that day and has not left. */
export function packInUse(record: SubjectRecord, on: Day): PackInUse | undefined {
  const visit = visitOn(record, on);
  if (visit?.preparation === undefined || visit.over || visit.putOff) return undefined;
  const { preparation, infusion, dose, check } = visit;
  const state =
    dose !== undefined
      ? 'given'
      : infusion === undefined
        ? 'prepared'
        : infusion.finished !== undefined
          ? 'given'
          : infusion.paused === undefined
            ? 'runs'
            : 'stands still';
  return { preparation, state, checked: check?.body.agrees === true || infusion !== undefined || dose !== undefined };
}
