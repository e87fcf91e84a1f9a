import { Link } from '@tanstack/react-router';
import { courseStrip } from '@twelvemonth/charts';
import { day } from '@twelvemonth/clinical';
import type { CourseView } from '@twelvemonth/exchange';
import { Picture } from '../drawing/Picture.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { betweenInWords, dayInWords } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import { useUnitWords } from '../words/american.ts';

/** Where the person is in their course: doses, what happened between them, what is due. */
export function Course({ patient, course, today }: { patient: string; course: CourseView; today: string | undefined }) {
  const serviceToday = useServiceToday();
  const data = {
    today: day(today ?? serviceToday),
    doses: course.doses.map(({ on, number, part }) => ({ on: day(on), number, part })),
    marks: course.marks.map(({ kind, from, until, says, more }) => ({
      kind,
      from: day(from),
      says,
      more,
      ...(until === undefined ? {} : { until: day(until) }),
    })),
    ...(course.due === undefined ? {} : { due: { on: day(course.due), number: course.thisCourse + 1 } }),
  };
  const words = useUnitWords();
  return (
    <section aria-labelledby="course">
      <h2 id="course">Course</h2>
      <p className="quiet">
        {dotted(
          course.regimen,
          `${course.thisCourse} of ${course.planned} planned doses given`,
          course.lifetime !== course.thisCourse && `${course.lifetime} in all`,
          course.due !== undefined && `next due ${dayInWords(course.due)}`,
          course.recallFrom !== undefined && `recall from ${dayInWords(course.recallFrom)}`,
          course.bloodsBetween !== undefined && words(`bloods ${betweenInWords(course.bloodsBetween)}`),
          course.inReview,
          course.also.length > 0 && `also given: ${course.also.join(', ')}`,
        )}{' '}
        <Link className="screenOnly" to="/people/$patient/review" params={{ patient }}>
          review of the course
        </Link>
        {course.doses.length > 0 && (
          <>
            {' · '}
            <Link className="screenOnly" to="/people/$patient/batches" params={{ patient }}>
              batches given
            </Link>
          </>
        )}
      </p>
      {course.doses.length + course.marks.length > 0 && <Picture draw={(width) => courseStrip(data, { width })} />}
    </section>
  );
}
