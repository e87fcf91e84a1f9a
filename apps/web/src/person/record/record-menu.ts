/** What can be written by hand in a person's notes, in groups as a nurse looks for it. */
import type { KindName } from '@twelvemonth/clinical';

/** Two are forms of their own: the results of one sample, and signing results. */
export type RecordChoice = KindName | 'sample';

export const recordMenu: readonly { readonly group: string; readonly choices: readonly RecordChoice[] }[] = [
  {
    group: 'Bloods and measures',
    choices: ['sample', 'results-signed', 'weight', 'height', 'bone-density', 'spine-imaging'],
  },
  {
    group: 'Vitamin D',
    choices: ['vitamin-d-loading', 'vitamin-d-taken', 'vitamin-d-loading-stopped', 'vitamin-d-maintenance'],
  },
  {
    group: 'Before a dose',
    choices: ['consent', 'prescription', 'allergy', 'pregnancy', 'dental', 'secondary-causes', 'medicine', 'adherence'],
  },
  {
    group: 'What happened',
    choices: [
      'illness',
      'well-since',
      'condition',
      'symptom',
      'symptom-cleared',
      'fracture',
      'surgery',
      'dose',
      'reaction',
    ],
  },
  { group: 'Deciding together', choices: ['baseline-risk', 'talk', 'capacity'] },
  { group: 'Reaching them', choices: ['call', 'advice-answered', 'cannot-be-reached', 'refusal', 'told-of-batch'] },
  {
    group: 'Decisions',
    choices: ['triage', 'course-review', 'prescriber-decision', 'prescriber-exception', 'looked-again'],
  },
  {
    group: 'Coming and going',
    choices: ['referral', 'transfer-out', 'transfer-acknowledged', 'closed', 'reopened', 'died'],
  },
  { group: 'Who they are', choices: ['identity', 'contact'] },
];

/** Told as of today unless someone says otherwise; everything else asks for its day. */
const ofToday: ReadonlySet<string> = new Set([
  'consent',
  'talk',
  'capacity',
  'prescription',
  'allergy',
  'pregnancy',
  'dental',
  'secondary-causes',
  'call',
  'advice-answered',
  'told-of-batch',
  'cannot-be-reached',
  'refusal',
  'triage',
  'course-review',
  'prescriber-decision',
  'prescriber-exception',
  'looked-again',
  'results-signed',
  'symptom-cleared',
  'vitamin-d-loading',
  'vitamin-d-loading-stopped',
  'vitamin-d-maintenance',
  'transfer-out',
  'transfer-acknowledged',
  'closed',
  'reopened',
  'identity',
  'contact',
  'symptom',
  'adherence',
]);
export const isOfToday = (kind: string): boolean => ofToday.has(kind);

const dateWords: Readonly<Record<string, string>> = {
  sample: 'Date of the sample',
  weight: 'Weighed on',
  height: 'Measured on',
  illness: 'Began on',
  'well-since': 'Well since',
  fracture: 'Happened on',
  'baseline-risk': 'Worked out on',
  'bone-density': 'Scanned on',
  'spine-imaging': 'Taken on',
  condition: 'Known since',
  surgery: 'Operated on',
  dose: 'Given on',
  'vitamin-d-taken': 'Taken on',
  'vitamin-d-loading': 'Prescribed on',
  medicine: 'Taken since',
  died: 'Died on',
  referral: 'Received on',
};
export const dateWord = (kind: string): string => dateWords[kind] ?? 'True on';
