import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/**
 * A direction under which named nurses record an order without a prescriber for each person. It is in force once a pharmacist
 * has signed this very text. What it asks is asked of every person; what the protocol asks is asked as always.
 */
export const groupDirection = entryKind({
  name: 'group-direction',
  of: 'unit',
  shape: 1,
  label: 'group direction',
  help: 'Name and version, regimen, first and last day, who may give under it, what is asked of each person, how long an order lasts.',
  writes: ['prescriber'],
  body: z
    .object({
      name: shortText,
      version: shortText,
      regimen: shortText,
      validFrom: dateField,
      validUntil: dateField,
      /** Staff, by name: nobody else records an order under it or gives one. */
      mayGive: z.array(shortText).min(1).max(60).readonly(),
      /** Each is answered "yes" for each person, or there is no order. */
      conditions: z.array(textField).min(1).max(30).readonly(),
      /** After so many days the conditions are asked again. */
      orderLastsDays: z.number().int().min(1).max(366),
    })
    .readonly(),
  example: {
    name: 'Zoledronic acid 5 mg at the day unit',
    version: '2',
    regimen: 'zoledronic-acid-yearly',
    validFrom: '2026-09-01' as PlainDate,
    validUntil: '2027-08-31' as PlainDate,
    mayGive: ['s1'],
    conditions: ['An earlier dose of this medicine went without a severe reaction'],
    orderLastsDays: 28,
  },
});
