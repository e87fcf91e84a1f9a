/** Steroid tablets: no planned break while on a dose from the protocol's number on (NOGG, `from memory`). */
import { type Day, day as dayOf } from '../calendar/day.ts';
import { scaled } from '../exact/decimal.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { CourseFacts } from './course-facts.ts';

/** A dose nobody wrote down counts as at or above. */
export function isAtOrAbove({ body }: Fact<'medicine'>, protocol: Protocol | undefined): boolean {
  if (body.prednisoloneMgPerDay === undefined || protocol === undefined) return true;
  return scaled(body.prednisoloneMgPerDay) >= protocol.exact.steroidMgPerDay;
}

/** Steroids taken on a day: the newest entry of each name, unless stopped by then. */
export function steroidsOn(facts: CourseFacts, on: Day): readonly Fact<'medicine'>[] {
  const newest = new Map<string, Fact<'medicine'>>();
  for (const fact of facts.steroids) if (fact.on <= on) newest.set(fact.body.name.trim().toLowerCase(), fact);
  return [...newest.values()].filter(({ body }) => body.stoppedOn === undefined || dayOf(body.stoppedOn) > on);
}
