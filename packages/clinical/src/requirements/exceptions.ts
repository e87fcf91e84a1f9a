/** How long a prescriber's exception lasts, whatever its own date says, and how old bloods it carries (docs/readiness.md R1, R9). */
import { type Day, addDays, day } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import type { Evidence } from './evidence.ts';

export type ExceptionFor = BodyOfKind<'prescriber-exception'>['requirement'];
export type Exception = { readonly entry: Uuid; readonly from: Day; readonly until: Day; readonly reason: string };
export type Exceptions = Readonly<Partial<Record<ExceptionFor, Exception>>>;

/** The newest of each rule; oldest first as given. */
export function exceptionsOf(written: readonly Fact<'prescriber-exception'>[]): Exceptions {
  const exceptions: Partial<Record<ExceptionFor, Exception>> = {};
  for (const { id, on, body } of written) {
    exceptions[body.requirement] = { entry: id, from: on, until: day(body.expiresOn), reason: body.reason };
  }
  return exceptions;
}

/** The last day on which one made on `from` may stand. */
export const lastDayOfException = (from: Day, { number }: Protocol): Day => addDays(from, number.exceptionLongestDays);

/** The newest of each rule that lasts on a day; without a protocol by its own date alone. */
export function exceptionsOn(
  record: SubjectRecord,
  on: Day,
  protocol: Protocol | undefined,
): readonly Fact<'prescriber-exception'>[] {
  const newest = new Map<string, Fact<'prescriber-exception'>>();
  for (const fact of factsOf(record, 'prescriber-exception'))
    if (fact.on <= on) newest.set(fact.body.requirement, fact);
  return [...newest.values()].filter((fact) => on <= lastDayOf(fact, protocol));
}

/** Its own last day, and no later than the protocol lets one last. */
export function lastDayOf({ on, body }: Fact<'prescriber-exception'>, protocol: Protocol | undefined): Day {
  const own = day(body.expiresOn);
  return protocol === undefined ? own : (Math.min(own, lastDayOfException(on, protocol)) as Day);
}

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

export const lastsOn = ({ from, until }: Exception, on: Day): boolean => from <= on && on <= until;

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
