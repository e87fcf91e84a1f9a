/** What a year came to, counted in its own days: 0 to 364. */
import type { CourseOfDose } from './course-of-dose.ts';
import type { YearAssumptions } from './assumptions.ts';

export const yearDays = 364;

export type YearMeasures = {
  readonly foreseeableTurnAways: number;
  readonly otherTurnAways: number;
  readonly didNotCome: number;
  /** Of the people referred in the year; those never given count as longer than any. */
  readonly medianDaysToFirstDose: number;
  readonly ninthDecileDaysToFirstDose: number;
  /** Samples beyond the first of a dose. */
  readonly repeatDraws: number;
  /** Later doses that were not given by the last day on time, if that day lies in the year. */
  readonly overdue: number;
  readonly given: number;
};

const inYear = (on: number): boolean => on >= 0 && on < yearDays;

const quantile = (sorted: Float64Array, share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

export function measuresOf(courses: readonly CourseOfDose[], { onTimeDays }: YearAssumptions): YearMeasures {
  const turnedAway = courses.flatMap((course) => course.turnedAway.filter(({ on }) => inYear(on)));
  const referred = courses.filter(({ dose }) => dose.isFirst && inYear(dose.knownOn));
  const days = Float64Array.from(referred, ({ givenOn = Infinity, dose }) => givenOn - dose.knownOn).toSorted();
  return {
    foreseeableTurnAways: turnedAway.filter(({ foreseeable }) => foreseeable).length,
    otherTurnAways: turnedAway.filter(({ foreseeable }) => !foreseeable).length,
    didNotCome: courses.reduce((sum, course) => sum + course.didNotCome.filter(inYear).length, 0),
    medianDaysToFirstDose: quantile(days, 0.5),
    ninthDecileDaysToFirstDose: quantile(days, 0.9),
    repeatDraws: courses.reduce((sum, { drawnOn }) => sum + drawnOn.slice(1).filter(inYear).length, 0),
    overdue: courses.filter(({ dose, givenOn = Infinity }) => {
      const last = dose.due + onTimeDays;
      return !dose.isFirst && inYear(last) && givenOn > last;
    }).length,
    given: courses.filter(({ givenOn }) => givenOn !== undefined && inYear(givenOn)).length,
  };
}
