import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { celsiusField, fahrenheitField, notTheSameTemperature, sameTemperature } from './fields.ts';

export const consciousnesses = [
  'alert',
  'newly confused',
  'responds to voice',
  'responds to pain',
  'unresponsive',
] as const;

/**
 * Pulse, pressure, temperature, saturation and the pulse's rhythm are wanted before the dose, and decide (readiness/go-verdict). Those
 * during and after it are told beside them, and decide nothing about a dose.
 */
export const observations = entryKind({
  name: 'observations',
  of: 'patient',
  shape: 1,
  label: 'observations',
  help: 'As measured. Leave out what was not measured.',
  writes: clinicalRoles,
  body: z
    .object({
      pulsePerMinute: z.number().int().min(20).max(250).optional(),
      systolicMmHg: z.number().int().min(50).max(280).optional(),
      diastolicMmHg: z.number().int().min(20).max(180).optional(),
      temperatureCelsius: celsiusField.optional(),
      /** As it stood on the thermometer, where that reads Fahrenheit. */
      temperatureFahrenheit: fahrenheitField.optional(),
      saturationPercent: z.number().int().min(50).max(100).optional(),
      breathsPerMinute: z.number().int().min(4).max(70).optional(),
      newIrregularPulse: z.boolean().optional(),
      onOxygen: z.boolean().optional(),
      /** Confused means newly: confusion of long standing is not new. */
      consciousness: z.enum(consciousnesses).optional(),
      when: z.enum(['before', 'during', 'after']),
    })
    .refine(sameTemperature, notTheSameTemperature)
    .readonly(),
  example: {
    pulsePerMinute: 72,
    systolicMmHg: 130,
    diastolicMmHg: 76,
    temperatureCelsius: 36.8,
    saturationPercent: 97,
    when: 'before',
  },
});
