import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** Watched after the dose, for so many minutes. */
export const observed = entryKind({
  name: 'observed',
  of: 'patient',
  shape: 1,
  label: 'observed',
  help: 'Minutes watched and how the person is.',
  writes: clinicalRoles,
  body: z
    .object({ minutes: z.number().int().min(0).max(240), well: z.boolean(), note: textField.optional() })
    .readonly(),
  example: { minutes: 30, well: true },
});
