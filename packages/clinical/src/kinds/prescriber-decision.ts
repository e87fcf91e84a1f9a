import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** A prescriber settles something only a prescriber may: a rise in creatinine, which weight decides, whether a part dose counts. */
export const prescriberDecision = entryKind({
  name: 'prescriber-decision',
  of: 'patient',
  shape: 1,
  label: "prescriber's decision",
  help: 'What was asked, what you decided, and why. Name the pharmacist where two must decide.',
  writes: ['prescriber'],
  body: z
    .object({
      question: z.enum([
        'creatinine rise accepted',
        'low clearance accepted',
        'weight: actual decides',
        'weight change looked into',
        'part dose counts',
        'part dose does not count',
        'after 4 mg product',
        'mineral metabolism looked into',
        'switch agreed',
        'severe reaction looked into',
        'hip fracture looked into',
        'thigh fracture not atypical',
        'saturation on scale 2',
      ]),
      /** The entry the decision is about: the result, the weight, the dose, the fracture. */
      about: uuidField,
      reason: textField,
      pharmacist: shortText.optional(),
    })
    .readonly(),
  example: { question: 'creatinine rise accepted', about: 'r1', reason: 'trimethoprim, stopped; repeat stable' },
});
