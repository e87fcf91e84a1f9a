import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** A file was brought in: its name, its fingerprint, how many rows went where. */
export const importRun = entryKind({
  name: 'import-run',
  of: 'register',
  shape: 1,
  label: 'file brought in',
  help: 'The file and what became of its rows.',
  writes: careRoles,
  body: z
    .object({
      file: shortText,
      fingerprint: shortText,
      mapping: z.string().max(100000),
      rows: z.number().int().min(0),
      taken: z.number().int().min(0),
      waiting: z.number().int().min(0),
      known: z.number().int().min(0),
    })
    .readonly(),
  example: {
    file: 'register.csv',
    fingerprint: 'sha256:...',
    mapping: '{}',
    rows: 212,
    taken: 204,
    waiting: 5,
    known: 3,
  },
});
