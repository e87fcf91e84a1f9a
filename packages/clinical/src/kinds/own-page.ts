import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, textField } from './fields.ts';

/**
 * An address of their own was handed to the person, or it was closed. Only its hash is kept: the address itself is said once and
 * never again. The newest word counts: a page handed over closes those before it.
 */
export const ownPage = entryKind({
  name: 'own-page',
  of: 'patient',
  shape: 1,
  label: 'own page',
  help: 'Until when it opens, or why it was closed.',
  writes: careRoles,
  body: z.discriminatedUnion('is', [
    z
      .object({
        is: z.literal('handed over'),
        /** SHA-256 of the secret part of the address, in hexadecimal. */
        secretHash: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hexadecimal'),
        /** The last day on which it opens. */
        expiresOn: dateField,
      })
      .readonly(),
    z.object({ is: z.literal('closed'), reason: textField }).readonly(),
  ]),
  example: {
    is: 'handed over',
    secretHash: '9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08',
    expiresOn: '2026-12-10' as PlainDate,
  },
});
