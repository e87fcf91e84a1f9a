/** The moment of a step as the notes want it: on the unit's wall, with its offset. Checked against Temporal. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { atTime, localMoment } from '../src/words/local-moment.ts';

test('it names the same instant and the same wall time as Temporal does, in any zone and season', () => {
  const zones = ['Europe/London', 'America/New_York', 'Australia/Adelaide', 'Asia/Kathmandu', 'UTC'];
  fc.assert(
    fc.property(fc.integer({ min: 1_600_000_000, max: 2_000_000_000 }), fc.constantFrom(...zones), (seconds, zone) => {
      const moment = localMoment(seconds * 1000, zone);
      const there = Temporal.Instant.fromEpochMilliseconds(seconds * 1000).toZonedDateTimeISO(zone);
      expect(moment.slice(0, 19)).toBe(there.toPlainDateTime().toString({ smallestUnit: 'second' }));
      expect(Temporal.Instant.from(moment).epochMilliseconds).toBe(seconds * 1000);
    }),
    { seed: 26, numRuns: 300 },
  );
});

test('a step written in later keeps date and offset and takes the time that was said', () => {
  expect(atTime('2027-06-28T10:51:07+01:00', '10:40')).toBe('2027-06-28T10:40:00+01:00');
});
