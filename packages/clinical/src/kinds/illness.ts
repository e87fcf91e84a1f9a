import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

export const illnessSorts = ['illness', 'dehydration', 'contrast', 'nephrotoxic medicine', 'admission'] as const;

/** Something since the last bloods that makes them worthless: vomiting, infection, dehydration, contrast, a new medicine. */
export const illness = entryKind({
  name: 'illness',
  of: 'patient',
  shape: 1,
  label: 'illness or event',
  help: 'What happened and when it began. Earlier bloods stop counting until the person is well again.',
  writes: careRoles,
  body: z
    .object({
      what: textField,
      sort: z.enum(illnessSorts),
    })
    .readonly(),
  example: { what: 'vomiting for three days', sort: 'illness' },
});
