import { z } from 'zod';
import { flagsToAsk, noRedFlag } from '../calls/asked-flags.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField, uuidField } from './fields.ts';

export const callers = ['the person', 'family or carer', 'care home', 'family doctor or another service'] as const;

/** What is written of a call whoever it is about. */
export const saidInCall = {
  caller: z.enum(callers),
  callerName: shortText.optional(),
  callerTelephone: shortText.optional(),
  /** Asked first. "None of these" alone says that each was asked and answered no. */
  redFlags: z
    .array(z.enum([...flagsToAsk, noRedFlag]))
    .min(1, 'ask about each, or say none of these')
    .readonly(),
  about: textField,
  advice: textField,
  /** Who takes a red flag on: they were told, by name. */
  passedTo: shortText.optional(),
  callBackOn: dateField.optional(),
} as const;

/** Somebody rings about this person: red flags first, in whose words what, what was advised, who hears of it by when. */
export const adviceCall = entryKind({
  name: 'advice-call',
  of: 'patient',
  shape: 1,
  label: 'advice-line call',
  help: 'Who rang, red flags, about what, what was advised, who takes it on.',
  writes: careRoles,
  body: z
    .object({
      ...saidInCall,
      /** It was written down before anybody knew whom it was about: that entry of the unit. */
      takenFrom: uuidField.optional(),
    })
    .readonly(),
  example: {
    caller: 'family or carer',
    callerName: 'Odile, daughter',
    redFlags: ['shaking chills'],
    about: 'hot and shaking since Sunday, dose was on Thursday',
    advice: 'to be seen by her family doctor today, who was rung',
    passedTo: 'Petra Press',
  },
});
