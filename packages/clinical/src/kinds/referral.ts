import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** Someone asks the service to treat this person. Starts or restarts the person's course of care here. */
export const referral = entryKind({
  name: 'referral',
  of: 'patient',
  shape: 1,
  label: 'referral received',
  help: 'Who asks, why, for which unit, and how soon.',
  writes: careRoles,
  body: z
    .object({
      from: shortText,
      reason: textField,
      unit: uuidField,
      tier: z.enum(['first in line', 'high', 'routine']),
    })
    .readonly(),
  example: {
    from: 'fracture liaison service',
    reason: 'wrist fracture, hip T -2.8, cannot take tablets',
    unit: 'thornbeck',
    tier: 'routine',
  },
});
