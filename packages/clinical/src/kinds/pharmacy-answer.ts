import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { textField, uuidField } from './fields.ts';

/** A prescriber answers what a pharmacist asked. The prescription then waits for the pharmacist again. */
export const pharmacyAnswer = entryKind({
  name: 'pharmacy-answer',
  of: 'patient',
  shape: 1,
  label: 'answer to the pharmacist',
  help: 'To which question, and what you answer. A wrong prescription is corrected instead.',
  writes: ['prescriber'],
  body: z.object({ check: uuidField, answer: textField }).readonly(),
  example: { check: 'pc1', answer: 'clearance 41 mL/min on 12 November, weighed that day: as prescribed' },
});
