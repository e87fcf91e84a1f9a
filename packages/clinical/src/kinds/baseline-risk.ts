import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

const percent = z.number().gt(0, 'more than 0').lt(100, 'less than 100');

/**
 * The risk of a fracture as the unit's own validated instrument gave it, copied and never worked out here. `effectiveAt` is
 * the day it was worked out.
 */
export const baselineRisk = entryKind({
  name: 'baseline-risk',
  of: 'patient',
  shape: 1,
  label: 'risk of a fracture',
  help: 'As the instrument your unit uses gave it, without treatment. It is copied, never worked out here.',
  writes: clinicalRoles,
  body: z
    .object({
      of: z.enum(['hip fracture', 'major fracture', 'any fracture']),
      percent,
      years: z.number().int().min(1).max(10),
      /** Name and version of the instrument, as text. */
      instrument: shortText,
      /** The range, where the instrument gives one. */
      lowPercent: percent.optional(),
      highPercent: percent.optional(),
      /** Lives in a care home, or needs help with most things every day: the large trials left such people out. */
      veryFrail: z.boolean(),
      note: textField.optional(),
    })
    .readonly(),
  example: {
    of: 'major fracture',
    percent: 21.5,
    years: 10,
    instrument: "the unit's risk sheet, version 3",
    veryFrail: false,
  },
});
