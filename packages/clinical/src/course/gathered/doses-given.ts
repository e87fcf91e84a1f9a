/** Doses and exposure as a review needs them: how late each was, how many in all, how many years of any bisphosphonate. */
import { type Day, addMonths } from '../../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../../record/patient-record.ts';
import type { Course } from '../course.ts';

export type DoseGiven = {
  readonly dose: Fact<'dose'>;
  readonly number: number;
  readonly due: Day | undefined;
  /** Days after the anniversary of the dose before; nought or less: not late. Undefined for the first. */
  readonly daysLate: number | undefined;
};

/** The counting doses of this course against the interval of today's prescription. */
export const dosesGiven = ({ doses, intervalMonths }: Course): readonly DoseGiven[] =>
  doses.map((dose, index) => {
    const before = doses[index - 1];
    const due = before === undefined || intervalMonths === undefined ? undefined : addMonths(before.on, intervalMonths);
    return { dose, number: index + 1, due, daysLate: due === undefined ? undefined : dose.on - due };
  });

export type Exposure = {
  readonly thisCourse: number;
  readonly consecutive: number;
  readonly lifetime: number;
  /** Of the 4 mg product, given for cancer: they count in the lifetime, not in the course. */
  readonly otherProduct: readonly Fact<'dose'>[];
  readonly tabletYears: number;
  /** With a bisphosphonate at work, of any sort; days that overlap count once. */
  readonly years: number;
};

const DAYS_A_YEAR = 365.25;

export function exposureOf(record: SubjectRecord, course: Course, today: Day): Exposure {
  const tabletYears = course.tabletDays / DAYS_A_YEAR;
  return {
    thisCourse: course.doses.length,
    consecutive: course.consecutive,
    lifetime: course.lifetime,
    otherProduct: factsOf(record, 'dose').filter(
      ({ on, body }) => on <= today && body.medicine === 'zoledronic acid 4 mg',
    ),
    tabletYears,
    years: (course.bisphosphonateDays ?? course.tabletDays) / DAYS_A_YEAR,
  };
}
