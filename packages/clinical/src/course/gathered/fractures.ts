/** Fractures beside the doses of this course: which came on treatment, after which dose, and which count. */
import type { Day } from '../../calendar/day.ts';
import type { Fact } from '../../record/patient-record.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';

export type FractureThen = {
  readonly fracture: Fact<'fracture'>;
  /** 0: before the first dose of this course. */
  readonly afterDose: number;
  readonly daysAfterDose: number | undefined;
  /** `may count`: of a site nobody named, or on a day nobody knows. */
  readonly onTreatment: 'counts' | 'may count' | 'before treatment';
};

export function fracturesThen(facts: CourseFacts, { doses }: Pick<Course, 'doses'>): readonly FractureThen[] {
  return facts.fractures.map((fracture) => {
    const before = doses.filter(({ on }) => on < fracture.on);
    const last = before[before.length - 1];
    const onTreatment =
      last === undefined
        ? 'before treatment'
        : fracture.body.dateKnown && fracture.body.site !== 'other'
          ? 'counts'
          : 'may count';
    return {
      fracture,
      afterDose: before.length,
      daysAfterDose: last === undefined ? undefined : fracture.on - last.on,
      onTreatment,
    };
  });
}

/** New fractures that only a picture of the spine tells of: no spine fracture is written since the first dose. */
export function untoldSpineFractures(facts: CourseFacts, firstDose: Day | undefined): readonly Fact<'spine-imaging'>[] {
  if (firstDose === undefined) return [];
  const told = facts.fractures.some(({ on, body }) => body.site === 'spine' && on > firstDose);
  return told ? [] : facts.newSpineFractures.filter(({ on }) => on > firstDose);
}
