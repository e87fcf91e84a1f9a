import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** A medicine that matters here, from `effectiveAt` on, until `stoppedOn`. */
export const medicine = entryKind({
  name: 'medicine',
  of: 'patient',
  shape: 1,
  label: 'medicine',
  help: 'Bone tablets, an oncology plan with a bone medicine in it, steroids, anything hard on the kidneys.',
  writes: clinicalRoles,
  body: z
    .object({
      name: shortText,
      sort: z.enum([
        'bisphosphonate tablet',
        'other bone medicine',
        'oncology bone plan',
        'steroid',
        'nephrotoxic',
        'calcium-lowering',
        'anticoagulant',
        'other',
      ]),
      dailyDose: shortText.optional(),
      /** For a steroid: as much prednisolone a day, in milligrams. */
      prednisoloneMgPerDay: z
        .string()
        .regex(/^\d{1,3}(\.\d{1,2})?$/, 'milligrams of prednisolone a day, such as 7.5')
        .optional(),
      stoppedOn: dateField.optional(),
    })
    .readonly(),
  example: {
    name: 'alendronic acid 70 mg weekly',
    sort: 'bisphosphonate tablet',
    stoppedOn: '2022-02-01' as PlainDate,
  },
});
