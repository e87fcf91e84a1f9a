import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, timeField, zoneField } from './fields.ts';

/** What a unit is: name, zone, chairs, hours, session and blood days, closures. The latest entry holds. */
export const unitSettings = entryKind({
  name: 'unit-settings',
  of: 'unit',
  shape: 1,
  label: 'unit settings',
  help: 'Name, zone, chairs, hours, session days, blood days, closed days.',
  writes: ['service lead', 'administrator'],
  body: z
    .object({
      name: shortText,
      zone: zoneField,
      chairs: z.number().int().min(1).max(60),
      opensAt: timeField,
      closesAt: timeField,
      sessionWeekdays: z.array(z.number().int().min(1).max(7)).readonly(),
      bloodWeekdays: z.array(z.number().int().min(1).max(7)).min(1).readonly(),
      closedDays: z.array(dateField).readonly(),
      /** Minutes between arrivals when a session is planned. */
      minutesBetweenArrivals: z.number().int().min(5).max(120),
      telephone: shortText,
      demo: z.boolean(),
    })
    .readonly(),
  example: {
    name: 'Thornbeck Day Unit',
    zone: 'Europe/London',
    chairs: 6,
    opensAt: '08:30',
    closesAt: '17:00',
    sessionWeekdays: [2, 4],
    bloodWeekdays: [1, 2, 3, 4, 5],
    closedDays: ['2026-12-25' as PlainDate],
    minutesBetweenArrivals: 20,
    telephone: '01632 960100',
    demo: true,
  },
});
