import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField, uuidField } from './fields.ts';

/** A prescriber's order for a regimen, valid between two dates. The interval belongs to it. */
export const prescription = entryKind({
  name: 'prescription',
  of: 'patient',
  shape: 1,
  label: 'prescription',
  help: 'Regimen, first and last day it is valid, doses before a review.',
  writes: ['prescriber'],
  body: z
    .object({
      regimen: shortText,
      /** What sort of order it is; where nothing is said, one written for this person. */
      orderedAs: z.enum(['patient-specific', 'group direction', 'electronic']).optional(),
      /** Name and version of the group direction. */
      groupDirection: shortText.optional(),
      /** The direction itself, and what was answered "yes" of its conditions: written by a nurse whom it names, never by hand. */
      underDirection: z
        .object({ direction: uuidField, conditionsMet: z.array(textField).readonly() })
        .readonly()
        .optional(),
      validFrom: dateField,
      validUntil: dateField,
      /** Doses of this course before a review; the regimen's own number if absent. */
      plannedDoses: z.number().int().min(1).max(6).optional(),
      /** An interval other than the regimen's, with its reason ("after denosumab: second dose from 3 months"). */
      interval: z
        .object({ months: z.number().int().min(1).max(36), reason: textField })
        .readonly()
        .optional(),
      conditions: textField.optional(),
    })
    .readonly(),
  example: {
    regimen: 'zoledronic-acid-yearly',
    validFrom: '2026-11-01' as PlainDate,
    validUntil: '2027-10-31' as PlainDate,
  },
});
