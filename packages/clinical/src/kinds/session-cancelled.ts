import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** The session does not take place. */
export const sessionCancelled = entryKind({
  name: 'session-cancelled',
  of: 'session',
  shape: 1,
  label: 'session cancelled',
  help: 'Why. Everyone on it needs another place.',
  writes: ['nurse in charge', 'service lead'],
  body: z.object({ reason: textField }).readonly(),
  example: { reason: 'no second registered nurse' },
});
