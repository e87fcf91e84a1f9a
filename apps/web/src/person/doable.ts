/** What can be done for this person now: the one main act, from where they are and from the first next step. */
import { isKindName, kindNamed } from '@twelvemonth/clinical';
import type { PersonView } from '@twelvemonth/exchange';
import { sentence } from '../words/texts.ts';

export type Doable = {
  readonly says: string;
  readonly to: { readonly screen: 'visit' | 'book' | 'review' } | { readonly record: string; readonly about?: string };
};

const stepForms: Readonly<Record<string, { readonly says: string; readonly record: string }>> = {
  draw: { says: 'Enter the bloods', record: 'sample' },
  'repeat result': { says: 'Enter the repeat', record: 'sample' },
  weigh: { says: 'Enter the weight', record: 'weight' },
  'sign results': { says: 'Sign the results', record: 'results-signed' },
  'ask consent': { says: 'Record consent', record: 'consent' },
  'ask allergies': { says: 'Record allergies', record: 'allergy' },
  'ask teeth': { says: 'Record the answer on teeth and jaw', record: 'dental' },
  'ask maintenance': { says: 'Record whether daily vitamin D is taken', record: 'vitamin-d-maintenance' },
  'look for causes': { says: 'Record what secondary causes were looked for', record: 'secondary-causes' },
  'ask pregnancy': { says: 'Record the answer on pregnancy', record: 'pregnancy' },
  'prescriber decides': { says: "Record the prescriber's decision", record: 'prescriber-decision' },
  prescribe: { says: 'Prescribe', record: 'prescription' },
  review: { says: 'Record the review', record: 'course-review' },
  'record well since': { says: 'Record well since', record: 'well-since' },
  'complete identity': { says: 'Complete the identity', record: 'identity' },
};

export function formForStep(
  kind: string,
  person: PersonView,
): { readonly says: string; readonly record: string } | undefined {
  if (kind !== 'loading dose') return stepForms[kind];
  const prescribed = person.entries.some(
    (entry) => entry.kind === 'vitamin-d-loading' && entry.withdrawnBy === undefined,
  );
  return prescribed
    ? { says: 'Record a loading dose taken', record: 'vitamin-d-taken' }
    : { says: 'Prescribe loading', record: 'vitamin-d-loading' };
}

const over = new Set(['died', 'closed', 'transferred out', 'moved to other treatment', 'returned to referrer']);

const mayWrite = (record: string, roles: readonly string[]): boolean => {
  const kind = record === 'sample' ? 'result' : record;
  return isKindName(kind) && kindNamed(kind).writes.some((role) => roles.includes(role));
};

/** The first next step that is due and that one of these roles may write down. */
function dueForm(person: PersonView, today: string, roles: readonly string[]) {
  const forms = (person.readiness?.nextSteps ?? [])
    .filter(({ earliest }) => earliest <= today)
    .flatMap(({ kind }) => formForStep(kind, person) ?? []);
  return forms.find(({ record }) => mayWrite(record, roles));
}

export function doableNow(person: PersonView, today: string, roles: readonly string[]): Doable {
  if (person.visitOpen) return { says: 'Go on with the visit', to: { screen: 'visit' } };
  if (person.place?.on === today && person.standing.standing === 'booked')
    return { says: 'They are here: begin', to: { screen: 'visit' } };
  if (person.standing.standing === 'referral received')
    return { says: 'Decide the referral', to: { record: 'triage' } };
  if (person.unsigned.length > 0) return { says: 'Sign the results', to: { record: 'results-signed' } };
  if (person.standing.standing === 'in review') return { says: 'Open the review', to: { screen: 'review' } };
  if (over.has(person.standing.standing)) return { says: 'Write in the notes', to: { record: 'menu' } };
  const form = dueForm(person, today, roles);
  if (form?.record === 'course-review') return { says: 'Open the review', to: { screen: 'review' } };
  if (form !== undefined) return { says: sentence(form.says), to: { record: form.record } };
  if (person.place === undefined && person.readiness?.window !== undefined)
    return { says: 'Book a place', to: { screen: 'book' } };
  return { says: 'Write in the notes', to: { record: 'menu' } };
}
