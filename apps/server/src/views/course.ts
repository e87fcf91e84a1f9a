/** The course of treatment for the course strip. */
import {
  type Course,
  type SubjectRecord,
  addMonths,
  counted,
  day,
  factsOf,
  nextDoseInWords,
  plainDate,
  shortDate,
} from '@twelvemonth/clinical';
import type { CourseView } from '@twelvemonth/exchange';

export function courseViewOf(record: SubjectRecord, course: Course): CourseView {
  const { due, recall } = course;
  const countingNumber = new Map(course.doses.map((dose, index) => [dose.id, index + 1]));
  return {
    ...(course.regimen === undefined ? {} : { regimen: course.regimen.title }),
    doses: factsOf(record, 'dose').map(({ id, on, body }) => ({
      entry: id,
      number: countingNumber.get(id) ?? 0,
      on: plainDate(on),
      medicine: body.medicine,
      setting: body.setting,
      ...(body.batch === undefined ? {} : { batch: body.batch }),
      part: body.partMilliliters !== undefined,
      counts: countingNumber.has(id),
    })),
    planned: course.planned?.count ?? 0,
    thisCourse: course.doses.length,
    lifetime: course.lifetime,
    also: course.given
      .filter(({ medicine, doses }) => medicine !== course.regimen?.medicine && doses > 0)
      .map(({ medicine, doses }) => `${medicine}: ${counted(doses, 'dose')}`),
    nextDose: nextDoseInWords(course),
    firstTimer: course.firstTimer,
    ...(due === undefined ? {} : { due: plainDate(due) }),
    ...(recall === undefined ? {} : { recallFrom: plainDate(recall.from) }),
    ...(recall?.bloods === undefined
      ? {}
      : { bloodsBetween: { from: plainDate(recall.bloods.from), until: plainDate(recall.bloods.until) } }),
    ...(course.review === undefined ? {} : { inReview: course.review.says }),
    marks: marksOf(record).toSorted((a, b) => (a.from < b.from ? -1 : 1)),
  };
}

/** Denosumab holds for six months: the strip shows each injection as long. */
const denosumabMonths = 6;

function marksOf(record: SubjectRecord): CourseView['marks'] {
  return [
    ...factsOf(record, 'fracture').map(({ on, body }) => ({
      kind: 'fracture' as const,
      from: plainDate(on),
      says: body.dateKnown ? `${body.site} fracture` : `${body.site} fracture, day not known`,
    })),
    ...factsOf(record, 'medicine').flatMap(({ on, body }) =>
      body.sort === 'bisphosphonate tablet'
        ? [
            {
              kind: 'tablets' as const,
              from: plainDate(on),
              ...(body.stoppedOn === undefined ? {} : { until: body.stoppedOn }),
              says: body.name,
            },
          ]
        : [],
    ),
    ...factsOf(record, 'reaction').map(({ on, body }) => ({
      kind: 'reaction' as const,
      from: plainDate(on),
      says: `${body.severity}: ${body.what}`,
    })),
    ...factsOf(record, 'dose').flatMap(({ on, body }) =>
      body.medicine.startsWith('denosumab')
        ? [
            {
              kind: 'denosumab' as const,
              from: plainDate(on),
              until: plainDate(addMonths(on, denosumabMonths)),
              says: body.medicine,
            },
          ]
        : [],
    ),
    ...factsOf(record, 'course-review').map(({ on, body }, index, reviews) => {
      const more = `${body.capacity === undefined ? '' : `by ${body.capacity === 'specialist' ? 'a specialist' : 'another prescriber'}; `}${body.reason}`;
      if (body.outcome !== 'planned break')
        return { kind: 'review' as const, from: plainDate(on), says: `review: ${body.outcome}`, more };
      // A later review ends a break before its time.
      const next = reviews[index + 1]?.on;
      const reviewOn = day(body.reviewOn);
      return {
        kind: 'break' as const,
        from: plainDate(on),
        until: plainDate(next !== undefined && next < reviewOn ? next : reviewOn),
        says: 'planned break',
        more: `review on ${shortDate(reviewOn)}; ${more}`,
      };
    }),
  ];
}
