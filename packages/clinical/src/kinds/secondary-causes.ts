import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** That other causes of weak bone were looked for before a first dose, and what came of it. */
export const secondaryCauses = entryKind({
  name: 'secondary-causes',
  of: 'patient',
  shape: 1,
  label: 'secondary causes looked for',
  help: 'What was looked for and found: thyroid, parathyroid, myeloma, coeliac disease and the like, as the unit does it.',
  writes: clinicalRoles,
  body: z
    .object({
      answer: z.enum(['none found', 'found, dealt with', 'found, to be dealt with first']),
      note: textField.optional(),
    })
    .readonly(),
  example: { answer: 'none found', note: 'blood count, thyroid, protein electrophoresis, coeliac screen' },
});
