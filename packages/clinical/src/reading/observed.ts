/** The newest observations at a glance, with their early warning score. */
import { type Day, shortDate } from '../calendar/day.ts';
import { news2Source } from '../formulas/news2.ts';
import { observationsText } from '../kinds-texts/observations-text.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { earlyWarningFor, earlyWarningSays } from '../visit/early-warning.ts';
import type { ReadingPart } from './reading.ts';

/** Undefined: never observed here. */
export function observedReading(record: SubjectRecord, today: Day): ReadingPart | undefined {
  const newest = factsOf(record, 'observations').findLast(({ on }) => on <= today);
  if (newest === undefined) return undefined;
  const of = `${newest.body.when} the dose, ${shortDate(newest.on)}`;
  return {
    title: 'Observations',
    lines: [
      {
        what: 'observed',
        is: observationsText(newest.body),
        of,
        put: undefined,
        source: undefined,
        entries: [newest.id],
      },
      {
        what: 'NEWS2',
        is: earlyWarningSays(newest.body, earlyWarningFor(record, newest.on)),
        of: `${of}; it decides nothing about a dose`,
        put: undefined,
        source: news2Source,
        entries: [newest.id],
      },
    ],
    cautions: [],
  };
}
