import { flagsIn } from '../calls/asked-flags.ts';
import { day, shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { plural } from './words.ts';

type Said = Omit<BodyOfKind<'advice-call'>, 'takenFrom'>;

/** An advice-line call in one line, its red flags first. */
export function callText({
  caller,
  callerName,
  callerTelephone,
  redFlags,
  about,
  advice,
  passedTo,
  callBackOn,
}: Said): string {
  const flags = flagsIn(redFlags).map(({ name }) => name);
  const parts = [
    `${caller}${callerName === undefined ? '' : ` (${callerName})`} rang`,
    callerTelephone,
    flags.length === 0 ? 'no red flag' : `red flag: ${plural(flags, 'and')}`,
  ].filter((part) => part !== undefined);
  return `${parts.join(', ')}: ${about}; advised: ${advice}${passedTo === undefined ? '' : `; ${passedTo} told`}${callBackOn === undefined ? '' : `; to be rung on ${shortDate(day(callBackOn))}`}`;
}
