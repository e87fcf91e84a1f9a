import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** A reaction was reported to a scheme, or was not and why: known reactions are "not worth reporting" until somebody counts them. */
export const reactionReported = entryKind({
  name: 'reaction-reported',
  of: 'patient',
  shape: 1,
  label: 'reaction reported',
  help: 'Which scheme, with the number it gave; or why it was not reported.',
  writes: clinicalRoles,
  body: z
    .object({
      reaction: uuidField,
      to: z.enum(['local scheme', 'national scheme', 'not reported']),
      number: shortText.optional(),
      note: textField.optional(),
    })
    .readonly(),
  example: { reaction: 'r1', to: 'national scheme', number: 'ADR 0000 0001' },
});
