import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';
import { messageChannels } from './message-begun.ts';

/** How the person may be reached, and what they need. */
export const contact = entryKind({
  name: 'contact',
  of: 'patient',
  shape: 1,
  label: 'contact and needs',
  help: 'Telephone, address, language, and what they need on the day (hearing, transport, hoist).',
  writes: careRoles,
  body: z
    .object({
      telephone: shortText.optional(),
      email: z.email().optional(),
      address: textField.optional(),
      familyDoctor: shortText.optional(),
      familyDoctorAddress: textField.optional(),
      dentist: shortText.optional(),
      dentistAddress: textField.optional(),
      /** How they agreed to be reminded; nobody has asked where it is absent. */
      remindBy: z.array(z.enum(messageChannels)).readonly().optional(),
      language: shortText.optional(),
      needs: z.array(shortText).readonly().optional(),
      armToAvoid: z.enum(['left', 'right']).optional(),
      /** Lymph nodes removed, a fistula, a stroke: why that arm is left alone. */
      armToAvoidBecause: shortText.optional(),
    })
    .readonly(),
  example: {
    telephone: '07700 900123',
    familyDoctor: 'Dr A. Penrose, Thornbeck Surgery',
    needs: ['hospital transport'],
  },
});
