/** What is typed at the door and at the first measurements, and cannot be: a chair that the session has not, pressures the wrong way round. */
import { counted } from '../kinds-texts/words.ts';
import type { Fact } from '../record/patient-record.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { fieldWrong } from './check-fields.ts';
import { sessionIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import type { Surroundings } from './surroundings.ts';

/** Hazard 24: by the chair people are told apart. Before the opening nobody has said how many there are today. */
export function checkChair(
  { chair, session }: Fact<'arrived'>['body'],
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const has = sessionDayOf(sessionIn(now, session)).opened?.body.chairs;
  return chair === undefined || has === undefined || chair <= has
    ? []
    : [fieldWrong(`${path}.chair`, `the session was opened with ${counted(has, 'chair')}`, 'the chair they sit in')];
}

/** The pressure while the heart fills is below the one while it beats; the two are easily typed in each other's field. */
export const checkPressures = (
  { systolicMmHg, diastolicMmHg }: Fact<'observations'>['body'],
  path: string,
): readonly Refusal[] =>
  systolicMmHg === undefined || diastolicMmHg === undefined || diastolicMmHg < systolicMmHg
    ? []
    : [
        fieldWrong(
          `${path}.diastolicMmHg`,
          `${diastolicMmHg} is not below the upper pressure, ${systolicMmHg}`,
          'read both off the monitor again: were they typed in each other’s field?',
        ),
      ];
