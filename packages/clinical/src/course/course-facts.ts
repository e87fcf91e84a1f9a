/** What the rules of the course read (docs/readiness.md R7): facts up to a day, no thresholds. */
import type { Day } from '../calendar/day.ts';
import type { Uuid } from '../ledger/entry.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

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

export function courseFactsOf(record: SubjectRecord, today: Day): CourseFacts {
  const upTo = <Kind extends 'fracture' | 'spine-imaging' | 'height' | 'medicine' | 'bone-density' | 'course-review'>(
    kind: Kind,
  ): readonly Fact<Kind>[] => {
    const facts = factsOf(record, kind);
    const newest = facts[facts.length - 1];
    return newest === undefined || newest.on <= today ? facts : facts.filter(({ on }) => on <= today);
  };
  const symptoms = factsOf(record, 'symptom').filter(
    ({ on, body }) => on <= today && (body.what === 'back pain' || body.what === 'height loss'),
  );
  const markers = factsOf(record, 'result').filter(
    ({ on, body }) => on <= today && (body.analyte === 'CTX' || body.analyte === 'P1NP'),
  );
  return {
    reviews: upTo('course-review'),
    fractures: upTo('fracture'),
    symptoms: symptoms.length === 0 ? symptoms : uncleared(record, symptoms, today),
    newSpineFractures: upTo('spine-imaging').filter(({ body }) => body.found === 'new fracture'),
    heights: upTo('height').filter(({ body }) => body.which === 'measured now' && body.quantity.comparator === ''),
    steroids: upTo('medicine').filter(({ body }) => body.sort === 'steroid'),
    scans: upTo('bone-density').filter(({ body }) => body.density.comparator === ''),
    markers: markers.length === 0 ? markers : signedOf(record, markers, today),
  };
}

function uncleared<Kind extends 'symptom'>(
  record: SubjectRecord,
  facts: readonly Fact<Kind>[],
  today: Day,
): readonly Fact<Kind>[] {
  const cleared = new Set(
    factsOf(record, 'symptom-cleared')
      .filter(({ on }) => on <= today)
      .map(({ body }) => body.entry),
  );
  return facts.filter(({ id }) => !cleared.has(id));
}

function signedOf(record: SubjectRecord, results: readonly Fact<'result'>[], today: Day): readonly Fact<'result'>[] {
  const signed = new Set<Uuid>();
  for (const { on, body } of factsOf(record, 'results-signed'))
    if (on <= today) for (const id of body.results) signed.add(id);
  return results.filter(({ id }) => signed.has(id));
}
