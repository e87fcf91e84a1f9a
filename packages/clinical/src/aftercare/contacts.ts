/**
 * When somebody is asked how they are after a first dose, and what has come of it: between the protocol's first and last day
 * (24 to 72 hours), on days when the advice line is open. Where it is closed on the last of these days the reaction may end,
 * or turn into something else, unseen: then a second contact follows on the next open day (a Thursday's dose: Friday and Monday).
 */
import { type Day, addDays, day } from '../calendar/day.ts';
import { type UnitCalendar, isAdviceLineDay, nextAdviceLineDay } from '../calendar/unit-calendar.ts';
import { dosesGiven } from '../course/doses.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { isWhole } from './told.ts';

/** Asked on a day from `from` to `by`. */
export type Contact = { readonly from: Day; readonly by: Day };

export type ContactDays = { readonly firstDays: number; readonly lastDays: number };

/** Of a dose given on a day. */
export function contactsAfter(
  dosedOn: Day,
  { firstDays, lastDays }: ContactDays,
  calendar: UnitCalendar,
): readonly [Contact, ...Contact[]] {
  const [from, until] = [addDays(dosedOn, Math.min(firstDays, lastDays)), addDays(dosedOn, lastDays)];
  const open: Day[] = [];
  for (let on = from; on <= until; on = addDays(on, 1)) if (isAdviceLineDay(calendar, on)) open.push(on);
  const next = nextAdviceLineDay(calendar, addDays(until, 1));
  const [first] = open;
  const last = open[open.length - 1];
  if (first === undefined || last === undefined) return [{ from: next, by: next }];
  return last === until
    ? [{ from: first, by: last }]
    : [
        { from: first, by: last },
        { from: next, by: next },
      ];
}

export type Aftercare = {
  readonly dose: Fact<'dose'>;
  readonly contacts: readonly (Contact & { readonly made: Fact<'aftercare'> | Fact<'call'> | undefined })[];
  /** Calls that reached nobody. */
  readonly attempts: readonly Fact<'call'>[];
  /** Entries in which somebody was asked but a danger sign was left out. */
  readonly broken: readonly Fact<'aftercare'>[];
  /** The contact that is waited for; undefined: none any more. */
  readonly waitsFor: Contact | undefined;
  /** The day on which somebody rings: the agreed one, or the contact's first. */
  readonly tryOn: Day | undefined;
  /** Nobody asks further, and why. */
  readonly ended: Fact<'aftercare'> | undefined;
};

/** After the first dose of a medicine given by this service, until the second. Undefined: there is none to be asked about. */
export function aftercareOf(
  record: SubjectRecord,
  protocol: Protocol | undefined,
  calendar: UnitCalendar,
  today: Day,
): Aftercare | undefined {
  const dose = firstDoseHere(record, today);
  if (dose === undefined) return undefined;
  const calls = factsOf(record, 'call').filter(({ on, body }) => body.about === 'aftercare' && on >= dose.on);
  const told = factsOf(record, 'aftercare').filter(({ on }) => on >= dose.on);
  const whole = told.filter(({ body }) => body.outcome === 'asked' && isWhole(body));
  const broken = told.filter(({ body }) => body.outcome === 'asked' && !isWhole(body));
  // A call that wrote its answers counts by them alone.
  const spoken = calls.filter(({ act, body }) => body.reached && !told.some((one) => one.act === act));
  const made = [...whole, ...spoken].toSorted((a, b) => a.on - b.on || a.seq - b.seq);
  const contacts = contactsAfter(dose.on, contactDays(protocol), calendar).map((contact) => ({
    ...contact,
    made: made.find(({ on }) => on >= contact.from),
  }));
  const ended = told.findLast(({ body }) => body.outcome === 'not asked further');
  const waitsFor = ended === undefined ? contacts.find((contact) => contact.made === undefined) : undefined;
  const attempts = calls.filter(({ body }) => !body.reached);
  return { dose, contacts, attempts, broken, waitsFor, tryOn: nextTry(waitsFor, attempts, calendar), ended };
}

/** Without a protocol nobody has said how long it may wait: from the day of the dose. */
const contactDays = (protocol: Protocol | undefined): ContactDays =>
  protocol === undefined
    ? { firstDays: 0, lastDays: 0 }
    : { firstDays: protocol.number.aftercareFirstDays, lastDays: protocol.number.aftercareCallDays };

/** The day that was agreed after a call in vain, else the next open day after it. */
function nextTry(
  waitsFor: Contact | undefined,
  attempts: readonly Fact<'call'>[],
  calendar: UnitCalendar,
): Day | undefined {
  if (waitsFor === undefined) return undefined;
  const last = attempts.findLast(({ on }) => on >= waitsFor.from);
  if (last === undefined) return waitsFor.from;
  return last.body.callBackOn === undefined
    ? nextAdviceLineDay(calendar, addDays(last.on, 1))
    : day(last.body.callBackOn);
}

function firstDoseHere(record: SubjectRecord, today: Day): Fact<'dose'> | undefined {
  const given = dosesGiven(record, today);
  const last = factsOf(record, 'dose').findLast((dose) =>
    (given.get(dose.body.medicine)?.counting ?? []).includes(dose),
  );
  if (last === undefined || last.body.setting !== 'this service') return undefined;
  return given.get(last.body.medicine)?.counting.length === 1 ? last : undefined;
}
