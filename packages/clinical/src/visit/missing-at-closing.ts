/** What a listed person still lacks when the session is to close: an outcome, a word about why they did not come, a letter. */
import { type Day } from '../calendar/day.ts';
import type { KindName } from '../kinds/index.ts';
import { subjectId } from '../ledger/subject.ts';
import { type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { isVisitLetter } from '../letters/letters-out.ts';
import { outcomeOf, visitOn } from './visit.ts';

export type MissingAtClosing = {
  readonly what: 'not come' | 'not over' | 'letter';
  readonly name: 'no-outcome' | 'letter-missing';
  readonly says: string;
  readonly remedy: string;
};

/** What says why somebody did not come. */
const saysWhy: readonly KindName[] = [
  'call',
  'advice-call',
  'refusal',
  'cannot-be-reached',
  'illness',
  'died',
  'transfer-out',
  'closed',
];

export function missingAtClosing(record: SubjectRecord, on: Day): readonly MissingAtClosing[] {
  const identity = latest(record, 'identity')?.body;
  const who = identity === undefined ? subjectId(record.subject) : `${identity.given} ${identity.family}`;
  const visit = visitOn(record, on);
  const outcome = outcomeOf(visit);
  if (visit === undefined) {
    const said = record.all.some((fact) => fact.on >= on && saysWhy.includes(fact.kind));
    return said
      ? []
      : [
          {
            what: 'not come',
            name: 'no-outcome',
            says: `${who} has not come, and nothing says why.`,
            remedy: 'ring them and write down what was said, or move their place',
          },
        ];
  }
  const missing: MissingAtClosing[] = [];
  if (outcome === 'here' || !visit.over)
    missing.push({
      what: 'not over',
      name: 'no-outcome',
      says: `The visit of ${who} is not over.`,
      remedy: 'see them off, or put the dose off and see them off',
    });
  const needsLetter = visit.dose !== undefined || visit.putOff;
  if (
    needsLetter &&
    visit.letter === undefined &&
    !factsOf(record, 'letter').some((letter) => letter.on >= on && isVisitLetter(letter.body))
  )
    missing.push({
      what: 'letter',
      name: 'letter-missing',
      says: `The letter about ${who} is not signed.`,
      remedy: 'read it and sign it',
    });
  return missing;
}
