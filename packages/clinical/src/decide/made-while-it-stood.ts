/** Decisions that may have been made upon an entry: written after it, about a day not before it, in force when it goes. */
import type { KindName } from '../kinds/index.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';

/** What a decision about treatment may rest on. */
const restedOn: ReadonlySet<KindName> = new Set([
  'result',
  'weight',
  'height',
  'dental',
  'illness',
  'well-since',
  'surgery',
  'fracture',
  'symptom',
  'symptom-cleared',
  'allergy',
  'pregnancy',
  'medicine',
  'consent',
  'dose',
  'vitamin-d-taken',
  'vitamin-d-maintenance',
]);
const decisions: ReadonlySet<KindName> = new Set([
  'go-decision',
  'prescription',
  'prescriber-exception',
  'prescriber-decision',
  'course-review',
]);

export const madeWhileItStood = (record: SubjectRecord, entry: Fact): readonly Fact[] =>
  restedOn.has(entry.kind)
    ? record.all.filter(
        (fact) =>
          decisions.has(fact.kind) &&
          fact.seq > entry.seq &&
          fact.on >= entry.on &&
          !(fact.kind === 'go-decision' && (fact as Fact<'go-decision'>).body.decision !== 'go'),
      )
    : [];
