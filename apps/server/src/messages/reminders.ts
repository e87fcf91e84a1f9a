/**
 * Reminders of a unit. A person presses, or approved the plan; each is written down before it leaves, then what the channel said. Where no answer came
 * it is not sent again: it stands among the work until somebody has spoken with the person.
 */
import {
  type Author,
  type MessageChannel,
  type ReminderDue,
  approvalFor,
  plainDate,
  reminderDue,
  remindersPlanned,
  wayToRemind,
  whyNotByItself,
} from '@twelvemonth/clinical';
import type { ReminderRow, RemindersPlanRow, RemindersView } from '@twelvemonth/exchange';
import { reminderOf } from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { calendarFileOf } from '../letters/calendar.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from '../views/person-words.ts';
import type { Answered } from './channel.ts';
import { handedTo } from './handed-to.ts';
import { returnedNotTaken } from './returned.ts';

export const remindersOf = (atHand: AtHand, everyone: readonly Person[], { unit, today }: UnitNow): RemindersView => {
  const here = everyone.filter(({ unitId }) => unitId === unit.id);
  return {
    unit: unit.id,
    today: plainDate(today),
    returnedNotTaken: returnedNotTaken(atHand.returnedFolder),
    rows: here.flatMap((person) => rowOf(atHand, person) ?? []).toSorted(byDay),
    ...(unit.reminders?.byItself === true
      ? { plans: here.flatMap((person) => planOf(atHand, person) ?? []).toSorted(byDay) }
      : {}),
  };
};

type Listed = Pick<ReminderRow, 'on' | 'name'>;
const byDay = (a: Listed, b: Listed): number =>
  a.on < b.on ? -1 : a.on > b.on ? 1 : a.name < b.name ? -1 : Number(a.name > b.name);

function rowOf(atHand: AtHand, person: Person): ReminderRow | undefined {
  const { unit, record, today } = person;
  const settings = unit?.unit.reminders;
  if (unit === undefined || settings === undefined) return undefined;
  const due = reminderDue(record, settings.daysBefore, today);
  if (due === undefined) return undefined;
  const { place, daysBefore } = due;
  const way = wayToRemind(record);
  const notNow = whyNotNow(atHand, unit, way);
  return {
    ...placeAndWay(person, unit, place, way),
    daysBefore,
    byItself: approvalToGoBy(person, due) !== undefined,
    ...(notNow === undefined ? {} : { notNow }),
  };
}

type Way = ReturnType<typeof wayToRemind>;

const placeAndWay = (person: Person, unit: UnitNow, place: ReminderDue['place'], way: Way) => ({
  patient: person.patient,
  name: fullName(person),
  number: person.identity?.number ?? '',
  place: place.entry,
  on: plainDate(place.on),
  arriveAt: place.arriveAt,
  ...('because' in way ? {} : way),
  text: wordsOf(unit, place).text,
});

/** The approval a due reminder goes by; undefined: a person presses. */
export function approvalToGoBy({ record, unit }: Person, { place, daysBefore }: ReminderDue): string | undefined {
  const approval = unit?.unit.reminders?.byItself === true ? approvalFor(record, place.entry) : undefined;
  const way = wayToRemind(record);
  return approval === undefined ||
    'because' in way ||
    whyNotByItself(record, approval, { daysBefore, ...way }) !== undefined
    ? undefined
    : approval.first;
}

function planOf({ channels, accounts }: AtHand, person: Person): RemindersPlanRow | undefined {
  const { unit, record, today } = person;
  const planned = remindersPlanned(record, unit?.unit.reminders?.daysBefore ?? [], today);
  const first = planned?.days[0];
  if (unit === undefined || planned === undefined || first === undefined) return undefined;
  const way = wayToRemind(record);
  const approval = approvalFor(record, planned.place.entry);
  const because =
    'because' in way
      ? way.because
      : channels[way.channel] === undefined
        ? noChannel(way.channel)
        : approval && whyNotByItself(record, approval, { daysBefore: first.daysBefore, ...way });
  return {
    ...placeAndWay(person, unit, planned.place, way),
    days: planned.days.map(({ daysBefore, on }) => ({ daysBefore, on: plainDate(on) })),
    ...(because === undefined ? {} : { because }),
    ...(approval === undefined
      ? {}
      : { approved: { by: accounts.nameOf(approval.author.staff), on: plainDate(approval.on) } }),
  };
}

const wordsOf = ({ unit }: UnitNow, { on, arriveAt }: Pick<NonNullable<Person['place']>, 'on' | 'arriveAt'>) =>
  reminderOf({ language: unit.letters?.language ?? 'en-GB', unit, on, arriveAt });

const noChannel = (channel: MessageChannel): string => `no channel for ${channel} is set up here: ring or write`;

/** Why nothing can be sent to somebody now. */
export function whyNotNow(atHand: AtHand, unit: UnitNow, way: Way): string | undefined {
  if ('because' in way) return way.because;
  return atHand.channels[way.channel] === undefined ? noChannel(way.channel) : outOfHours(atHand, unit);
}

/** Why a unit sends nothing at this hour: by the clock, for a person worked out this morning still carries that hour. */
export function outOfHours({ clock }: AtHand, { unit }: UnitNow): string | undefined {
  const { fromTime, untilTime } = unit.reminders ?? { fromTime: '00:00', untilTime: '24:00' };
  const { moment } = clock.local(unit.zone);
  const time = moment.slice('YYYY-MM-DDT'.length, 'YYYY-MM-DDTHH:MM'.length);
  return time < fromTime || time >= untilTime
    ? `messages go out from ${fromTime} to ${untilTime} only: it is ${time}`
    : undefined;
}

export async function sendReminder(
  atHand: AtHand,
  person: Person,
  asked: { readonly place: string; readonly daysBefore: number; readonly approval?: string },
  by: Author,
): Promise<Answered | Refused> {
  const row = rowOf(atHand, person);
  if (row === undefined || row.place !== asked.place || row.daysBefore !== asked.daysBefore)
    return new Refused(409, 'nothing-due', 'This reminder is not due any more: it went out, or the place has moved.');
  const { notNow, channel, to, text, place, daysBefore } = row;
  const send = channel === undefined ? undefined : atHand.channels[channel];
  if (notNow !== undefined || channel === undefined || to === undefined || send === undefined)
    return new Refused(409, 'not-sent', `Not sent: ${notNow ?? 'no channel'}.`);
  const { approval } = asked;
  const body = { channel, to, place, daysBefore, text, ...(approval === undefined ? {} : { approval }) };
  const calendar = calendarFileOf(person, atHand.clock.now());
  if (calendar instanceof Refused) throw new Error('a reminder without a place');
  const title = person.unit === undefined || person.place === undefined ? '' : wordsOf(person.unit, person.place).title;
  return handedTo(atHand, person, by, { kind: 'message-begun', body }, { send, to, title, text, calendar });
}
