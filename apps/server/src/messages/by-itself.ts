/**
 * Approved reminders go on their day without a press, where a unit says so. Everything is asked anew before each: a death, a no to
 * all contact, a moved place or an approval taken back a moment ago stops it. What was begun and not finished when the server
 * stopped is never begun again: it stands among the work as one that may have gone out.
 */
import { type Author, reminderDue } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { approvalToGoBy, outOfHours, sendReminder } from './reminders.ts';

/** Nobody of the unit pressed: the entry names the approval it goes by, and that names who gave it. */
const theApproval: Author = { staff: 'the approved plan', role: 'clerk' };

/** Sends what may go now, one after the other; returns how many were handed over. */
export async function sendApproved(atHand: AtHand, isStopping: () => boolean = () => false): Promise<number> {
  let handedOver = 0;
  const unitsNow = await atHand.units.all();
  if (!unitsNow.some(({ unit }) => unit.reminders?.byItself === true)) return 0;
  for (const listed of await atHand.people.all()) {
    if (isStopping()) break;
    if (toGo(atHand, listed) === undefined) continue;
    const person = await atHand.people.of(listed.patient);
    const asked = person === undefined ? undefined : toGo(atHand, person);
    if (person === undefined || asked === undefined) continue;
    if (!((await sendReminder(atHand, person, asked, theApproval)) instanceof Refused)) handedOver += 1;
  }
  return handedOver;
}

function toGo(atHand: AtHand, person: Person): Parameters<typeof sendReminder>[2] | undefined {
  const { unit, record, today } = person;
  const settings = unit?.unit.reminders;
  if (unit === undefined || settings === undefined || outOfHours(atHand, unit) !== undefined) return undefined;
  const due = reminderDue(record, settings.daysBefore, today);
  const approval = due === undefined ? undefined : approvalToGoBy(person, due);
  return due === undefined || approval === undefined
    ? undefined
    : { place: due.place.entry, daysBefore: due.daysBefore, approval };
}
