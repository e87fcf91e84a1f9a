/**
 * Reminders of a unit. A person presses; each is written down before it leaves, then what the channel said. Where no answer came
 * it is not sent again: it stands among the work until somebody has spoken with the person.
 */
import { randomUUID } from 'node:crypto';
import { type Author, type MessageChannel, plainDate, reminderDue } from '@twelvemonth/clinical';
import type { ActAnswer, ReminderRow } from '@twelvemonth/exchange';
import { reminderOf } from '@twelvemonth/letters';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { calendarFileOf } from '../letters/calendar.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from '../views/person-words.ts';
import type { Answered } from './channel.ts';

export const remindersOf = (atHand: AtHand, everyone: readonly Person[], { unit }: UnitNow): ReminderRow[] =>
  everyone
    .filter(({ unitId }) => unitId === unit.id)
    .flatMap((person) => rowOf(atHand, person) ?? [])
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.name < b.name ? -1 : 1));

function rowOf(atHand: AtHand, person: Person): ReminderRow | undefined {
  const { unit, record, today } = person;
  const settings = unit?.unit.reminders;
  if (unit === undefined || settings === undefined) return undefined;
  const due = reminderDue(record, settings.daysBefore, today);
  if (due === undefined) return undefined;
  const { place, daysBefore } = due;
  const way = wayTo(person);
  const notNow = whyNotNow(atHand, unit, way);
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    place: place.entry,
    on: plainDate(place.on),
    arriveAt: place.arriveAt,
    daysBefore,
    ...('because' in way ? {} : way),
    text: wordsOf(unit, place).text,
    ...(notNow === undefined ? {} : { notNow }),
  };
}

const wordsOf = ({ unit }: UnitNow, { on, arriveAt }: Pick<NonNullable<Person['place']>, 'on' | 'arriveAt'>) =>
  reminderOf({ language: unit.letters?.language ?? 'en-GB', unit, on, arriveAt });

type Way = { readonly channel: MessageChannel; readonly to: string } | { readonly because: string };

/** By the first way they agreed to for which there is a number or an address. */
function wayTo({ contact }: Person): Way {
  const agreed = contact?.remindBy ?? [];
  if (agreed.length === 0) return { because: 'nobody has written down that they agree to be reminded: ring or write' };
  const to = { 'text message': contact?.telephone, 'e-mail': contact?.email };
  for (const channel of agreed) {
    const found = to[channel];
    if (found !== undefined) return { channel, to: found };
  }
  return { because: `no ${agreed[0] === 'e-mail' ? 'e-mail address' : 'telephone'} is in the notes` };
}

function whyNotNow({ channels }: AtHand, { unit, moment }: UnitNow, way: Way): string | undefined {
  if ('because' in way) return way.because;
  if (channels[way.channel] === undefined) return `no channel for ${way.channel} is set up here: ring or write`;
  const { fromTime, untilTime } = unit.reminders ?? { fromTime: '00:00', untilTime: '24:00' };
  const time = moment.slice('YYYY-MM-DDT'.length, 'YYYY-MM-DDTHH:MM'.length);
  return time < fromTime || time >= untilTime
    ? `messages go out from ${fromTime} to ${untilTime} only: it is ${time}`
    : undefined;
}

export async function sendReminder(
  atHand: AtHand,
  person: Person,
  asked: { readonly place: string; readonly daysBefore: number },
  by: Author,
): Promise<Answered | Refused> {
  const row = rowOf(atHand, person);
  if (row === undefined || row.place !== asked.place || row.daysBefore !== asked.daysBefore)
    return new Refused(409, 'nothing-due', 'This reminder is not due any more: it went out, or the place has moved.');
  const { notNow, channel, to, text, place, daysBefore } = row;
  const send = channel === undefined ? undefined : atHand.channels[channel];
  if (notNow !== undefined || channel === undefined || to === undefined || send === undefined)
    return new Refused(409, 'not-sent', `Not sent: ${notNow ?? 'no channel'}.`);
  const begun = await written(atHand, person, by, 'message-begun', { channel, to, place, daysBefore, text });
  if (begun instanceof Refused) return begun;
  const [entry] = begun.entries;
  const calendar = calendarFileOf(person, atHand.clock.now());
  if (entry === undefined || calendar instanceof Refused) throw new Error('a reminder without an entry or a place');
  const title = person.unit === undefined || person.place === undefined ? '' : wordsOf(person.unit, person.place).title;
  const answer = await send({ id: entry.id, to, title, text, calendar });
  if (answer.outcome !== 'not known') {
    const ended = await written(atHand, person, by, 'message-ended', { ...answer, message: entry.id });
    if (ended instanceof Refused) return ended;
  }
  return answer;
}

const written = (
  atHand: AtHand,
  { patient, today }: Person,
  by: Author,
  kind: 'message-begun' | 'message-ended',
  body: object,
): Promise<ActAnswer | Refused> =>
  doAct(atHand, {
    id: randomUUID(),
    act: { name: 'record', patient, line: { kind, body, effectiveAt: plainDate(today) } },
    by,
  });
