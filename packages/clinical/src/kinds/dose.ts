import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { homeCheckTimes, homeDoseRules } from '../protocol/home-doses.ts';
import { boneMedicines } from '../protocol/medicines.ts';
import { dateField, identifiersField, shortText, textField } from './fields.ts';
import { everyInjectionSite } from './products.ts';

/**
 * A dose that was given: here, on a ward, at home, elsewhere, years ago. `effectiveAt` is its day. Of what is taken daily it
 * is the first day; the last is added when it has ended.
 */
export const dose = entryKind({
  name: 'dose',
  of: 'patient',
  shape: 1,
  label: 'dose given',
  help: 'Medicine, where it was given, batch if known. A part dose says how much.',
  writes: registrants,
  body: z
    .object({
      medicine: z.enum(boneMedicines),
      setting: z.enum(['this service', 'ward', 'home', 'elsewhere']),
      batch: shortText.optional(),
      /** Millilitres given, if not the whole. */
      partMilliliters: z.number().min(0).max(100).optional(),
      /** Minutes the infusion ran, where it was measured, or between the times typed in later. */
      minutes: z.number().min(0).max(600).optional(),
      /** Of an injection given in a visit: where, how many, and what was asked and matched before it. */
      injectedInto: z.enum(everyInjectionSite).optional(),
      injections: z.number().int().min(1).max(4).optional(),
      identifiers: identifiersField.optional(),
      /** Of a dose given at home: who made the second check, and when they read the pack. */
      checkedBy: shortText.optional(),
      checkedWhen: z.enum(homeCheckTimes).optional(),
      /** The rule of the day it was given under; written by the rules, never sent. */
      homeRule: z
        .object({ oneAlone: z.enum(homeDoseRules), protocolVersion: shortText })
        .readonly()
        .optional(),
      /** What happened where it ran faster than the protocol lets it or nobody checked it, and who was told. */
      incident: textField.optional(),
      /** Last day of what is taken daily. */
      until: dateField.optional(),
    })
    .readonly(),
  example: { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' },
});
