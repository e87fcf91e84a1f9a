/** What the entries about deciding together may say: a copied risk, a talk, capacity, and the consent that rests on it. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { latest } from '../record/patient-record.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

/** A range has two ends, with the risk between them. */
export function checkRisk(
  { percent, lowPercent, highPercent }: Fact<'baseline-risk'>['body'],
  path: string,
): readonly Refusal[] {
  if (lowPercent === undefined && highPercent === undefined) return [];
  if (lowPercent === undefined || highPercent === undefined)
    return [
      fieldWrong(
        `${path}.${lowPercent === undefined ? 'lowPercent' : 'highPercent'}`,
        'only one end of the range is given',
        'both ends as the instrument gave them, or neither',
      ),
    ];
  return lowPercent <= percent && percent <= highPercent
    ? []
    : [fieldWrong(`${path}.percent`, 'the risk is not inside its own range', 'the three numbers as printed')];
}

/** Someone who wants to wait is asked again on a day; otherwise nobody would. */
export function checkTalk({ decision, askAgainOn }: Fact<'talk'>['body'], on: Day, path: string): readonly Refusal[] {
  const waits = decision === 'not now' || decision === 'more time';
  if (waits && askAgainOn === undefined)
    return [fieldWrong(`${path}.askAgainOn`, 'nobody would ask again', 'the day on which they may be asked')];
  return askAgainOn !== undefined && day(askAgainOn) <= on
    ? [fieldWrong(`${path}.askAgainOn`, 'that day is not after the talk', 'a day after it')]
    : [];
}

/** Consent is the person's own. Where they cannot decide this, someone decides in their best interest and says so. */
export function checkConsent(record: SubjectRecord, { body, on }: Fact<'consent'>): readonly Refusal[] {
  const found = latest(record, 'capacity');
  return body.decision === 'given' && found?.body.answer === 'cannot decide this' && found.on <= on
    ? [
        refusal(
          'cannot-decide-this',
          `On ${shortDate(found.on)} it was found that this person cannot decide this: ${found.body.because}.`,
          { remedy: 'record a best-interest decision, or first that they can decide it now' },
        ),
      ]
    : [];
}
