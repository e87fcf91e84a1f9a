/** Whom to call: due and overdue people, reviews, and those who may not wait at all. */
import { type Day, type PlainDate, dateWithWeekday, day, factsOf, plainDate, shortDate } from '@twelvemonth/clinical';
import type { RecallRow, recallAnswer } from '@twelvemonth/exchange';
import type { z } from 'zod';
import type { Person } from '../register/people.ts';
import { checklistOf, triedIn } from './coming-back.ts';
import { clockOfPerson, clockViewOf, isUrgent } from './clock.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName, standingViewOf } from './person-words.ts';
import { speakToInWords } from './speak-to.ts';

export function recallOf(everyone: readonly Person[], unit: string | undefined): z.infer<typeof recallAnswer> {
  const ofUnit = everyone.filter((person) => unit === undefined || person.unitId === unit);
  const urgent = ofUnit.filter(isFirstInLine);
  return {
    people: ofUnit
      .filter((person) => (isRecalled(person) || isOnWorklist(person)) && !isFirstInLine(person))
      .map(recallRowOf)
      .toSorted(byDue),
    inReview: ofUnit
      // A single treatment is outside the recall: its review is on the person's page.
      .filter(({ standing, course }) => standing.standing === 'in review' && course.regimen?.countedApart !== true)
      .map(recallRowOf)
      .toSorted(byDue),
    firstInLine: urgent.map(recallRowOf).toSorted((a, b) => byAlarm(a, b) || byDue(a, b)),
  };
}

const inCare = new Set([
  'referral received',
  'in work-up',
  'waiting for a place',
  'put off',
  'between doses',
  'overdue',
  'in review',
  'moved to other treatment',
  'cannot be reached',
  'booked',
]);

/** Somebody here still acts for them: also for who said no, cannot be reached, or was closed while a clock runs. */
const isOurs = ({ standing }: Person): boolean => standing.on !== undefined;

/** A medicine that waits for its successor, or referred or decided as first in line and still without a dose since. */
export function isFirstInLine(person: Person): boolean {
  const { record, course, standing } = person;
  if (isOurs(person) && isUrgent(clockOfPerson(person))) return true;
  if (!inCare.has(standing.standing)) return false;
  const asked = factsOf(record, 'referral').findLast(({ body }) => body.tier === 'first in line');
  const decided = factsOf(record, 'triage').findLast(
    ({ body }) => body.outcome === 'accepted' && body.tier !== undefined,
  );
  const tier =
    decided?.body.outcome === 'accepted' && decided.on >= (asked?.on ?? 0) ? decided.body.tier : asked?.body.tier;
  const since = Math.max(asked?.on ?? 0, decided?.on ?? 0);
  return tier === 'first in line' && (course.lastDose === undefined || course.lastDose.on < since);
}

/** A medicine whose effect is lost when nothing follows: what follows is looked for in good time. */
const isOnWorklist = (person: Person): boolean =>
  isOurs(person) && person.standing.standing !== 'in review' && clockOfPerson(person)?.tier === 'on the worklist';

/** The recall has begun, or the due date has passed; also those who are booked for it, until they come. */
export function isRecalled({ standing, course, today }: Person): boolean {
  if (standing.standing === 'overdue') return true;
  if (standing.standing !== 'between doses' && standing.standing !== 'booked' && standing.standing !== 'put off')
    return false;
  return course.recall !== undefined && course.recall.from <= today;
}

function recallRowOf(person: Person): RecallRow {
  const { record, course, today, contact, place } = person;
  const view = person.view(place?.on ?? today);
  const call = factsOf(record, 'call').at(-1);
  const clock = clockViewOf(clockOfPerson(person));
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    unit: person.unitId,
    ...(contact?.telephone === undefined ? {} : { telephone: contact.telephone }),
    standing: standingViewOf(person),
    ...(course.due === undefined ? {} : { due: plainDate(course.due), daysPastDue: today - course.due }),
    dose: person.row().dose,
    ...(course.lastDose === undefined ? {} : { lastDose: plainDate(course.lastDose.on) }),
    ...(course.recall?.bloods === undefined || course.recall.bloods.until < today
      ? {}
      : {
          bloodsBetween: { from: plainDate(course.recall.bloods.from), until: plainDate(course.recall.bloods.until) },
        }),
    window: view?.window?.says ?? view?.noWindow?.says ?? noProtocolInForce,
    ...(call === undefined ? {} : { lastCall: callInWords(call.on, call.body) }),
    open: checklistOf(person)
      .filter(({ state }) => state !== 'answered')
      .map(({ item }) => item),
    tried: triedIn(person)?.says ?? '',
    speakTo: speakToInWords(person),
    nextStep: nextStepInWords(person, view?.nextSteps[0]),
    ...(place === undefined ? {} : { booked: plainDate(place.on) }),
    ...(clock === undefined ? {} : { clock }),
  };
}

function callInWords(
  on: Day,
  {
    route,
    reached,
    note,
    callBackOn,
  }: { route: string; reached: boolean; note?: string | undefined; callBackOn?: PlainDate | undefined },
): string {
  const parts = [`${shortDate(on)}, ${route}: ${reached ? 'reached' : 'not reached'}`];
  if (note !== undefined) parts.push(note);
  if (callBackOn !== undefined) parts.push(`call back on ${dateWithWeekday(day(callBackOn))}`);
  return parts.join('; ');
}

function nextStepInWords(
  { place, standing }: Person,
  step: { readonly what: string; readonly latest?: PlainDate } | undefined,
): string {
  if (step !== undefined)
    return step.latest === undefined ? step.what : `${step.what}, by ${dateWithWeekday(day(step.latest))}`;
  if (standing.standing === 'in review') return "prescriber's review";
  return place === undefined ? 'offer a place' : 'nothing until they come';
}

const byDue = (a: RecallRow, b: RecallRow): number => {
  const [left, right] = [a.due ?? a.standing.on ?? '9', b.due ?? b.standing.on ?? '9'];
  return left < right ? -1 : left > right ? 1 : a.name < b.name ? -1 : 1;
};

/** The highest alarm comes first: lateness of this medicine is what breaks backs. */
const alarms: readonly NonNullable<RecallRow['clock']>['tier'][] = ['highest alarm', 'alarm', 'first in line'];
const byAlarm = (a: RecallRow, b: RecallRow): number => {
  const rank = ({ clock }: RecallRow): number => {
    const found = clock === undefined ? -1 : alarms.indexOf(clock.tier);
    return found < 0 ? alarms.length : found;
  };
  return rank(a) - rank(b);
};
