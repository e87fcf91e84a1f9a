/** What a review would want and the notes do not have. Nothing here stops a decision: it is filled, or decided without. */
import { type Day, addMonths } from '../../calendar/day.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import { type SubjectRecord, factsOf } from '../../record/patient-record.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { steroidsOn } from '../steroids.ts';
import { densitiesThen } from './density.ts';
import { untoldSpineFractures } from './fractures.ts';
import { markersThen } from './markers-then.ts';
import type { Gap } from './review-sheet.ts';

export function gapsOf(
  record: SubjectRecord,
  facts: CourseFacts,
  course: Course,
  protocol: Protocol,
  today: Day,
): readonly Gap[] {
  const firstDose = course.doses[0]?.on;
  const lately = addMonths(today, -protocol.number.failureTreatmentMonths);
  const since = (kind: 'adherence' | 'height' | 'symptom' | 'spine-imaging'): boolean =>
    factsOf(record, kind).some(({ on, body }) => on > lately && on <= today && (kind !== 'height' || isMeasured(body)));
  const densities = densitiesThen(facts, firstDose, protocol);
  const gaps: (Gap | undefined)[] = [
    untoldSpineFractures(facts, firstDose).length === 0
      ? undefined
      : { says: 'Imaging found a new spine fracture: write it as a fracture too.', kind: 'fracture' },
    densities.some(({ newest }) => newest.on > (firstDose ?? lately))
      ? undefined
      : { says: 'No bone density scan since the first dose.', kind: 'bone-density' },
    densities.length === 0 || densities.some(({ first }) => first !== undefined)
      ? undefined
      : { says: 'No two scans that can be compared.', kind: 'bone-density' },
    markersThen(facts, firstDose).some(({ newest }) => newest.on > lately)
      ? undefined
      : { says: 'No signed bone marker in the last year.', kind: 'result' },
    since('height') ? undefined : { says: 'Height not measured in the last year.', kind: 'height' },
    since('spine-imaging') ? undefined : { says: 'No picture of the spine in the last year.', kind: 'spine-imaging' },
    since('adherence')
      ? undefined
      : { says: 'Nobody has asked in the last year how much calcium and vitamin D is taken.', kind: 'adherence' },
    steroidsOn(facts, today).some(({ body }) => body.prednisoloneMgPerDay === undefined)
      ? { says: 'The daily dose of a steroid is not known.', kind: 'medicine' }
      : undefined,
  ];
  return gaps.filter((gap) => gap !== undefined);
}

const isMeasured = (body: unknown): boolean => (body as { readonly which?: string }).which === 'measured now';
