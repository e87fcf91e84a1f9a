/**
 * The newest observations at a glance, with their early warning score. Of one day the newest before, during and after the dose stand
 * side by side: what changed is seen.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import { news2Source } from '../formulas/news2.ts';
import { observationsText } from '../kinds-texts/observations-text.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { earlyWarningFor, earlyWarningSays } from '../visit/early-warning.ts';
import type { ReadingPart } from './reading.ts';

/** Undefined: never observed here. */
export function observedReading(record: SubjectRecord, today: Day): ReadingPart | undefined {
  const facts = factsOf(record, 'observations').filter(({ on }) => on <= today);
  const day = facts.at(-1)?.on;
  if (day === undefined) return undefined;
  const newest = (['before', 'during', 'after'] as const).flatMap(
    (when) => facts.findLast(({ on, body }) => on === day && body.when === when) ?? [],
  );
  const whom = earlyWarningFor(record, day);
  return {
    title: 'Observations',
    lines: newest.flatMap(({ id, body }) => {
      const of = `${body.when} the dose, ${shortDate(day)}`;
      return [
        { what: 'observed', is: observationsText(body), of, put: undefined, source: undefined, entries: [id] },
        {
          what: 'NEWS2',
          is: earlyWarningSays(body, whom),
          of: `${of}; it decides nothing about a dose`,
          put: undefined,
          source: news2Source,
          entries: [id],
        },
      ];
    }),
    cautions: [],
  };
}
