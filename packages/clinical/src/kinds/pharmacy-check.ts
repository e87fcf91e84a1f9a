import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/**
 * A pharmacist has looked at a prescription as it stands. It is about that very text: once the prescription is corrected, or
 * another takes its place, nobody has verified what stands then.
 */
export const pharmacyCheck = entryKind({
  name: 'pharmacy-check',
  of: 'patient',
  shape: 1,
  label: "pharmacist's check of a prescription",
  help: 'Verified, a question to the prescriber, or refused with the reason.',
  writes: ['pharmacist'],
  body: z.discriminatedUnion('outcome', [
    z.object({ outcome: z.literal('verified'), prescription: uuidField, note: textField.optional() }).readonly(),
    z.object({ outcome: z.literal('asked'), prescription: uuidField, question: textField }).readonly(),
    z.object({ outcome: z.literal('refused'), prescription: uuidField, reason: textField }).readonly(),
  ]),
  example: { outcome: 'verified', prescription: 'rx1' },
});
