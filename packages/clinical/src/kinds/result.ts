import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { analytes, laboratoryQuantity } from '../exact/quantity.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** One laboratory value, as reported. `effectiveAt` is the date of the sample. It counts once a person has signed it. */
export const result = entryKind({
  name: 'result',
  of: 'patient',
  shape: 1,
  label: 'laboratory result',
  help: 'Value and unit exactly as the laboratory printed them; the date is the date of the sample.',
  writes: clinicalRoles,
  body: z
    .object({
      analyte: z.enum(analytes),
      quantity: laboratoryQuantity,
      laboratory: shortText.optional(),
      /** The laboratory's own limits, in the unit of the value. */
      referenceLow: z
        .string()
        .regex(/^\d+(\.\d{1,4})?$/)
        .optional(),
      referenceHigh: z
        .string()
        .regex(/^\d+(\.\d{1,4})?$/)
        .optional(),
      /** Taken while acutely ill in hospital: never carried forward. */
      acuteAdmission: z.boolean().optional(),
    })
    .readonly(),
  example: { analyte: 'creatinine', quantity: { comparator: '', value: '79', unit: 'umol/L' } },
});
