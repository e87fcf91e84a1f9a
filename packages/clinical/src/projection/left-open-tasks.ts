/** Tasks that something left open: a dose that was not given, a red flag that another than the named person answered. */
import type { Day } from '../calendar/day.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { afterPutOff, decisionLeftOpen } from '../visit/put-off-next.ts';
import type { Row } from './row.ts';
import type { Task } from './task-rows.ts';

/** `lookAgain`: the protocol's day after the newest decision. A dose put off, or a prescriber asked at the chair: whose it is, by when. */
export function notGivenToday(record: SubjectRecord, lookAgain: Day, task: Task): Row[] {
  const decision = decisionLeftOpen(record);
  if (decision === undefined) return [];
  const { note, decision: what } = decision.body;
  if (what === 'ask a prescriber')
    return [
      task('answer what was asked at the chair', decision, 'prescriber', decision.on, note ?? 'no question written'),
    ];
  const { says, owner, by } = afterPutOff(decision, lookAgain);
  return [task('see to what was put off', decision, owner, by, says)];
}

/** A red flag that somebody else answered: whom it was passed to sees what was found and done. */
export function answeredForAnother(record: SubjectRecord, task: Task): Row[] {
  const seen = new Set(factsOf(record, 'looked-again').map(({ body }) => body.about));
  return factsOf(record, 'advice-answered').flatMap((answered) =>
    answered.body.inPlaceOf === undefined || seen.has(answered.id)
      ? []
      : [
          task(
            'tell who was named',
            answered,
            'prescriber',
            answered.on,
            `for ${answered.body.inPlaceOf}, who was named and did not answer: ${answered.body.outcome}`,
          ),
        ],
  );
}
