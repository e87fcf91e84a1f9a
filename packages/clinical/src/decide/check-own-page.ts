/** An own page opens by the birth date, for somebody who may be written to; what is told on it comes from a page that opens. */
import { day } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { noContactWanted } from '../letters/no-contact.ts';
import { type Fact, type SubjectRecord, latest } from '../record/patient-record.ts';
import { openPageOf } from '../visit/told-ahead.ts';
import { fieldWrong } from './check-fields.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export function checkOwnPage(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  if (fact.kind === 'own-page') return checkHandedOver(record, fact as Fact<'own-page'>, now);
  return fact.kind === 'told-ahead' ? checkTold(record, fact as Fact<'told-ahead'>, now) : [];
}

function checkHandedOver(record: SubjectRecord, { body }: Fact<'own-page'>, now: Surroundings): readonly Refusal[] {
  if (body.is === 'closed')
    return openPageOf(record, now.today) === undefined
      ? [refusal('step-already-done', 'No page of theirs is open.')]
      : [];
  const refusals: Refusal[] = [];
  if (noContactWanted(record, now.today) !== undefined)
    refusals.push(refusal('no-contact-wanted', 'This person said no to all contact: no page is handed to them.'));
  const born = latest(record, 'identity')?.body.born;
  if (born === undefined || parsePartialDate(born)?.precision !== 'day')
    refusals.push(
      refusal('field-wrong', 'The page is opened by the birth date, and it is not known to the day.', {
        remedy: 'ask them, and complete the identity',
      }),
    );
  if (day(body.expiresOn) < now.today)
    refusals.push(fieldWrong('line.body.expiresOn', 'over already', 'the last day on which the page opens'));
  return refusals;
}

function checkTold(record: SubjectRecord, { body }: Fact<'told-ahead'>, now: Surroundings): readonly Refusal[] {
  if (Object.keys(body.answers).length === 0 && body.otherDay === undefined)
    return [fieldWrong('line.body.answers', 'nothing was answered', 'one answer at least, or a wish for another day')];
  if (body.page === undefined) return [];
  const page = openPageOf(record, now.today);
  return page !== undefined && page.entry === body.page
    ? []
    : [refusal('no-such-entry', 'The page it was written on is closed.', { field: 'line.body.page' })];
}
