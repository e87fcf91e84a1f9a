import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { infusionNurses } from '../ledger/role.ts';
import { boneMedicines } from '../protocol/medicines.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/** Why somebody who came, or was to come, has no dose today. */
export const putOffReasons = [
  'bloods',
  'kidney function',
  'calcium',
  'vitamin D',
  'unwell',
  'teeth and jaw',
  'thigh, hip or groin pain',
  'eye',
  'no prescription',
  'no consent',
  'too early',
  'no cannula',
  'changed their mind',
  'no staff or chair',
  'other',
] as const;
export type PutOffReason = (typeof putOffReasons)[number];

/** When it could have been seen that no dose would be given that day. */
export const seenAhead = ['weeks before', 'in the last days', 'only today', 'not known'] as const;

/** Who does what comes next after a dose was put off. */
export const nextStepOwners = ['nurse', 'nurse in charge', 'prescriber', 'pharmacist', 'clerk'] as const;

/** The decision at the end of the checklist, with what it was based on, so that it can be replayed. */
export const goDecision = entryKind({
  name: 'go-decision',
  of: 'patient',
  shape: 1,
  label: 'go, put off or ask',
  help: 'Go; put off, with the reason and what next; or ask a prescriber.',
  writes: infusionNurses,
  body: z
    .object({
      decision: z.enum(['go', 'put off', 'ask a prescriber']),
      reasonCode: z.enum(putOffReasons).optional(),
      note: textField.optional(),
      /** Absent in decisions written before it was asked for. */
      couldHaveBeenSeen: z.enum(seenAhead).optional(),
      nextStep: textField.optional(),
      /** The last day for the next step, and whose it is. */
      nextBy: dateField.optional(),
      nextOwner: z.enum(nextStepOwners).optional(),
      /** A person or a role. */
      tellsThePatient: shortText.optional(),
      /** What a go for an injection is for, and whether another person checks it. Absent: a drip, or by hand. */
      injection: z
        .object({ medicine: z.enum(boneMedicines), checkedByAnother: z.boolean() })
        .readonly()
        .optional(),
      /** What the decision rests on. */
      basis: z
        .object({
          on: dateField,
          knownSeq: z.number().int().min(0),
          protocolVersion: shortText,
          ruleSet: shortText,
          verdict: z.enum(['ready', 'not ready', 'cannot say', 'does not apply']),
        })
        .readonly(),
    })
    .readonly(),
  example: {
    decision: 'go',
    basis: {
      on: '2027-01-28' as PlainDate,
      knownSeq: 41,
      protocolVersion: 'thornbeck-3',
      ruleSet: '1',
      verdict: 'ready',
    },
  },
});
