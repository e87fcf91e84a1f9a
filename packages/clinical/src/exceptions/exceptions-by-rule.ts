/**
 * How often prescribers made an exception of each rule, and how many doses were given while one stood. Exceptions that became a
 * habit say that the rule, or how people are got ready, wants looking at (common practice, no source).
 */
import { type Day, day } from '../calendar/day.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import type { ExceptionFor } from '../requirements/exceptions.ts';

export type ExceptionsOfRule = {
  readonly requirement: ExceptionFor;
  /** Written in these days, and of how many people. */
  readonly written: number;
  readonly people: number;
  /** Doses of these days, given by this service while an exception of this rule stood, whether or not it was needed by then. */
  readonly doses: number;
};

export type ExceptionsByRule = {
  /** Every dose that this service gave in these days. */
  readonly doses: number;
  /** Only rules of which an exception was written or stood; the most written first. */
  readonly rules: readonly ExceptionsOfRule[];
};

/** From the first day to the last, both counted. */
export function exceptionsByRule(records: Iterable<SubjectRecord>, first: Day, last: Day): ExceptionsByRule {
  let doses = 0;
  const counts = new Map<ExceptionFor, { written: number; people: number; doses: number }>();
  const of = (requirement: ExceptionFor): { written: number; people: number; doses: number } => {
    const found = counts.get(requirement) ?? { written: 0, people: 0, doses: 0 };
    counts.set(requirement, found);
    return found;
  };
  const isWithin = (on: Day): boolean => on >= first && on <= last;
  for (const record of records) {
    const exceptions = factsOf(record, 'prescriber-exception');
    const given = factsOf(record, 'dose').filter(({ on, body }) => body.setting === 'this service' && isWithin(on));
    doses += given.length;
    for (const requirement of new Set(exceptions.map(({ body }) => body.requirement))) {
      const ofRule = exceptions.filter(({ body }) => body.requirement === requirement);
      const written = ofRule.filter(({ on }) => isWithin(on)).length;
      const under = given.filter(({ on }) =>
        ofRule.some((exception) => exception.on <= on && on <= day(exception.body.expiresOn)),
      ).length;
      if (written === 0 && under === 0) continue;
      const count = of(requirement);
      count.written += written;
      count.people += written === 0 ? 0 : 1;
      count.doses += under;
    }
  }
  return {
    doses,
    rules: [...counts]
      .map(([requirement, count]) => ({ requirement, ...count }))
      .toSorted((a, b) => b.written - a.written || (a.requirement < b.requirement ? -1 : 1)),
  };
}
