import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, timeField, uuidField, zoneField } from './fields.ts';

/** An opening of a unit on one date, with its places and their arrival times. */
export const sessionPlanned = entryKind({
  name: 'session-planned',
  of: 'session',
  shape: 1,
  label: 'session planned',
  help: 'Unit, date, arrival times.',
  writes: ['clerk', 'nurse', 'nurse in charge', 'service lead'],
  body: z
    .object({
      unit: uuidField,
      on: dateField,
      zone: zoneField,
      arriveAt: z.array(timeField).min(1).max(200).readonly(),
      opensAt: timeField,
      closesAt: timeField,
    })
    .readonly(),
  example: {
    unit: 'thornbeck',
    on: '2027-01-28' as PlainDate,
    zone: 'Europe/London',
    arriveAt: ['08:40', '09:00'],
    opensAt: '08:30',
    closesAt: '17:00',
  },
});
