/**
 * Group directions: written by a prescriber, signed by a pharmacist, and the order a named nurse records under one. Under it no
 * prescriber looks at the person, so only who is plainly ready has an order: every condition answered "yes", every requirement
 * met by itself, nothing near the limit. Whoever is not is a prescriber's to order for.
 */
import { addDays, day, plainDate, shortDate } from '../calendar/day.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { regimenNamed } from '../protocol/protocol.ts';
import { readiness, verdictOn } from '../readiness/ask.ts';
import { type SubjectRecord } from '../record/patient-record.ts';
import { prescribedOn } from '../course/prescribed.ts';
import { type GroupDirection, directionTitle, directionsOf, notInForce } from '../unit/group-direction.ts';
import { unitOf } from '../unit/unit.ts';
import { TYPED_IN_LATER } from '../visit/running-time.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { after } from './extended.ts';
import { patientIn, recordIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideWriteDirection({ unit, body }: ActNamed<'write direction'>, now: Surroundings): Decided {
  const record = recordIn(now, subject('unit', unit));
  const refusals: Refusal[] =
    unitOf(record) === undefined
      ? [refusal('unknown-unit', `No unit is called "${unit}".`, { field: 'unit', remedy: 'describe the unit first' })]
      : [];
  if (day(body.validUntil) < day(body.validFrom))
    refusals.push(fieldWrong('body.validUntil', 'ends before it begins', 'the last day on which it is in force'));
  if (directionsOf(record).some((one) => one.body.name === body.name && one.body.version === body.version))
    refusals.push(
      fieldWrong(
        'body.version',
        `version ${body.version} was written before and stays as it is`,
        'a version of its own',
      ),
    );
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (protocol !== undefined && regimenNamed(protocol, body.regimen) === undefined)
    refusals.push(fieldWrong('body.regimen', `the protocol knows no regimen "${body.regimen}"`, 'one of the protocol'));
  return decided(refusals, () => [draftNow(subject('unit', unit), 'group-direction', body, now)]);
}

const named = (directions: readonly GroupDirection[] | undefined, entry: string): GroupDirection | undefined =>
  directions?.find((one) => one.entry === entry);

const noSuchDirection = (field: string): Refusal =>
  refusal('no-such-entry', 'This unit has no such group direction.', { field, remedy: 'open the list again' });

export function decideSignDirection({ unit, body }: ActNamed<'sign direction'>, now: Surroundings): Decided {
  const of = subject('unit', unit);
  const direction = named(directionsOf(recordIn(now, of)), body.direction);
  if (direction === undefined) return decided([noSuchDirection('body.direction')], () => []);
  const refusals: Refusal[] = [];
  if (direction.ended !== undefined || direction.signed !== undefined)
    refusals.push(refusal('said-already', `It was ${direction.ended === undefined ? 'signed' : 'ended'} before.`));
  if (direction.written.by === now.by.staff)
    refusals.push(
      refusal('second-person-needed', 'You wrote this direction yourself.', { remedy: 'another pharmacist signs it' }),
    );
  return decided(refusals, () => [draftNow(of, 'group-direction-signed', body, now)]);
}

export function decideEndDirection({ unit, body }: ActNamed<'end direction'>, now: Surroundings): Decided {
  const of = subject('unit', unit);
  const direction = named(directionsOf(recordIn(now, of)), body.direction);
  const refusals =
    direction === undefined
      ? [noSuchDirection('body.direction')]
      : direction.ended === undefined
        ? []
        : [refusal('said-already', `It was ended on ${shortDate(direction.ended.on)}.`)];
  return decided(refusals, () => [draftNow(of, 'group-direction-ended', body, now)]);
}

const askPrescriber = 'ask a prescriber for an order of their own';

export function decideOrderUnderDirection(act: ActNamed<'order under direction'>, now: Surroundings): Decided {
  const record = patientIn(now, act.patient);
  const refusals: Refusal[] = [...checkKnown(record), ...checkCareGoesOn(record, 'prescription', now.today, now)];
  const direction = named(now.directions, act.direction);
  if (direction === undefined) return decided([...refusals, noSuchDirection('direction')], () => []);
  const draft = orderUnder(direction, act.patient, now);
  refusals.push(
    ...checkNamedInForce(direction, now),
    ...checkNoOtherOrder(record, now),
    ...checkConditions(direction, act),
    ...checkPlainlyReady(act.patient, draft, now),
  );
  return decided(refusals, () => [draft]);
}

function orderUnder(direction: GroupDirection, patient: string, now: Surroundings): Draft {
  const last = addDays(now.today, direction.body.orderLastsDays - 1);
  const ends = day(direction.body.validUntil);
  return draftNow(
    subject('patient', patient),
    'prescription',
    {
      regimen: direction.body.regimen,
      orderedAs: 'group direction',
      groupDirection: directionTitle(direction),
      underDirection: { direction: direction.entry, conditionsMet: direction.body.conditions },
      validFrom: plainDate(now.today),
      validUntil: plainDate(last < ends ? last : ends),
    },
    now,
  );
}

const notUnder = (says: string, field?: string): Refusal =>
  refusal('not-under-the-direction', says, { remedy: askPrescriber, ...(field === undefined ? {} : { field }) });

function checkNamedInForce(direction: GroupDirection, { today, by }: Surroundings): readonly Refusal[] {
  const why = notInForce(direction, today);
  if (why !== undefined) return [notUnder(`${directionTitle(direction)} is not in force: ${why}.`)];
  return direction.body.mayGive.includes(by.staff)
    ? []
    : [
        refusal('not-under-the-direction', `${directionTitle(direction)} does not name you.`, {
          remedy: 'a nurse whom it names records the order and gives the dose',
        }),
      ];
}

/** What a prescriber ordered, or a pharmacist doubts, is not passed over by an order of the nurse's own. */
function checkNoOtherOrder(record: SubjectRecord, { today }: Surroundings): readonly Refusal[] {
  const order = prescribedOn(record, today);
  return order === undefined || day(order.body.validUntil) < today
    ? []
    : [
        refusal('said-already', `An order stands until ${shortDate(day(order.body.validUntil))}.`, {
          remedy: 'go by that one; its prescriber changes or withdraws it',
        }),
      ];
}

function checkConditions(
  direction: GroupDirection,
  { answers }: ActNamed<'order under direction'>,
): readonly Refusal[] {
  return direction.body.conditions.flatMap((condition, index) => {
    const given = answers.filter((one) => one.condition === condition);
    const answer = given.length === 1 ? given[0]?.answer : undefined;
    if (answer === 'yes') return [];
    const says = answer === 'no' ? 'not so' : answer === 'not known' ? 'not known' : 'not answered';
    return [notUnder(`${condition}: ${says}.`, `answers.${index}`)];
  });
}

/** By the unit's protocol today, with this order in the notes; nothing passed over by an exception, nothing near the limit. */
function checkPlainlyReady(patient: string, draft: Draft, now: Surroundings): readonly Refusal[] {
  if (now.context === undefined || protocolInForceOn(now.context.protocols, now.today) === undefined)
    return [notUnder('Cannot say: no protocol is in force at this unit.')];
  const withOrder = patientIn(after([draft], now), patient);
  return verdictOn(readiness(withOrder, now.context, now.today), now.today).requirements.flatMap(
    ({ verdict, cause, nearLimit, exception }) => {
      if (verdict === 'not ready' || verdict === 'cannot say')
        return [notUnder(`${verdict === 'not ready' ? 'Not ready' : 'Cannot say'}: ${cause}.`)];
      if (exception !== undefined) return [notUnder(`A prescriber's exception passes something over: ${cause}.`)];
      return nearLimit ? [notUnder(`Near the limit, which a prescriber is to know: ${cause}.`)] : [];
    },
  );
}

/** Who gives under a direction is named in it, and it is still in force. What was done on paper is written as it was done. */
export function checkGivenUnderDirection(record: SubjectRecord, now: Surroundings): readonly Refusal[] {
  const under = prescribedOn(record, now.today)?.body.underDirection;
  if (under === undefined || now.clock.boot === TYPED_IN_LATER) return [];
  const direction = named(now.directions, under.direction);
  return direction === undefined
    ? [notUnder('The group direction of this order is not one of this unit.')]
    : checkNamedInForce(direction, now);
}
