/** Whoever lets a requirement be passed over neither gives that dose nor checks it (safety page, on exceptions). */
import { day } from '../calendar/day.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { lastDayOfException } from '../requirements/exceptions.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** The newest of each sort that lasts today. */
function exceptionsToday(record: SubjectRecord, now: Surroundings): readonly Fact<'prescriber-exception'>[] {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  const newest = new Map<string, Fact<'prescriber-exception'>>();
  for (const fact of factsOf(record, 'prescriber-exception'))
    if (fact.on <= now.today) newest.set(fact.body.requirement, fact);
  return [...newest.values()].filter(
    ({ on, body }) =>
      now.today <= day(body.expiresOn) && (protocol === undefined || now.today <= lastDayOfException(on, protocol)),
  );
}

export function checkNotExceptionAuthor(
  record: SubjectRecord,
  does: 'gives it' | 'makes the second check',
  now: Surroundings,
  who = now.by.staff,
): readonly Refusal[] {
  const own = exceptionsToday(record, now).find(({ author }) => author.staff === who);
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
