/** Decisions that may have been made upon an entry: written after it, about a day not before it. */
import type { KindName } from '../kinds/index.ts';
import type { Fact, SubjectRecord } from './patient-record.ts';

/** What a decision about treatment may rest on. */
const restedOnKinds = [
  'result',
  'weight',
  'height',
  'dental',
  'secondary-causes',
  'condition',
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
] as const satisfies readonly KindName[];
/** What somebody may say they have looked at again: what decisions rested on, a second signature on paper, a put-off seen to. */
export const lookedAgainAtKinds = [
  'withdrawal',
  'second-check',
  'told-ahead',
  'go-decision',
  'advice-answered',
  ...restedOnKinds,
] as const satisfies readonly KindName[];
const restedOn: ReadonlySet<KindName> = new Set(restedOnKinds);
const decisions: ReadonlySet<KindName> = new Set([
  'go-decision',
  'prescription',
  'prescriber-exception',
  'prescriber-decision',
  'course-review',
]);

const isDecisionUpon = (fact: Fact, entry: Fact): boolean =>
  decisions.has(fact.kind) &&
  fact.seq > entry.firstSeq &&
  fact.on >= entry.on &&
  !(fact.kind === 'go-decision' && (fact as Fact<'go-decision'>).body.decision !== 'go');

/** Of an entry that goes now. */
export const madeWhileItStood = (record: SubjectRecord, entry: Fact): readonly Fact[] =>
  restedOn.has(entry.kind) ? record.all.filter((fact) => isDecisionUpon(fact, entry)) : [];

/** Of an entry that was corrected: those made while it still said something else. */
export const madeBeforeItWasCorrected = (record: SubjectRecord, entry: Fact): readonly Fact[] =>
  entry.firstSeq === entry.seq || !restedOn.has(entry.kind)
    ? []
    : record.all.filter((fact) => fact.seq < entry.seq && isDecisionUpon(fact, entry));
