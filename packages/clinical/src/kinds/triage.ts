import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

/** The answer to a referral. */
export const triage = entryKind({
  name: 'triage',
  of: 'patient',
  shape: 1,
  label: 'referral decided',
  help: 'Accept it, or send it back and say why.',
  writes: registrants,
  body: z.discriminatedUnion('outcome', [
    z
      .object({ outcome: z.literal('accepted'), tier: z.enum(['first in line', 'high', 'routine']).optional() })
      .readonly(),
    z.object({ outcome: z.literal('returned'), reason: textField }).readonly(),
  ]),
  example: { outcome: 'accepted' },
});
