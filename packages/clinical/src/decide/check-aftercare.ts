/** Answers after a dose fit the dose and themselves: nothing is both felt and not felt, nothing began before the drip. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { Asked } from '../aftercare/told.ts';
import { registrants } from '../ledger/role.ts';
import { type Fact, type SubjectRecord, factWithId } from '../record/patient-record.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';
import { notYours, refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

export function checkAftercare(
  record: SubjectRecord,
  { body, on }: Fact<'aftercare'>,
  path: string,
  { by }: Surroundings,
): readonly Refusal[] {
  const dose = factWithId(record, body.dose);
  if (dose?.kind !== 'dose')
    return [
      refusal('no-such-entry', 'The dose it is about is not in these notes, or was withdrawn.', {
        field: `${path}.dose`,
      }),
    ];
  if (body.outcome === 'not asked further' && !registrants.includes(by.role))
    return [notYours(by.role, 'end the asking', registrants)];
  return body.outcome === 'asked' ? [...checkBoth(body, path), ...checkDays(body, dose.on, on, path)] : [];
}

function checkBoth({ felt, notFelt, signs, notSigns }: Asked, path: string): readonly Refusal[] {
  const wrong: Refusal[] = [];
  const both = (field: string, names: readonly string[]): void => {
    const twice = names.find((name, index) => names.indexOf(name) !== index);
    if (twice !== undefined)
      wrong.push(fieldWrong(`${path}.${field}`, `"${twice}" is answered twice`, 'yes or no, once'));
  };
  both('felt', [...felt.map(({ what }) => what), ...notFelt]);
  both('signs', [...signs, ...notSigns]);
  return wrong;
}

const checkDays = ({ felt }: Asked, dosedOn: Day, on: Day, path: string): readonly Refusal[] =>
  felt.flatMap(({ beganOn, endedOn }, index) => {
    const at = `${path}.felt.${index}`;
    if (day(beganOn) < dosedOn)
      return [
        fieldWrong(
          `${at}.beganOn`,
          `it began before the dose of ${shortDate(dosedOn)}`,
          'the day it began after the dose, or write it down as an illness',
        ),
      ];
    if (day(beganOn) > on) return [fieldWrong(`${at}.beganOn`, 'that day is still to come', 'a day up to today')];
    return endedOn !== undefined && (day(endedOn) < day(beganOn) || day(endedOn) > on)
      ? [fieldWrong(`${at}.endedOn`, 'it ended before it began, or is still to end', 'its last day, or leave it empty')]
      : [];
  });
