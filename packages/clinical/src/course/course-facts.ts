/** What the rules of the course read (docs/readiness.md R7): facts up to a day, no thresholds. */
import type { Day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import { type Fact, type SubjectRecord, factsOf, upTo } from '../record/patient-record.ts';

export type CourseFacts = {
  readonly reviews: readonly Fact<'course-review'>[];
  readonly fractures: readonly Fact<'fracture'>[];
  /** Back pain and height loss that nobody has cleared. */
  readonly symptoms: readonly Fact<'symptom'>[];
  /** Pictures of the spine that found a new fracture. */
  readonly newSpineFractures: readonly Fact<'spine-imaging'>[];
  /** Measured, not remembered. */
  readonly heights: readonly Fact<'height'>[];
  readonly steroids: readonly Fact<'medicine'>[];
  readonly scans: readonly Fact<'bone-density'>[];
  /** Signed results of CTX and P1NP. */
  readonly markers: readonly Fact<'result'>[];
};

export function courseFactsOf(whole: SubjectRecord, today: Day): CourseFacts {
  const record = upTo(whole, today);
  const symptoms = factsOf(record, 'symptom').filter(
    ({ body }) => body.what === 'back pain' || body.what === 'height loss',
  );
  const markers = factsOf(record, 'result').filter(({ body }) => body.analyte === 'CTX' || body.analyte === 'P1NP');
  return {
    reviews: factsOf(record, 'course-review'),
    fractures: factsOf(record, 'fracture'),
    symptoms: symptoms.length === 0 ? symptoms : uncleared(record, symptoms),
    newSpineFractures: factsOf(record, 'spine-imaging').filter(({ body }) => body.found === 'new fracture'),
    heights: factsOf(record, 'height').filter(
      ({ body }) => body.which === 'measured now' && body.quantity.comparator === '',
    ),
    steroids: factsOf(record, 'medicine').filter(({ body }) => body.sort === 'steroid'),
    scans: factsOf(record, 'bone-density').filter(({ body }) => body.density.comparator === ''),
    markers: markers.length === 0 ? markers : signedOf(record, markers),
  };
}

function uncleared<Kind extends 'symptom'>(record: SubjectRecord, facts: readonly Fact<Kind>[]): readonly Fact<Kind>[] {
  const cleared = new Set(factsOf(record, 'symptom-cleared').map(({ body }) => body.entry));
  return facts.filter(({ id }) => !cleared.has(id));
}

function signedOf(record: SubjectRecord, results: readonly Fact<'result'>[]): readonly Fact<'result'>[] {
  const signed = new Set<Uuid>();
  for (const { body } of factsOf(record, 'results-signed')) for (const id of body.results) signed.add(id);
  return results.filter(({ id }) => signed.has(id));
}
