/** A reminder goes to somebody who agreed to it, about a place they hold, and once. */
import { noContactWanted } from '../letters/no-contact.ts';
import { wentOut } from '../letters/reminders.ts';
import { type Fact, type SubjectRecord, factWithId, latest } from '../record/patient-record.ts';
import { placesOf } from '../visit/place.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export function checkMessages(record: SubjectRecord, fact: Fact, now: Surroundings): readonly Refusal[] {
  if (fact.kind === 'message-ended') {
    const { message } = (fact as Fact<'message-ended'>).body;
    return factWithId(record, message)?.kind === 'message-begun'
      ? []
      : [refusal('no-such-entry', 'The reminder it points at is not in these notes.', { field: 'line.body.message' })];
  }
  return fact.kind === 'message-begun' ? checkBegun(record, (fact as Fact<'message-begun'>).body, now) : [];
}

function checkBegun(record: SubjectRecord, body: Fact<'message-begun'>['body'], now: Surroundings): readonly Refusal[] {
  const { channel, place, daysBefore } = body;
  const refusals: Refusal[] = [];
  if (noContactWanted(record, now.today) !== undefined)
    refusals.push(refusal('no-contact-wanted', 'This person said no to all contact: nothing is sent to them.'));
  else if (latest(record, 'contact')?.body.remindBy?.includes(channel) !== true)
    refusals.push(
      refusal('no-contact-wanted', `This person has not agreed to be reminded by ${channel}.`, {
        remedy: 'ask them, and write it down with how they may be reached',
      }),
    );
  if (!placesOf(record).some(({ entry, on }) => entry === place && on > now.today))
    refusals.push(refusal('not-booked-there', 'They hold no such place, or it is today: ring them.'));
  if (wentOut(record, place, daysBefore))
    refusals.push(refusal('step-already-done', 'This reminder went out already.', { remedy: 'nothing is sent twice' }));
  return refusals;
}
