import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import {
  amountsDrunk,
  type DangerSign,
  dangerSignNames,
  feelings,
  paracetamolTaken,
} from '../aftercare/danger-signs.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import {
  celsiusField,
  dateField,
  fahrenheitField,
  notTheSameTemperature,
  sameTemperature,
  textField,
  uuidField,
} from './fields.ts';

/** What many feel after a first dose; asked one by one like the danger signs. */
export const reactionSymptoms = [
  'fever or shivering',
  'aching muscles or joints',
  'headache',
  'very tired',
  'feeling sick',
] as const;
export type ReactionSymptom = (typeof reactionSymptoms)[number];

/** General scale of the criteria (CTCAE 5.0, from memory), in the person's words. */
export const symptomSeverities = ['mild', 'moderate', 'severe'] as const;

export const waysAsked = ['telephone', 'they rang us', 'face to face', 'their own answers'] as const;
export const toldBy = ['the person', 'a carer or relative', 'staff of a care home', 'legal proxy'] as const;

const felt = z
  .object({
    what: z.enum(reactionSymptoms),
    beganOn: dateField,
    severity: z.enum(symptomSeverities),
    /** Undefined: not over yet. */
    endedOn: dateField.optional(),
  })
  .readonly();

/**
 * How somebody was after a dose, asked by the script; or that nobody asks further, with the reason. What was answered "no"
 * stands there as well as what was answered "yes": what is in neither was not asked.
 */
export const aftercare = entryKind({
  name: 'aftercare',
  of: 'patient',
  shape: 1,
  label: 'how they were after the dose',
  help: 'Every question of the script with its answer. Danger signs are passed on at once.',
  writes: careRoles,
  body: z.discriminatedUnion('outcome', [
    z
      .object({
        outcome: z.literal('asked'),
        dose: uuidField,
        how: z.enum(waysAsked),
        toldBy: z.enum(toldBy),
        feels: z.enum(feelings),
        felt: z.array(felt).readonly(),
        notFelt: z.array(z.enum(reactionSymptoms)).readonly(),
        signs: z.array(z.enum(dangerSignNames as [DangerSign, ...DangerSign[]])).readonly(),
        notSigns: z.array(z.enum(dangerSignNames as [DangerSign, ...DangerSign[]])).readonly(),
        /** Undefined: not taken. */
        temperatureCelsius: celsiusField.optional(),
        /** As it stood on the thermometer, where that reads Fahrenheit. */
        temperatureFahrenheit: fahrenheitField.optional(),
        drinks: z.enum(amountsDrunk),
        paracetamol: z.enum(paracetamolTaken),
        words: textField.optional(),
      })
      .refine(sameTemperature, notTheSameTemperature)
      .readonly(),
    z.object({ outcome: z.literal('not asked further'), dose: uuidField, reason: textField }).readonly(),
  ]),
  example: {
    outcome: 'asked',
    dose: 'd1',
    how: 'telephone',
    toldBy: 'the person',
    feels: 'a little rough',
    felt: [{ what: 'aching muscles or joints', beganOn: '2026-10-15' as PlainDate, severity: 'mild' }],
    notFelt: ['fever or shivering', 'headache', 'very tired', 'feeling sick'],
    signs: [],
    notSigns: [...dangerSignNames],
    drinks: 'as usual or more',
    paracetamol: 'as told',
  },
});
