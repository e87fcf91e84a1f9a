/** What a person told us before a visit, and what of it somebody has to look at. */
import { type Day, day } from '../calendar/day.ts';
import { type AheadQuestion, aheadQuestions } from '../kinds/told-ahead.ts';
import type { Uuid } from '../ledger/entry.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';

/** The answer that a nurse looks at before the day. */
export const looksOn = (question: AheadQuestion): 'yes' | 'no' => (question === 'can-drink' ? 'no' : 'yes');

export const worriesIn = ({ body }: Fact<'told-ahead'>): readonly AheadQuestion[] =>
  aheadQuestions.filter((question) => body.answers[question]?.answer === looksOn(question));

/** Told, and nobody has said since that they looked: a worry, or a wish for another day. */
export function toldAndNotSeen(record: SubjectRecord): readonly Fact<'told-ahead'>[] {
  const seen = new Set(factsOf(record, 'looked-again').map(({ body }) => body.about));
  return factsOf(record, 'told-ahead').filter(
    (told) => !seen.has(told.id) && (worriesIn(told).length > 0 || told.body.otherDay !== undefined),
  );
}

/** The newest answer to one question since a day. */
export function toldAheadOf(record: SubjectRecord, question: string, since: Day): Fact<'told-ahead'> | undefined {
  const asked = aheadQuestions.find((one) => one === question);
  return asked === undefined
    ? undefined
    : factsOf(record, 'told-ahead').findLast(({ on, body }) => on >= since && body.answers[asked] !== undefined);
}

export type OpenPage = { readonly entry: Uuid; readonly secretHash: string; readonly since: Day; readonly until: Day };

/** The page of a person that opens on a day: the newest, until its last day, unless it was closed. */
export function openPageOf(record: SubjectRecord, today: Day): OpenPage | undefined {
  const page = latest(record, 'own-page');
  if (page === undefined || page.body.is === 'closed' || page.on > today) return undefined;
  const until = day(page.body.expiresOn);
  return until < today ? undefined : { entry: page.id, secretHash: page.body.secretHash, since: page.on, until };
}
