/** How long a prescriber's exception lasts, whatever its own date says, and how old bloods it carries (docs/readiness.md R1, R9). */
import { type Day, addDays } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence, Exception, ExceptionFor } from './evidence.ts';

/** The last day on which one made on `from` may stand. */
export const lastDayOfException = (from: Day, { number }: Protocol): Day => addDays(from, number.exceptionLongestDays);

/** The exception with the end the protocol leaves it; undefined where there is none. */
export function exceptionFor(
  { exceptions }: Pick<Evidence, 'exceptions'>,
  protocol: Protocol,
  requirement: ExceptionFor,
): Exception | undefined {
  const exception = exceptions[requirement];
  if (exception === undefined) return undefined;
  const last = lastDayOfException(exception.from, protocol);
  return exception.until <= last ? exception : { ...exception, until: last };
}

export const lastsOn = ({ from, until }: Exception, day: Day): boolean => from <= day && day <= until;

/** What carries bloods past their days, and for how many days after the sample at most. */
export type CarriesBloods = Exception & { readonly oldestDays: number };

export function bloodsException(evidence: Pick<Evidence, 'exceptions'>, protocol: Protocol): CarriesBloods | undefined {
  const exception = exceptionFor(evidence, protocol, 'age of bloods');
  return exception === undefined ? undefined : { ...exception, oldestDays: protocol.number.exceptionBloodsOldestDays };
}

/** Days after which it carries a sample no longer. */
export const carryingEnds = (exception: CarriesBloods | undefined, sample: { readonly on: Day } | undefined): Day[] =>
  exception === undefined || sample === undefined
    ? []
    : [addDays(exception.until, 1), addDays(sample.on, exception.oldestDays + 1)];
