import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField, uuidField } from './fields.ts';

/** A red flag was passed on: to whom, by name, and what they said. Until then it stands on the list of work. */
export const redFlagPassedOn = entryKind({
  name: 'red-flag-passed-on',
  of: 'patient',
  shape: 1,
  label: 'red flag passed on',
  help: 'Who was told, by name, what they will do, and what the person was told to do now.',
  writes: careRoles,
  body: z
    .object({
      /** The entry in which it was told. */
      about: uuidField,
      to: shortText,
      theyWill: textField,
      personWasTold: textField,
    })
    .readonly(),
  example: {
    about: 'e12',
    to: 'Dr A. Finch, on call',
    theyWill: 'sees her at 15:00, calcium and ECG',
    personWasTold: 'come in by taxi now; ring the emergency number with a fit or a faint',
  },
});
