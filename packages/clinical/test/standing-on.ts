/** Where a person of these notes is on a day, under the teaching protocol or none. */
import {
  day,
  entriesFromDrafts,
  parseLedger,
  plainDate,
  recordOf,
  standingOf,
  teaching,
  usualPerson,
} from '@twelvemonth/clinical';

/** [standing, says, owner, next day, since] */
export function on(text: string, date: string, protocol: typeof teaching | 'none' = teaching) {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  const record = recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2020-01-01T08:00:00.000Z' }));
  const now = standingOf(record, protocol === 'none' ? undefined : protocol, day(date));
  return [
    now.standing,
    now.says,
    now.owner,
    now.on === undefined ? undefined : plainDate(now.on),
    plainDate(now.since),
  ];
}
