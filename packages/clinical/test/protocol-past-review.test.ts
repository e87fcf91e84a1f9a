/** Hazard 84: a protocol past its review date goes on deciding, and says so beside every verdict. */
import { expect, test } from 'vitest';
import { type PlainDate, day, everyDay, protocolFrom, readiness, teachingSheet, viewOf } from '@twelvemonth/clinical';
import { personOf } from './person.ts';

const cautionsOn = (reviewBy: string, today: string): string => {
  const made = protocolFrom({ ...teachingSheet, reviewBy: reviewBy as PlainDate });
  if (!('protocol' in made)) throw new Error('a number is empty');
  const context = {
    protocols: [{ from: 0, protocol: made.protocol }],
    calendar: everyDay,
  };
  const record = personOf([]);
  return viewOf(readiness(record, context, day(today)), record, context).cautions.join(' ');
};

test('on its last day nothing is said, from the day after it is', () => {
  expect(cautionsOn('2026-11-25', '2026-11-25')).not.toContain('past its review date');
  expect(cautionsOn('2026-11-25', '2026-11-26')).toContain(
    `The protocol ${teachingSheet.version} is past its review date, 25 Nov 2026.`,
  );
});
