/** A unit as its latest settings describe it. */
import { type Day, day } from '../calendar/day.ts';
import type { UnitCalendar } from '../calendar/unit-calendar.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { subjectId } from '../ledger/subject.ts';
import type { PlanningSettings } from '../kinds/unit-settings.ts';
import { type Formulary, formularyOf } from './formulary.ts';
import { type GroupDirection, directionsOf } from './group-direction.ts';
import { newestWritten } from '../record/newest-written.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

export type Unit = {
  readonly id: string;
  readonly name: string;
  /** IANA time zone. */
  readonly zone: string;
  readonly chairs: number;
  /** HH:MM */
  readonly opensAt: string;
  readonly closesAt: string;
  readonly minutesBetweenArrivals: number;
  readonly telephone: string;
  readonly emergencyNumber?: string | undefined;
  readonly demo: boolean;
  /** Undefined: nobody has written what planning needs. */
  readonly planning?: PlanningSettings | undefined;
  /** How it writes letters; undefined: nobody has said. */
  readonly letters?: BodyOfKind<'unit-settings'>['letters'];
  readonly stock?: BodyOfKind<'unit-settings'>['stock'];
  readonly reminders?: BodyOfKind<'unit-settings'>['reminders'];
  readonly adviceLine?: BodyOfKind<'unit-settings'>['adviceLine'];
  readonly calendar: UnitCalendar;
  readonly formulary: Formulary;
  /** Absent: none. */
  readonly directions?: readonly GroupDirection[];
  readonly since: Day;
};

/** Undefined: nobody has described the unit yet. */
export function unitOf(record: SubjectRecord): Unit | undefined {
  const settings = newestWritten(record, 'unit-settings');
  if (settings === undefined) return undefined;
  const { sessionWeekdays, bloodWeekdays, closedDays, ...described } = settings.body;
  return {
    ...described,
    id: subjectId(record.subject),
    calendar: {
      bloodWeekdays,
      sessionWeekdays,
      adviceLineWeekdays: settings.body.adviceLine?.weekdays,
      closedDays: closedDays.map(day),
    },
    formulary: formularyOf(record),
    directions: directionsOf(record),
    since: settings.on,
  };
}
