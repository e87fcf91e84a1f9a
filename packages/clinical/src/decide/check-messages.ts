/** A message goes to somebody who agreed to it: about a place they hold, and once; by itself only as a person approved it. */
import { noContactWanted } from '../letters/no-contact.ts';
import { approvalFor, wayToRemind, whyNotByItself } from '../letters/reminders-plan.ts';
import { wentOut } from '../letters/reminders.ts';
import type { MessageChannel } from '../kinds/message-begun.ts';
import { newestWritten } from '../record/newest-written.ts';
import { type Fact, type SubjectRecord, factWithId, latest } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';
import { openPageOf } from '../visit/told-ahead.ts';
import { fieldWrong } from './check-fields.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export function checkMessages(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  switch (fact.kind) {
    case 'message-begun':
      return checkBegun(record, (fact as Fact<'message-begun'>).body, now);
    case 'message-ended':
      return checkEnded(record, (fact as Fact<'message-ended'>).body);
    case 'page-sent':
      return checkPageSent(record, (fact as Fact<'page-sent'>).body, now);
    case 'reminders-plan':
      return checkPlan(record, (fact as Fact<'reminders-plan'>).body, now);
    default:
      return [];
  }
}

function checkEnded(record: SubjectRecord, { message }: Fact<'message-ended'>['body']): readonly Refusal[] {
  const begun = factWithId(record, message)?.kind;
  return begun === 'message-begun' || begun === 'page-sent'
    ? []
    : [refusal('no-such-entry', 'The message it points at is not in these notes.', { field: 'line.body.message' })];
}

/** Nobody is written to who said no to all contact, or has not agreed to that way. */
function checkAgreed(record: SubjectRecord, channel: MessageChannel, now: Surroundings): readonly Refusal[] {
  if (noContactWanted(record, now.today) !== undefined)
    return [refusal('no-contact-wanted', 'This person said no to all contact: nothing is sent to them.')];
  return latest(record, 'contact')?.body.remindBy?.includes(channel) === true
    ? []
    : [
        refusal('no-contact-wanted', `This person has not agreed to be reminded by ${channel}.`, {
          remedy: 'ask them, and write it down with how they may be reached',
        }),
      ];
}

const checkHeld = (record: SubjectRecord, place: string, now: Surroundings): readonly Refusal[] =>
  placesOf(record).some(({ entry, on }) => entry === place && on > now.today)
    ? []
    : [refusal('not-booked-there', 'They hold no such place, or it is today: ring them.')];

function checkBegun(record: SubjectRecord, body: Fact<'message-begun'>['body'], now: Surroundings): readonly Refusal[] {
  const { channel, place, daysBefore, approval } = body;
  const refusals = [...checkAgreed(record, channel, now), ...checkHeld(record, place, now)];
  if (wentOut(record, place, daysBefore))
    refusals.push(refusal('step-already-done', 'This reminder went out already.', { remedy: 'nothing is sent twice' }));
  if (approval === undefined) return refusals;
  const holds = approvalFor(record, place);
  const because = holds?.first === approval ? whyNotByItself(record, holds, body) : 'it was taken back';
  return because === undefined
    ? refusals
    : [...refusals, refusal('no-such-entry', `It may not go by itself: ${because}.`, { field: 'line.body.approval' })];
}

function checkPageSent(record: SubjectRecord, body: Fact<'page-sent'>['body'], now: Surroundings): readonly Refusal[] {
  return [
    ...checkAgreed(record, body.channel, now),
    ...(openPageOf(record, now.today)?.entry === body.page
      ? []
      : [refusal('no-such-entry', 'That page is not open.', { field: 'line.body.page' })]),
  ];
}

function checkPlan(record: SubjectRecord, body: Fact<'reminders-plan'>['body'], now: Surroundings): readonly Refusal[] {
  if (body.is === 'stopped')
    return newestWritten(record, 'reminders-plan')?.body.is === 'approved'
      ? []
      : [refusal('step-already-done', 'None of theirs goes by itself.')];
  const way = wayToRemind(record);
  const asInNotes = 'channel' in way && way.channel === body.channel && way.to === body.to;
  return [
    ...checkAgreed(record, body.channel, now),
    ...checkHeld(record, body.place, now),
    ...(asInNotes
      ? []
      : [fieldWrong('line.body.to', 'not how the notes say they are reached', 'the number or address in the notes')]),
  ];
}
