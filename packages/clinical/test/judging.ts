/** One requirement judged about a person's lines, asked on the usual day under the teaching protocol. */
import {
  type Day,
  type NumberKey,
  type PlainDate,
  type Protocol,
  type RequirementId,
  day,
  evidenceOf,
  protocolFrom,
  requirements,
  teaching,
  teachingSheet,
} from '@twelvemonth/clinical';
import { type Line, asked, at, personOf } from './person.ts';

export const judge = (id: RequirementId, lines: readonly Line[], protocol: Protocol = teaching) =>
  requirements[id].judge(evidenceOf(personOf(lines), asked), protocol);

export const verdictsOn = (id: RequirementId, lines: readonly Line[], ...dates: readonly string[]) =>
  dates.map((date) => judge(id, lines).on(day(date)).verdict);

export const verdictOf = (id: RequirementId, lines: readonly Line[], on: Day = asked) =>
  judge(id, lines).on(on).verdict;

export const exceptionUntil = (requirement: 'hip repair' | 'course review', expiresOn: string): Line =>
  at(
    '2026-11-01',
    'prescriber-exception',
    { requirement, reason: 'agreed with the ward', expiresOn: expiresOn as PlainDate },
    'x',
  );

/** The teaching protocol with other numbers. */
export function withNumbers(values: Partial<Record<NumberKey, string>>): Protocol {
  const numbers = { ...teachingSheet.numbers };
  for (const [key, value] of Object.entries(values) as [NumberKey, string][])
    numbers[key] = { value, source: 'a unit', status: 'local decision' };
  const made = protocolFrom({ ...teachingSheet, numbers });
  if ('empty' in made) throw new Error('an empty number');
  return made.protocol;
}
