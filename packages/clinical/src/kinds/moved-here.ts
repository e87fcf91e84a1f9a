import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** An entry of the same act was written here because it stood in the wrong person's notes, where it is withdrawn. */
export const movedHere = entryKind({
  name: 'moved-here',
  of: 'patient',
  shape: 1,
  label: 'moved here',
  help: 'From whose notes, which entry of theirs, and how it came to be there.',
  writes: registrants,
  body: z.object({ from: uuidField, entry: uuidField, reason: textField }).readonly(),
  example: { from: 'p2', entry: 'e1', reason: 'two people of one name at one surgery' },
});
