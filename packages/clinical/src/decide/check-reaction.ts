/** A reaction fits itself and what stands on the screen: a grade with its term and version, a stop that was made. */
import type { Day } from '../calendar/day.ts';
import { gradeTexts } from '../formulas/grade-texts.ts';
import { severityOfGrade } from '../formulas/reaction-grade.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { visitOn } from '../visit/visit.ts';
import { fieldWrong } from './check-fields.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

export function checkReaction(record: SubjectRecord, { body, on }: Fact<'reaction'>, path: string): readonly Refusal[] {
  return [...checkGrade(body, path), ...checkStoppedOnScreen(record, body, on, path)];
}

function checkGrade(
  { grade, term, gradeVersion, severity }: Fact<'reaction'>['body'],
  path: string,
): readonly Refusal[] {
  if (grade === undefined) return [];
  if (term === undefined)
    return [fieldWrong(`${path}.term`, 'a grade of nothing', 'which term of the criteria is graded')];
  if (gradeVersion === undefined)
    return [fieldWrong(`${path}.gradeVersion`, 'not said', 'the version of the criteria the grade was read in')];
  const grades = gradeTexts[term].length;
  if (grade > grades) return [fieldWrong(`${path}.grade`, `${term} ends at grade ${grades}`, `1 to ${grades}`)];
  const graded = severityOfGrade(grade);
  return graded === severity
    ? []
    : [fieldWrong(`${path}.severity`, `grade ${grade} is ${graded}, not ${severity}`, `${graded}, or another grade`)];
}

/** Nobody writes that it was stopped while the screen lets it run. */
function checkStoppedOnScreen(
  record: SubjectRecord,
  { infusion: told }: Fact<'reaction'>['body'],
  on: Day,
  path: string,
): readonly Refusal[] {
  const infusion = visitOn(record, on)?.infusion;
  const runs = infusion !== undefined && infusion.finished === undefined && infusion.paused === undefined;
  if (!runs || (told !== 'was paused' && told !== 'was stopped for good')) return [];
  return [
    refusal('step-out-of-order', 'The infusion is running, as far as the notes know.', {
      field: `${path}.infusion`,
      remedy: 'record that it stands still, then what was seen',
    }),
  ];
}
