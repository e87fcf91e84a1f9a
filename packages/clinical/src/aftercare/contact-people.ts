/** Whom one speaks to about a person on a day, and what one may say to them. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

/** The newest word about each, without those it has ended for; who is rung first comes first. */
export function contactPeople(record: SubjectRecord, today: Day): readonly Fact<'contact-person'>[] {
  const newest = new Map<string, Fact<'contact-person'>>();
  for (const fact of factsOf(record, 'contact-person'))
    if (fact.on <= today) newest.set(fact.body.who.toLowerCase(), fact);
  return [...newest.values()]
    .filter(({ body }) => body.until === undefined || day(body.until) >= today)
    .toSorted((a, b) => Number(b.body.speakToFirst) - Number(a.body.speakToFirst));
}

export type ContactPerson = BodyOfKind<'contact-person'>;

/** Only a yes of the person, or a proxy whose document was seen: else nothing is told, not even that they are treated here. */
export const mayBeToldAll = ({ mayBeTold, relation, documentSeenOn }: ContactPerson): boolean =>
  mayBeTold === 'yes, they agreed' ||
  (relation === 'legal proxy' && documentSeenOn !== undefined && mayBeTold !== 'no');

export function contactPersonText(body: ContactPerson): string {
  const { who, relation, telephone, mayBeTold, speakToFirst, document, documentSeenOn } = body;
  const proxy =
    relation !== 'legal proxy'
      ? undefined
      : documentSeenOn === undefined
        ? 'document not seen: tell them nothing yet'
        : `${document ?? 'document'} seen on ${shortDate(day(documentSeenOn))}`;
  const consent = {
    'yes, they agreed': 'may be told, they agreed',
    'only that we rang': 'may only hear that we rang',
    no: 'may not be told',
    'not asked yet': 'not asked whether they may be told: tell them nothing yet',
  }[mayBeTold];
  return [
    `${speakToFirst ? 'ring first: ' : ''}${who} (${relation})`,
    telephone,
    mayBeToldAll(body) && mayBeTold !== 'yes, they agreed' ? undefined : consent,
    proxy,
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}
