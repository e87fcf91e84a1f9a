/**
 * What an opening lacks before medicines may run: two registered people in date, life support, two second checkers, a whole kit.
 * A session that lacks something does not open. One that is open and comes to lack it (somebody goes home, the kit is used) says so,
 * and starts nothing until it is put right. Hazards 25 and 35.
 */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { counted } from '../kinds-texts/words.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { isInDate, mayGiveAndCheck } from '../unit/competence.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

type Body = BodyOfKind<'session-opened'>;

/** One alone could neither check what she prepares nor help when somebody collapses. */
const REGISTRANTS_AT_LEAST = 2;

const ableHere = ({ present }: Body, unit: SubjectRecord, on: Day): readonly string[] =>
  [...new Set(present.map(({ staff }) => staff))].filter((staff) => mayGiveAndCheck(unit, staff, on));

export function openingLacks(body: Body, unit: SubjectRecord, on: Day): readonly Refusal[] {
  const able = ableHere(body, unit, on);
  const refusals: Refusal[] = [];
  if (able.length < REGISTRANTS_AT_LEAST) {
    refusals.push(
      refusal(
        'too-few-registrants',
        `${counted(able.length, 'registered person is', 'registered people are')} here whose competence for medicines into a vein is in date; ${REGISTRANTS_AT_LEAST} are needed.`,
        { field: 'body.present', remedy: 'the session does not open: call somebody in, or move everyone on the list' },
      ),
    );
  }
  if (!body.present.some(({ staff }) => isInDate(unit, staff, 'life support', on))) {
    refusals.push(
      refusal('too-few-registrants', 'Nobody is here whose life support is in date.', {
        field: 'body.present',
        remedy: 'call somebody in whose life support is in date',
      }),
    );
  }
  if (new Set(body.secondCheckers).size < REGISTRANTS_AT_LEAST)
    refusals.push(
      refusal(
        'no-second-checker',
        'Fewer than two second checkers are named: nobody could check what the one prepares.',
        { field: 'body.secondCheckers', remedy: 'name two who are here' },
      ),
    );
  return [...refusals, ...kitLacks(body, on)];
}

/** A name that cannot stand, however the session goes on. */
export function checkersUnable(body: Body, unit: SubjectRecord, on: Day): readonly Refusal[] {
  const able = ableHere(body, unit, on);
  return body.secondCheckers.every((staff) => able.includes(staff))
    ? []
    : [
        refusal('no-second-checker', 'A named second checker is not here, not registered, or not in date.', {
          field: 'body.secondCheckers',
          remedy: 'name somebody who is here and in date',
        }),
      ];
}

function kitLacks({ kit }: Body, on: Day): readonly Refusal[] {
  if (kit.complete && day(kit.expiresOn) >= on) return [];
  const says = kit.complete
    ? `Something in the emergency kit ran out on ${shortDate(day(kit.expiresOn))}.`
    : 'The emergency kit is not complete.';
  return [
    refusal('kit-not-ready', says, {
      field: kit.complete ? 'body.kit.expiresOn' : 'body.kit.complete',
      remedy: 'the session does not open: make the kit whole, or fetch another',
    }),
  ];
}

/** Why nothing may be started in a session that is open; empty: nothing stands in the way. */
export const whatHoldsStarts = (opened: Body, unit: SubjectRecord, on: Day): readonly string[] =>
  openingLacks(opened, unit, on).map(({ says }) => says);
