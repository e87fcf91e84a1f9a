/** Who may give a dose and who may check it: not its prescriber, and nobody who let a requirement be passed over (safety page). */
import type { Day } from '../calendar/day.ts';
import { prescribedOn } from '../course/prescribed.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { exceptionsOn } from '../requirements/exceptions.ts';
import { checkGivenUnderDirection } from './group-directions.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** Whoever prescribed a dose, or made an exception for it, does not give it. */
export function checkGiver(record: SubjectRecord, on: Day, now: Surroundings): readonly Refusal[] {
  const order = prescribedOn(record, on);
  // Under a group direction nobody prescribed for this person: who recorded the order may give it, being named there.
  const isPrescriber = order?.author.staff === now.by.staff && order.body.underDirection === undefined;
  return [
    ...(isPrescriber
      ? [
          refusal('prescriber-may-not-give', 'You prescribed this dose: another person gives it.', {
            remedy: 'ask another nurse to give it in their own name',
          }),
        ]
      : []),
    ...checkGivenUnderDirection(record, now),
    ...checkNotExceptionAuthor(record, 'gives it', now),
  ];
}

export function checkNotExceptionAuthor(
  record: SubjectRecord,
  does: 'gives it' | 'makes the second check',
  now: Surroundings,
  who = now.by.staff,
): readonly Refusal[] {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  const own = exceptionsOn(record, now.today, protocol).find(({ author }) => author.staff === who);
  return own === undefined
    ? []
    : [
        refusal(
          'exception-author-may-not-give',
          `You made the exception for ${own.body.requirement} that this dose may rest on: another person ${does}.`,
          { remedy: 'ask another registered person to do it in their own name' },
        ),
      ];
}
