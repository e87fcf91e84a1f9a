import { z } from 'zod';
import { infusionNurses } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

const device = z.object({ id: shortText, name: shortText }).readonly();

/** The device at which a running dose is written on. Another one takes it over, and both see that it did. */
export const doseHeld = entryKind({
  name: 'dose-held',
  of: 'patient',
  shape: 1,
  label: 'screen of the drip',
  help: 'At which screen it is looked after, and from which it was taken over.',
  writes: infusionNurses,
  body: z.object({ device, takenFrom: device.optional() }).readonly(),
  example: { device: { id: 'd1', name: 'screen 4F2A' } },
});
