/** How the common entry kinds read as text. Every other kind has the form of its fields (value-text.ts). */
import type { Form } from './form.ts';

/** What a person is called where a case does not say: cases are about bodies, not names. */
const unnamed = { given: 'Nobody', family: 'Named', number: '999 000 0000' } as const;

/** Who decided a review of the course. */
const whoDecided = [
  { words: 'by a specialist', sets: { capacity: 'specialist' } },
  { words: 'by another prescriber', sets: { capacity: 'other prescriber' } },
  'decided by {decidedBy}',
];

export const forms: readonly Form[] = [
  {
    kind: 'identity',
    head: 'person {sex}, born {born}',
    clauses: ['named {given} {family}', 'number {number}', 'title {title}', 'formerly {formerNames}'],
    unsaid: unnamed,
  },
  {
    kind: 'identity',
    head: 'person sex not recorded, born {born}',
    clauses: ['named {given} {family}', 'number {number}', 'title {title}', 'formerly {formerNames}'],
    unsaid: unnamed,
  },
  { kind: 'weight', head: 'weight {quantity} {method}', clauses: ['caution {caution}'] },
  { kind: 'height', head: 'height {quantity} {which}' },
  { kind: 'results-signed', head: 'signed {results}', clauses: ['note {note}'] },
  {
    kind: 'vitamin-d-loading',
    head: 'vitamin D loading {doses} dose(s) of {unitsPerDose} IU every {everyDays} days from {startOn}',
  },
  { kind: 'vitamin-d-loading-stopped', head: 'vitamin D loading stopped {reason}' },
  { kind: 'vitamin-d-taken', head: 'vitamin D taken {doses} dose(s), {source}' },
  {
    kind: 'vitamin-d-maintenance',
    head: 'vitamin D maintenance taken',
    fixed: { taken: true },
    clauses: ['product {product}'],
  },
  {
    kind: 'vitamin-d-maintenance',
    head: 'vitamin D maintenance not taken',
    fixed: { taken: false },
    clauses: ['product {product}'],
  },
  {
    kind: 'result',
    head: '{analyte} {quantity}',
    clauses: [
      'limits {referenceLow} to {referenceHigh}',
      'low limit {referenceLow}',
      'high limit {referenceHigh}',
      { words: 'acute admission', sets: { acuteAdmission: true } },
      { words: 'no acute admission', sets: { acuteAdmission: false } },
      'laboratory {laboratory}',
    ],
  },
  { kind: 'illness', head: '{sort} {what}' },
  { kind: 'well-since', head: 'well since', clauses: ['note {note}'] },
  { kind: 'surgery', head: 'surgery {what}', clauses: ['note {note}'] },
  {
    kind: 'fracture',
    head: 'fracture {site}',
    clauses: [
      { words: 'day not known', sets: { dateKnown: false } },
      'bone {bone}',
      'treatment {treated}',
      'note {note}',
    ],
    unsaid: { dateKnown: true },
  },
  {
    kind: 'bone-density',
    head: 'bone density {site} {density}',
    clauses: ['scanner {scanner}', 'side {side}', 'T {tScore}', 'Z {zScore}', 'least change {leastChange}'],
  },
  { kind: 'spine-imaging', head: 'spine imaging {method} {found}', clauses: ['levels {levels}'] },
  { kind: 'adherence', head: 'adherence {medicine} {taken}, {source}', clauses: ['note {note}'] },
  { kind: 'symptom', head: 'symptom {what}', clauses: ['note {note}'] },
  { kind: 'symptom-cleared', head: 'symptom cleared {entry} {finding}', clauses: ['question {question}'] },
  { kind: 'allergy', head: 'allergy none known', fixed: { answer: 'none known' } },
  { kind: 'allergy', head: 'allergy bisphosphonate {reaction}', fixed: { answer: 'bisphosphonate' } },
  {
    kind: 'allergy',
    head: 'allergy other {substance}',
    fixed: { answer: 'other' },
    clauses: ['medicine {medicine}', 'reaction {reaction}'],
  },
  { kind: 'pregnancy', head: 'pregnancy does not apply {reason}', fixed: { answer: 'does not apply' } },
  { kind: 'pregnancy', head: 'pregnancy no', fixed: { answer: 'no' } },
  { kind: 'pregnancy', head: 'pregnancy yes', fixed: { answer: 'pregnant' } },
  { kind: 'pregnancy', head: 'breast-feeding', fixed: { answer: 'breast-feeding' } },
  {
    kind: 'baseline-risk',
    head: 'risk of {of} {percent} percent over {years} years by {instrument}',
    clauses: [
      'from {lowPercent} percent',
      'to {highPercent} percent',
      { words: 'very frail', sets: { veryFrail: true } },
      'note {note}',
    ],
    unsaid: { veryFrail: false },
  },
  {
    kind: 'talk',
    head: 'talk {topics}, {teachBack}, decided {decision}',
    clauses: [
      { words: 'card given', sets: { cardGiven: true } },
      'matters {matters}',
      'with {present}',
      'leaflet {leaflet}',
      'words {words}',
      'ask again on {askAgainOn}',
    ],
    unsaid: { cardGiven: false },
  },
  {
    kind: 'capacity',
    head: 'capacity can decide this',
    fixed: { answer: 'can decide this' },
    clauses: ['helped by {helped}'],
  },
  {
    kind: 'capacity',
    head: 'capacity cannot decide this {because}, tried {tried}, may return {mayReturn}',
    fixed: { answer: 'cannot decide this' },
  },
  { kind: 'consent', head: 'consent given {how}', fixed: { decision: 'given' } },
  {
    kind: 'consent',
    head: 'consent best interest {basis}, consulted {consulted}',
    fixed: { decision: 'best interest' },
  },
  { kind: 'consent', head: 'consent not given', fixed: { decision: 'not given' }, clauses: ['reason {reason}'] },
  {
    kind: 'prescription',
    head: 'prescription {regimen} from {validFrom} to {validUntil}',
    clauses: [
      'ordered as {orderedAs}',
      'direction {groupDirection}',
      'planned doses {plannedDoses}',
      'interval {interval.months} months {interval.reason}',
      'conditions {conditions}',
    ],
  },
  {
    kind: 'dose',
    head: 'dose {medicine}, {setting}',
    clauses: [
      'batch {batch}',
      'part {partMilliliters} mL',
      'ran {minutes} minutes',
      'checked by {checkedBy}',
      'checked {checkedWhen}',
      'incident {incident}',
      'until {until}',
    ],
  },
  {
    kind: 'course-review',
    head: 'course review carry on to {toDoses} dose(s), {reason}',
    fixed: { outcome: 'carry on' },
    clauses: whoDecided,
  },
  {
    kind: 'course-review',
    head: 'course review planned break until {reviewOn}, triggers {triggers}, {reason}',
    fixed: { outcome: 'planned break' },
    clauses: ['counted from {countedFrom}', ...whoDecided],
  },
  {
    kind: 'course-review',
    head: 'course review other treatment {to} due {dueOn}, {reason}',
    fixed: { outcome: 'other treatment' },
    clauses: whoDecided,
  },
  { kind: 'course-review', head: 'course review stop, {reason}', fixed: { outcome: 'stop' }, clauses: whoDecided },
  {
    kind: 'course-review',
    head: 'course review new course of {plannedDoses} dose(s), {reason}',
    fixed: { outcome: 'new course' },
    clauses: whoDecided,
  },
  { kind: 'prescriber-exception', head: 'exception {requirement} until {expiresOn}, {reason}' },
  {
    kind: 'prescriber-decision',
    head: 'decision {question} about {about}, {reason}',
    clauses: ['pharmacist {pharmacist}'],
  },
  { kind: 'condition', head: 'condition {what}', clauses: ['note {note}'] },
  { kind: 'secondary-causes', head: 'secondary causes {answer}', clauses: ['note {note}'] },
  { kind: 'dental', head: 'teeth {answer}', clauses: ['checked {checkedOn}', 'note {note}'] },
  { kind: 'place-booked', head: 'place {place} on {on} at {arriveAt}, unit {unit}, session {session}' },
  { kind: 'place-given-up', head: 'place given up, session {session}, asked by {askedBy}, {reason}' },
  {
    kind: 'call',
    head: 'call {route} about {about}',
    clauses: [
      { words: 'reached', sets: { reached: true } },
      { words: 'not reached', sets: { reached: false } },
      'call back on {callBackOn}',
      'note {note}',
    ],
  },
  { kind: 'refusal', head: 'said no to {to}, {words}', clauses: ['ask again on {askAgainOn}'] },
  { kind: 'withdrawal', head: 'withdraw {entry}, {reason}' },
];
