import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField } from './fields.ts';

/** A course of vitamin D as prescribed: so many doses, so many days apart, the first on `startOn`. */
export const vitaminDLoading = entryKind({
  name: 'vitamin-d-loading',
  of: 'patient',
  shape: 1,
  label: 'vitamin D loading prescribed',
  help: 'Number of doses, days between them, units in each, first dose on.',
  writes: registrants,
  body: z
    .object({
      doses: z.number().int().min(1).max(120),
      everyDays: z.number().int().min(1).max(31),
      unitsPerDose: z.number().int().min(100).max(600000),
      startOn: dateField,
    })
    .readonly(),
  example: { doses: 6, everyDays: 7, unitsPerDose: 50000, startOn: '2026-11-24' as PlainDate },
});
