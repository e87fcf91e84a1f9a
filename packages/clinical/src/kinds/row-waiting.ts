import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** A row that could not be taken in: kept whole, with its problems, until someone settles it. */
export const rowWaiting = entryKind({
  name: 'row-waiting',
  of: 'register',
  shape: 1,
  label: 'row waits',
  help: 'The row as it stood and what is wrong with it.',
  writes: careRoles,
  body: z
    .object({
      fingerprint: shortText,
      row: z.number().int().min(1),
      cells: z.record(z.string(), z.string()).readonly(),
      problems: z
        .array(z.object({ column: z.string(), problem: shortText, says: textField, remedy: textField }).readonly())
        .readonly(),
    })
    .readonly(),
  example: {
    fingerprint: 'sha256:...',
    row: 17,
    cells: { Born: '31.02.1944' },
    problems: [
      {
        column: 'Born',
        problem: 'impossible-date',
        says: '31.02.1944 is not a date',
        remedy: 'look it up and correct the cell',
      },
    ],
  },
});
